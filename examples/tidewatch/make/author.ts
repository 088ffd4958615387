import {
  BOOK_TABLES,
  type BookRow,
  type BookTableName,
  type BookTables,
  type Outline,
  type ShopTables,
  type Table,
} from "@pinwright/book";

/** What one topic of the machine adds to the book. */
export type Topic = {
  readonly tables: Partial<BookTables>;
  /** What the topic adds to the shop that the book travels with. */
  readonly shop?: Partial<ShopTables>;
  /** Outline drawings by file name. */
  readonly outlines?: ReadonlyMap<string, Outline>;
};

/**
 * Rows of a table, written with only the columns that have something to say; every other cell is blank.
 * Throws when a required cell is missing: a mistake of the author, found when the book is made.
 */
export const fillRows = <R extends object>(table: Table, written: readonly Partial<R>[]): R[] =>
  written.map((cells) => {
    const given = new Map<string, unknown>(Object.entries(cells));
    const filled: Record<string, unknown> = {};
    for (const [column, { blank, required }] of Object.entries(table.columns)) {
      const value = given.get(column);
      if (value === undefined && required)
        throw new Error(`${table.name}: ${JSON.stringify(cells)} lacks the required column ${column}.`);
      filled[column] = value ?? blank;
      given.delete(column);
    }
    if (given.size > 0) throw new Error(`${table.name}: unknown columns ${[...given.keys()].join(", ")}.`);
    // The loop above has just given the row every column of its table; its type cannot follow that.
    return filled as R;
  });

/** Rows of one table of the book. */
export const rows = <N extends BookTableName>(
  name: N,
  written: readonly Partial<BookRow<N>>[],
): BookRow<N>[] => fillRows<BookRow<N>>(BOOK_TABLES[name], written);

/** Place of anything on the playfield. */
export const onPlayfield = (side: "top" | "under", x_mm: number, y_mm: number, rotation_deg = 0) => ({
  panel: "playfield",
  side,
  x_mm,
  y_mm,
  rotation_deg,
});
