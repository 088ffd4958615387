/**
 * A new id after the pattern of an old one: its last number counts on, else `-2` is put behind it, until nothing
 * has that id. Leading zeros stay.
 */
export function proposedId(id: string, taken: ReadonlySet<string>): string {
  const numbered = /^(.*?)(\d+)$/u.exec(id);
  const stem = numbered?.[1] ?? `${id}-`;
  const digits = numbered?.[2] ?? "1";
  for (let n = Number(digits) + 1; ; n++) {
    const name = `${stem}${String(n).padStart(digits.length, "0")}`;
    if (!taken.has(name)) return name;
  }
}

/** A new id that begins with `stem`, counting from 1. */
export const freshId = (stem: string, taken: ReadonlySet<string>): string =>
  taken.has(`${stem}1`) ? proposedId(`${stem}1`, taken) : `${stem}1`;
