import { basename, resolve } from "node:path";
import { type RawFiles, type ReadFiles, rawFiles, readRaw } from "../csv/files.ts";
import type { Fault } from "../fault.ts";
import { FaultLog } from "../fault-log.ts";
import { emptyBook } from "../read/empty.ts";
import { startsLikeZip, WORKBOOK_ENTRY } from "./kind.ts";
import { isFolder, readFolderFiles } from "./read-folder.ts";
import { readXlsx } from "./read-xlsx.ts";
import { readZipFiles } from "./read-zip.ts";
import { ZipReader } from "./unzip.ts";

/** What the files of a book hold, with everything that is wrong with them. */
export interface ReadRawFiles {
  /** Null when nothing could be read at all. */
  readonly found: RawFiles | null;
  readonly faults: readonly Fault[];
}

/** Finds what a path holds: a folder, a `.zip` or an `.xlsx`. */
async function findRaw(path: string, log: FaultLog): Promise<RawFiles | null> {
  const place = resolve(path);
  if (await isFolder(place)) return rawFiles(await readFolderFiles(place, log), log);
  const name = basename(place);
  const isZip = await startsLikeZip(place);
  if (isZip !== true) {
    log.add({
      code: isZip === null ? "file-missing" : "file-unreadable",
      file: name,
      expected: "a folder, `.zip` or `.xlsx` of a book",
    });
    return null;
  }
  const zip = await ZipReader.open(place, name, log);
  if (zip === null) return null;
  try {
    const isWorkbook = zip.entries.some((entry) => entry.name === WORKBOOK_ENTRY);
    return isWorkbook ? await readXlsx(place, name, zip, log) : rawFiles(await readZipFiles(zip, log), log);
  } finally {
    await zip.close();
  }
}

/**
 * Reads a book from a folder, a `.zip` or an `.xlsx`; which one it is is found from the file itself. Nothing
 * is thrown for bad input: whatever is wrong, also a path that leads nowhere, is a fault.
 */
export async function readBook(path: string): Promise<ReadFiles> {
  const log = new FaultLog();
  const found = await findRaw(path, log);
  return found === null
    ? { book: emptyBook(), shop: null, drawings: new Map(), faults: log.list() }
    : readRaw(found, log);
}

/**
 * The same before anything has a type, so that a faulty book can be taken in without losing a cell. The faults
 * are those of `readBook`; their rows are rows of the file.
 */
export async function readRawFiles(path: string): Promise<ReadRawFiles> {
  const log = new FaultLog();
  const found = await findRaw(path, log);
  return { found, faults: found === null ? log.list() : readRaw(found, log).faults };
}
