import { type Book, type BookRow, type BookTableName, withRows } from "../../packages/book/src/index.ts";
import type { LineResult } from "../../packages/engine/src/index.ts";
import type { SheetRule } from "./sheet-rules.ts";

/** A change to a book that a person could make, with what must be said of it, in English, and the sheets that it reaches. */
export interface ScriptedChange {
  readonly name: string;
  readonly after: Book;
  /** `subject: sentence` for each thing that was done: these and no others. */
  readonly says: readonly string[];
  /** `subject: sentence` of what follows that is known beforehand; what else follows is held against the line's results. */
  readonly follows: readonly string[];
  readonly sheets: SheetRule;
}

export type Row<N extends BookTableName> = BookRow<N>;

/** Every kind of change makes its changes from the book and, where something found is accepted, from what was found. */
export type Script = (book: Book, before: LineResult) => readonly ScriptedChange[];

/** So many victims of each kind of change, where it does not say otherwise. */
const VICTIMS = 2;

/** Rows that a predicate picks, spread over the table. */
export function victims<N extends BookTableName>(
  book: Book,
  table: N,
  fits: (row: Row<N>) => boolean,
  count = VICTIMS,
): readonly Row<N>[] {
  const rows: readonly Row<N>[] = book.tables[table];
  return spread(rows.filter(fits), count);
}

/** So many of a list, spread over it. */
export function spread<T>(all: readonly T[], count = VICTIMS): readonly T[] {
  if (all.length < count) throw new Error(`${all.length} to change, ${count} wanted`);
  return Array.from({ length: count }, (_, i) => all[Math.floor((i * all.length) / count)]).filter(
    (one): one is T => one !== undefined,
  );
}

export function put<N extends BookTableName>(
  book: Book,
  table: N,
  victim: Row<N>,
  values: Partial<Row<N>>,
): Book {
  const rows: readonly Row<N>[] = book.tables[table];
  return withRows(
    book,
    table,
    rows.map((row) => (row === victim ? { ...row, ...values } : row)),
  );
}

export function drop<N extends BookTableName>(book: Book, table: N, isGone: (row: Row<N>) => boolean): Book {
  const rows: readonly Row<N>[] = book.tables[table];
  return withRows(
    book,
    table,
    rows.filter((row) => !isGone(row)),
  );
}

export function add<N extends BookTableName>(book: Book, table: N, ...more: readonly Row<N>[]): Book {
  const rows: readonly Row<N>[] = book.tables[table];
  return withRows(book, table, [...rows, ...more]);
}

/** One kind of change to single rows: whom it can befall, what is done, what is then said, and which sheets show it. */
interface Kind<N extends BookTableName> {
  readonly name: string;
  readonly table: N;
  readonly fits: (row: Row<N>, book: Book) => boolean;
  readonly count?: number;
  readonly does: (row: Row<N>, book: Book) => Partial<Row<N>>;
  readonly says: (row: Row<N>, to: Row<N>, book: Book) => string | readonly string[];
  readonly follows?: (row: Row<N>, to: Row<N>, book: Book) => readonly string[];
  readonly sheets: (row: Row<N>, to: Row<N>, book: Book) => SheetRule;
}

export const kind =
  <N extends BookTableName>(given: Kind<N>): Script =>
  (book) =>
    victims(book, given.table, (row) => given.fits(row, book), given.count).map((row) => {
      const values = given.does(row, book);
      const to: Row<N> = { ...row, ...values };
      return {
        name: `${given.name}: ${Object.values(row).slice(0, 2).join(" ").trim()}`,
        after: put(book, given.table, row, values),
        says: [given.says(row, to, book)].flat(),
        follows: given.follows?.(row, to, book) ?? [],
        sheets: given.sheets(row, to, book),
      };
    });

export const any = (): boolean => true;

/** A number of a cell with something added, without the dust of binary fractions. */
export const plus = (value: number | null, more: number): number => Number(((value ?? 0) + more).toFixed(6));
