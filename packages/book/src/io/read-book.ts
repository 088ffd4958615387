import { resolve } from "node:path";
import { type ReadFiles, readBookFiles } from "../csv/files.ts";
import { FaultLog } from "../fault-log.ts";
import { emptyBook } from "../read/empty.ts";
import { isFolder, readFolderFiles } from "./read-folder.ts";

/**
 * Reads a book from a folder, a `.zip` or an `.xlsx`; which one it is is found from the file itself. Nothing
 * is thrown for bad input: whatever is wrong, also a path that leads nowhere, is a fault.
 */
export async function readBook(path: string): Promise<ReadFiles> {
  const log = new FaultLog();
  const place = resolve(path);
  if (await isFolder(place)) return readBookFiles(await readFolderFiles(place, log), log);
  log.add({ code: "file-missing", file: path, expected: "a folder, `.zip` or `.xlsx` of a book" });
  return { book: emptyBook(), shop: null, faults: log.list() };
}
