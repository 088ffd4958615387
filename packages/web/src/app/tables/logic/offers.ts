import type { CellKind } from "@pinwright/book";

/** Kinds of cells for which there is a list to choose from. */
const OFFERED: ReadonlySet<CellKind> = new Set([
  "ref",
  "refs",
  "item",
  "items",
  "point",
  "local-point",
  "choice",
  "flag",
  "colour",
  "colours",
  "outline",
]);

/** Kinds that hold several values with spaces between them. */
const LISTS: ReadonlySet<CellKind> = new Set(["refs", "items", "colours", "names"]);

export const hasOffers = (kind: CellKind): boolean => OFFERED.has(kind);

/** What is looked for: of a list the word that is being typed, else the whole text. */
export const soughtOf = (kind: CellKind, text: string): string =>
  LISTS.has(kind) ? text.slice(text.lastIndexOf(" ") + 1) : text;

/** The text after a value was chosen. */
export const withOffer = (kind: CellKind, text: string, value: string): string =>
  LISTS.has(kind) ? text.slice(0, text.lastIndexOf(" ") + 1) + value : value;

/** The words of a choice that have a text in them, those that begin with it first. */
export function wordsWith(words: readonly string[], sought: string): readonly string[] {
  const text = sought.trim().toLowerCase();
  const begin = words.filter((word) => word.startsWith(text));
  return [...begin, ...words.filter((word) => word.includes(text) && !begin.includes(word))];
}

/** The offer that Enter takes after typing: the first, unless the text is blank or one of them by itself. */
export function firstOffer(sought: string, values: readonly string[]): number {
  const text = sought.trim();
  return text === "" || values.length === 0 || values.includes(text) ? -1 : 0;
}
