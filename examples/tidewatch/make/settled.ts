import { type Book, type Shop, withRows } from "@pinwright/book";
import { Line, settle } from "@pinwright/engine";

/**
 * The book with the results of the line kept in it: numbers of wires, colours, trunks, tails, pegs and the
 * symbols of screws stay as they are while other things change. The book that comes in has nothing settled, so that making it again gives the same.
 */
export function settled(book: Book, shop: Shop): Book {
  const result = new Line().run(book, shop);
  return withRows(book, "choices", settle(result, [...result.harnesses.keys()], { symbols: true }).choices);
}
