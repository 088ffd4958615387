/** Separators that are understood; the comma is the canonical one. */
export const DELIMITERS = [",", ";", "\t"] as const;

export type Delimiter = (typeof DELIMITERS)[number];

/** The separator that stands most often, outside quotes, in the heading line; the comma when none does. */
export function detectDelimiter(text: string): Delimiter {
  const counts: Record<Delimiter, number> = { ",": 0, ";": 0, "\t": 0 };
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text.charAt(i);
    if (c === '"') quoted = !quoted;
    else if (!quoted && (c === "\n" || c === "\r")) break;
    else if (!quoted && (c === "," || c === ";" || c === "\t")) counts[c]++;
  }
  return DELIMITERS.reduce((best, d) => (counts[d] > counts[best] ? d : best));
}
