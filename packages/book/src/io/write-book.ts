import { resolve } from "node:path";
import type { Book, Shop } from "../book.ts";
import { writeBookFiles } from "../csv/files.ts";
import { writeFolder } from "./write-folder.ts";

/** Forms in which a book can be written. */
export type BookFormat = "folder" | "zip" | "xlsx";

/**
 * Writes a book, all or nothing: if anything fails, what was there before is still there.
 * Throws `NotABook` when something that is not a book stands in the way.
 */
export async function writeBook(path: string, book: Book, shop: Shop | null = null): Promise<void> {
  await writeFolder(resolve(path), writeBookFiles(book, shop));
}
