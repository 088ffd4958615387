import { mkdir, open, readdir, rename, rm, rmdir, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { bookPath, DRAWING_FOLDER, OUTLINE_FOLDER, SHOP_FOLDER } from "../csv/paths.ts";
import { MACHINE_FILE } from "../read/machine.ts";

/** A place that nothing was written to, because something else is there. */
export class NotABook extends Error {
  constructor(path: string, why: string) {
    super(`${path}: ${why}; nothing was written. Choose another place.`);
    this.name = "NotABook";
  }
}

const exists = (path: string): Promise<boolean> =>
  stat(path).then(
    () => true,
    () => false,
  );

/** A name beside `path` that nobody uses. Hidden, so that a reader of the folder above passes it over. */
export async function freeSibling(path: string, purpose: string): Promise<string> {
  for (let n = 1; ; n++) {
    const candidate = join(dirname(path), `.${basename(path)}.${purpose}-${process.pid}-${n}`);
    if (!(await exists(candidate))) return candidate;
  }
}

/** Writes a new file and waits until the disk has it. */
export async function writeSynced(path: string, bytes: string | Uint8Array): Promise<void> {
  const file = await open(path, "wx");
  try {
    await file.writeFile(bytes);
    await file.sync();
  } finally {
    await file.close();
  }
}

/** Refuses a folder that holds something but is not a book. */
async function mustBeBookOrEmpty(folder: string): Promise<boolean> {
  if (!(await exists(folder))) return false;
  if (!(await stat(folder)).isDirectory()) throw new NotABook(folder, "is a file, not a folder");
  const names = await readdir(folder);
  if (names.length > 0 && !names.includes(MACHINE_FILE)) {
    throw new NotABook(folder, `is a folder that holds other things and no ${MACHINE_FILE}`);
  }
  return true;
}

/**
 * Moves what does not belong to the book (notes, hidden files, other folders) from the old folder to the new
 * one. A shop's folder moves as it is when the new book does not bring one; drawings too, unless they are replaced.
 */
async function moveOthers(from: string, to: string, replacesDrawings: boolean): Promise<void> {
  for (const name of await readdir(from)) {
    const isOwn =
      name === OUTLINE_FOLDER ||
      (replacesDrawings && name === DRAWING_FOLDER) ||
      (bookPath(name).kind !== "other" && bookPath(name).kind !== "unknown");
    if (isOwn || (name === SHOP_FOLDER && (await exists(join(to, SHOP_FOLDER))))) continue;
    await rename(join(from, name), join(to, name));
  }
  for (const folder of [OUTLINE_FOLDER, SHOP_FOLDER, DRAWING_FOLDER]) {
    const names = await readdir(join(from, folder)).catch(() => []);
    const others = names.filter((name) => ["other", "unknown"].includes(bookPath(`${folder}/${name}`).kind));
    if (others.length > 0) await mkdir(join(to, folder), { recursive: true });
    for (const name of others) await rename(join(from, folder, name), join(to, folder, name));
  }
}

/**
 * Writes the files of a book into a folder. They are written to a folder beside it first; only when all of
 * them are on disk do the two change places. If anything fails before that, the old folder is untouched; what
 * does not belong to the book stays in the folder.
 * @param replacesDrawings whether drawings that are there and not among the files are dropped
 */
export async function writeFolder(
  folder: string,
  files: ReadonlyMap<string, string | Uint8Array>,
  replacesDrawings: boolean,
): Promise<void> {
  const isThere = await mustBeBookOrEmpty(folder);
  const fresh = await freeSibling(folder, "new");
  try {
    await mkdir(fresh, { recursive: true });
    for (const [path, content] of files) {
      await mkdir(dirname(join(fresh, path)), { recursive: true });
      await writeSynced(join(fresh, path), content);
    }
  } catch (error) {
    await rm(fresh, { recursive: true, force: true });
    throw error;
  }
  if (!isThere) {
    await rename(fresh, folder);
    return;
  }
  const old = await freeSibling(folder, "old");
  await rename(folder, old);
  try {
    await rename(fresh, folder);
  } catch (error) {
    await rename(old, folder);
    await rm(fresh, { recursive: true, force: true });
    throw error;
  }
  await moveOthers(old, folder, replacesDrawings);
  await removeBook(old);
}

/** Removes the book's own files; a folder that still holds anything else is left, so that nothing is lost. */
async function removeBook(folder: string): Promise<void> {
  for (const inner of [OUTLINE_FOLDER, SHOP_FOLDER, DRAWING_FOLDER, ""]) {
    const here = join(folder, inner);
    for (const name of await readdir(here).catch(() => [])) {
      const path = inner === "" ? name : `${inner}/${name}`;
      if (!["other", "unknown"].includes(bookPath(path).kind)) await rm(join(here, name), { force: true });
    }
    await rmdir(here).catch(() => undefined);
  }
}
