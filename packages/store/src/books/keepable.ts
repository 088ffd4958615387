import { StoreError } from "../error.ts";

/** Names that no database keeps as they are: NUL ends a text, and half a character becomes another one. */
const UNKEEPABLE = /[\0\p{Surrogate}]/u;

/** Throws a `StoreError` when the name of a table or the id of a row would not come back as it was given. */
export function mustBeKeepable(places: Iterable<{ readonly table: string; readonly row: string }>): void {
  for (const { table, row } of places) {
    if (!UNKEEPABLE.test(table) && !UNKEEPABLE.test(row)) continue;
    throw new StoreError(
      "bad-text",
      `Row ${JSON.stringify(row)} of ${JSON.stringify(table)} has a name that cannot be kept; ` +
        "it must be well-formed Unicode without NUL.",
    );
  }
}
