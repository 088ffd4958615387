/** What belongs in a column, by table and column, or by column alone where it is the same in every table. */
const ABOUTS: Readonly<Record<string, string>> = {};

/** What belongs in a column, in Chinese; the English sentence where there is none. */
export const aboutColumn = (table: string, column: string, english: string): string =>
  ABOUTS[`${table}.${column}`] ?? ABOUTS[column] ?? english;
