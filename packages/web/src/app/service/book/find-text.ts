import type { ServiceBookTexts } from "@pinwright/contract";

/** A place on a page, in millimetres from its top left corner. */
export interface Spot {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface Hit {
  /** Counted from 1. */
  readonly page: number;
  readonly text: string;
  /** Null: the words stand on the page, though not in one line. */
  readonly spot: Spot | null;
}

/** Most places that are shown. */
export const MOST_HITS = 100;

const plain = (text: string): string => text.normalize("NFKC").toLowerCase();

/**
 * Where a text stands in a book: lines that hold all of it, and pages on which its words stand apart. Upper and lower
 * case are the same.
 */
export function findText(texts: ServiceBookTexts, wanted: string): readonly Hit[] {
  const whole = plain(wanted.trim());
  if (whole === "") return [];
  const words = whole.split(/\s+/u);
  const hits: Hit[] = [];
  for (const [i, lines] of texts.entries()) {
    const own = lines.filter(({ text }) => plain(text).includes(whole));
    for (const { text, ...spot } of own) hits.push({ page: i + 1, text, spot });
    if (own.length > 0 || words.length === 1) continue;
    const all = plain(lines.map(({ text }) => text).join(" "));
    if (words.every((word) => all.includes(word)))
      hits.push({ page: i + 1, text: wanted.trim(), spot: null });
  }
  return hits;
}
