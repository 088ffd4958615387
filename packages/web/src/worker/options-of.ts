import type { Book } from "@pinwright/book";
import { usualOptions } from "@pinwright/engine";

/**
 * Options that a machine is looked at with: those that are asked for and that the book still has; its usual ones when
 * nothing is asked. A unit with no options of its own was begun when nothing was said of them: it has the usual ones.
 */
export function optionsOf(book: Book, asked: readonly string[] | null): ReadonlySet<string> {
  if (asked === null || asked.length === 0) return usualOptions(book);
  return new Set(book.tables.options.flatMap(({ id }) => (asked.includes(id) ? [id] : [])));
}
