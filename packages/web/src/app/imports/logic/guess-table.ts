import { ALL_TABLES, type Guess, guessMapping, type RememberedMapping } from "@pinwright/book";

/** How much a heading that was found in some way speaks for a table. */
const WEIGHTS: Readonly<Record<Guess, number>> = {
  remembered: 6,
  exact: 3,
  folded: 3,
  unit: 3,
  stem: 2,
  label: 1,
  words: 1,
  nearest: 0.5,
};

/** Speaks for a table more than any heading: the sheet or file has its name. */
const NAMED = 8;

const plain = (text: string): string => text.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "");

/** How well the headings of a sheet fit a table; columns that must be filled and are missing speak against it. */
function fitOf(
  table: string,
  sheetName: string,
  header: readonly string[],
  remembered: readonly RememberedMapping[],
): number {
  const schema = ALL_TABLES[table];
  if (schema === undefined) return 0;
  const mapping = guessMapping(header, schema, remembered);
  const found = mapping.reduce((sum, { how }) => sum + (how === null ? 0 : WEIGHTS[how]), 0);
  const taken = new Set(mapping.map(({ column }) => column));
  const missing = Object.entries(schema.columns).filter(
    ([name, { required }]) => required && !taken.has(name),
  );
  // Of tables that fit alike, the one with fewer columns left over.
  const spare = (Object.keys(schema.columns).length - taken.size) / 100;
  return found - missing.length - spare + (plain(sheetName).includes(plain(table)) ? NAMED : 0);
}

/** The table that the headings of a sheet fit best. */
export function guessTable(
  sheetName: string,
  header: readonly string[],
  remembered: readonly RememberedMapping[],
): string {
  let best = "devices";
  let most = Number.NEGATIVE_INFINITY;
  for (const table of Object.keys(ALL_TABLES)) {
    const fit = fitOf(table, sheetName, header, remembered);
    if (fit <= most) continue;
    best = table;
    most = fit;
  }
  return best;
}

/** Whether the sheets of a workbook look like a whole book: one of them is the machine, or all are tables. */
export const looksLikeBook = (sheetNames: readonly string[]): boolean =>
  sheetNames.includes("machine") ||
  (sheetNames.length > 1 && sheetNames.every((name) => Object.hasOwn(ALL_TABLES, name)));
