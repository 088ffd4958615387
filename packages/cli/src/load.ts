import { resolve } from "node:path";
import { type Book, emptyShop, type Fault, type Shop } from "@pinwright/book";
import { formatOf, readBook, readShop, writeBook } from "@pinwright/book/io";
import { Line, type LineResult } from "@pinwright/engine";
import type { CommandCall, CommandOption } from "./command.ts";
import { UsageError } from "./terminal.ts";

/** Options of every command that reads a book. */
export const BOOK_OPTIONS = {
  shop: {
    type: "string",
    value: "DIR",
    about: "folder of the shop's tables; else the book's own, else the usual numbers",
  },
  option: {
    type: "string",
    multiple: true,
    value: "ID",
    about: "build the machine with this option; several with commas; else the usual ones",
  },
} as const satisfies Readonly<Record<string, CommandOption>>;

/** A book that was read, with all that is wrong with it. */
export interface Loaded {
  readonly path: string;
  readonly book: Book;
  readonly shop: Shop;
  /** The shop that travels inside the book; null when it has none of its own. */
  readonly ownShop: Shop | null;
  /** Files that parts are made from, by name. */
  readonly drawings: ReadonlyMap<string, Uint8Array>;
  readonly faults: readonly Fault[];
  readonly options: ReadonlySet<string> | undefined;
}

/** Reads the book that the first operand names, and the shop that goes with it. Faults are not thrown. */
export async function loadBook(call: CommandCall): Promise<Loaded> {
  const path = resolve(call.positionals[0] ?? ".");
  const read = await readBook(path);
  const shopPath = call.text("shop");
  const shopRead = shopPath === undefined ? undefined : await readShop(resolve(shopPath));
  const chosen = call.texts("option");
  const known = new Set(read.book.tables.options.map((option) => option.id));
  for (const id of chosen) {
    if (!known.has(id))
      throw new UsageError(
        `--option ${id}: the book has no such option; it has ${[...known].join(", ") || "none"}`,
      );
  }
  return {
    path,
    book: read.book,
    shop: shopRead?.shop ?? read.shop ?? emptyShop(),
    ownShop: read.shop,
    drawings: read.drawings,
    faults: [...read.faults, ...(shopRead?.faults ?? [])],
    options: chosen.length > 0 ? new Set(chosen) : undefined,
  };
}

/** Writes a book to where it was loaded from, with its drawings as they are. */
export async function saveBook({ path, ownShop, drawings }: Loaded, book: Book): Promise<void> {
  // The drawings of a folder lie there; also those that could not be read stay.
  await writeBook(path, book, ownShop, undefined, formatOf(path) === "folder" ? null : drawings);
}

/** The whole line of a loaded book. */
export function runLine(loaded: Loaded): LineResult {
  return new Line().run(loaded.book, loaded.shop, loaded.options);
}

/** Faults that stop a command: without them the result would be of another machine than the book's. */
export function fatalFaults(faults: readonly Fault[]): readonly Fault[] {
  return faults.filter((fault) => fault.code === "file-missing" || fault.code === "file-unreadable");
}
