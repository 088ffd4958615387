/** Characters of a value that a fault shows. */
export const SHOWN_CHARS = 80;

/** The value as a fault shows it: at most 80 characters, control characters visible as `\u0007`. */
export function shorten(value: string): string {
  const cut =
    value.length > SHOWN_CHARS
      ? `${value.slice(0, SHOWN_CHARS - 1).replace(/[\ud800-\udbff]$/, "")}…`
      : value;
  const visible = cut.replace(
    /\p{Cc}|\p{Cs}/gu,
    (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`,
  );
  return visible.length > SHOWN_CHARS ? `${visible.slice(0, SHOWN_CHARS - 1)}…` : visible;
}
