import { resolve } from "node:path";
import type { Book, Shop } from "../book.ts";
import { drawingFiles, writeBookFiles } from "../csv/files.ts";
import { writeFileWhole } from "./write-file.ts";
import { writeFolder } from "./write-folder.ts";
import { packXlsx } from "./write-xlsx.ts";
import { packZip } from "./write-zip.ts";

/** Forms in which a book can be written. */
export type BookFormat = "folder" | "zip" | "xlsx";

/** The form that a path's ending asks for. */
export const formatOf = (path: string): BookFormat =>
  /\.zip$/i.test(path) ? "zip" : /\.xlsx$/i.test(path) ? "xlsx" : "folder";

/**
 * Writes a book, all or nothing: if anything fails, what was there before is still there. Without a shop, the
 * shop's tables that a folder already has stay as they are; without drawings, the drawings that it has. A workbook
 * holds no drawings.
 * Throws `NotABook` when something that is not a book stands in the way.
 */
export async function writeBook(
  path: string,
  book: Book,
  shop: Shop | null = null,
  format: BookFormat = formatOf(path),
  drawings: ReadonlyMap<string, Uint8Array> | null = null,
): Promise<void> {
  const place = resolve(path);
  const files = (): ReadonlyMap<string, string | Uint8Array> =>
    new Map<string, string | Uint8Array>([
      ...writeBookFiles(book, shop),
      ...drawingFiles(drawings ?? new Map()),
    ]);
  if (format === "folder") return writeFolder(place, files(), drawings !== null);
  const bytes = format === "zip" ? packZip(files()) : await packXlsx(book, shop);
  return writeFileWhole(place, bytes);
}
