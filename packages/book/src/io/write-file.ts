import { rename, rm } from "node:fs/promises";
import { basename } from "node:path";
import { FaultLog } from "../fault-log.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import { startsLikeZip, WORKBOOK_ENTRY } from "./kind.ts";
import { isFolder } from "./read-folder.ts";
import { ZipReader } from "./unzip.ts";
import { freeSibling, NotABook, writeSynced } from "./write-folder.ts";
import { MACHINE_SHEET } from "./write-xlsx.ts";

/** Whether a ZIP or workbook holds a book. */
async function holdsBook(path: string): Promise<boolean> {
  const zip = await ZipReader.open(path, basename(path), new FaultLog());
  if (zip === null) return false;
  try {
    const names = zip.entries.map((entry) => entry.name);
    if (!names.includes(WORKBOOK_ENTRY)) return names.some((name) => name.split("/").pop() === MACHINE_FILE);
    const list = zip.entries.find((entry) => entry.name === "xl/workbook.xml");
    const texts: Buffer[] = [];
    if (list !== undefined) {
      await zip.read(list, (piece) => {
        texts.push(Buffer.from(piece));
        return null;
      });
    }
    return Buffer.concat(texts).toString("utf8").includes(`name="${MACHINE_SHEET}"`);
  } finally {
    await zip.close();
  }
}

/**
 * Writes one file, all or nothing: to a file beside it first, which then takes its place. Refuses to replace a
 * file that does not hold a book.
 */
export async function writeFileWhole(path: string, bytes: Uint8Array): Promise<void> {
  if (await isFolder(path)) throw new NotABook(path, "is a folder");
  const isZip = await startsLikeZip(path);
  if (isZip !== null && !(isZip && (await holdsBook(path))))
    throw new NotABook(path, "is a file that holds no book");
  const fresh = await freeSibling(path, "new");
  try {
    await writeSynced(fresh, bytes);
    await rename(fresh, path);
  } catch (error) {
    await rm(fresh, { force: true });
    throw error;
  }
}
