/** Separators that are understood; the comma is the canonical one. */
export const DELIMITERS = [",", ";", "\t"] as const;

export type Delimiter = (typeof DELIMITERS)[number];

/** Separators that a file of somebody else may have. */
const FOREIGN_DELIMITERS = [...DELIMITERS, "|"] as const;

export type ForeignDelimiter = (typeof FOREIGN_DELIMITERS)[number];

/** How often each separator stands, outside quotes, in the first lines. */
function countIn(text: string, lines: number): Record<ForeignDelimiter, number> {
  const counts: Record<ForeignDelimiter, number> = { ",": 0, ";": 0, "\t": 0, "|": 0 };
  let quoted = false;
  let line = 0;
  for (let i = 0; i < text.length && line < lines; i++) {
    const c = text.charAt(i);
    if (c === '"') quoted = !quoted;
    else if (!quoted && (c === "\n" || c === "\r")) line++;
    else if (!quoted && (c === "," || c === ";" || c === "\t" || c === "|")) counts[c]++;
  }
  return counts;
}

/** The separator that stands most often, outside quotes, in the heading line; the comma when none does. */
export function detectDelimiter(text: string): Delimiter {
  const counts = countIn(text, 1);
  return DELIMITERS.reduce((best, d) => (counts[d] > counts[best] ? d : best));
}

/** Lines of a foreign file that tell its separator: a title without one may stand above the heading. */
const TELLING_LINES = 20;

/** The separator that stands most often in the first lines of a file of somebody else; the comma when none does. */
export function detectForeignDelimiter(text: string): ForeignDelimiter {
  const counts = countIn(text, TELLING_LINES);
  return FOREIGN_DELIMITERS.reduce((best, d) => (counts[d] > counts[best] ? d : best));
}
