import type { Book } from "../book.ts";
import type { BookRow, BookTableName } from "../schema/tables/index.ts";

/** The book with other rows in one table; everything else is shared with the old one. */
export function withRows<N extends BookTableName>(book: Book, table: N, rows: readonly BookRow<N>[]): Book {
  if (book.tables[table] === rows) return book;
  return { ...book, tables: { ...book.tables, [table]: rows } };
}
