import { createReadStream } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import type { BookFiles } from "../csv/files.ts";
import { bookPath, DRAWING_FOLDER, OUTLINE_FOLDER, SHOP_FOLDER } from "../csv/paths.ts";
import type { FaultLog, FaultNote } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { DrawingIntake, newDrawingBudget } from "./drawing-intake.ts";
import { newBudget, TextIntake } from "./intake.ts";

const CHUNK_BYTES = 64 * 1024;

const byCodePoint = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Names of the plain files of a folder in code-point order; none when there is no such folder. */
async function fileNames(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  return entries
    .filter((entry) => entry.isFile() || entry.isSymbolicLink())
    .map((entry) => entry.name)
    .sort(byCodePoint);
}

export const isFolder = async (path: string): Promise<boolean> =>
  stat(path).then(
    (s) => s.isDirectory(),
    () => false,
  );

/** Takes a file piece by piece; a fault stops the reading. */
interface Intake {
  push(piece: Uint8Array, last: boolean): FaultNote | null;
}

/** Text of one file within the limits of its intake, or null with a fault. */
export const readText = async (
  file: string,
  path: string,
  intake: TextIntake,
  log: FaultLog,
): Promise<string | null> => ((await takeFile(file, path, intake, log)) ? intake.text() : null);

/** Reads one file into an intake; false with a fault when it cannot be read or does not fit. */
async function takeFile(file: string, path: string, intake: Intake, log: FaultLog): Promise<boolean> {
  try {
    for await (const piece of createReadStream(file, { highWaterMark: CHUNK_BYTES })) {
      const fault = intake.push(piece, false);
      if (fault === null) continue;
      log.add(fault);
      return false;
    }
  } catch (error) {
    const why = error instanceof Error && "code" in error ? String(error.code) : "unknown reason";
    log.add({
      code: "file-unreadable",
      file: path,
      expected: `a file that can be read; the system says ${why}`,
    });
    return false;
  }
  const fault = intake.push(new Uint8Array(0), true);
  if (fault === null) return true;
  log.add(fault);
  return false;
}

/** Reads the files of a book's folder, and of the shop in it or beside it, as far as the limits allow. */
export async function readFolderFiles(folder: string, log: FaultLog): Promise<BookFiles> {
  const places: [path: string, file: string][] = [];
  for (const name of await fileNames(folder)) places.push([name, join(folder, name)]);
  const outlines = await fileNames(join(folder, OUTLINE_FOLDER));
  for (const name of outlines.slice(0, LIMITS.outlineFiles)) {
    places.push([`${OUTLINE_FOLDER}/${name}`, join(folder, OUTLINE_FOLDER, name)]);
  }
  if (outlines.length > LIMITS.outlineFiles) {
    log.add({
      code: "file-too-large",
      file: `${OUTLINE_FOLDER}/`,
      expected: `at most ${LIMITS.outlineFiles} files; the others are not read`,
    });
  }
  for (const name of await fileNames(join(folder, DRAWING_FOLDER)))
    places.push([`${DRAWING_FOLDER}/${name}`, join(folder, DRAWING_FOLDER, name)]);
  const shop = await shopFolder(folder);
  if (shop !== null)
    for (const name of await fileNames(shop)) places.push([`${SHOP_FOLDER}/${name}`, join(shop, name)]);
  return readPlaces(places, log);
}

/** Reads the tables of a shop's folder. */
export async function readShopFiles(folder: string, log: FaultLog): Promise<BookFiles> {
  const names = await fileNames(folder);
  return readPlaces(
    names.map((name) => [`${SHOP_FOLDER}/${name}`, join(folder, name)]),
    log,
  );
}

async function readPlaces(places: readonly (readonly [string, string])[], log: FaultLog): Promise<BookFiles> {
  const budget = newBudget();
  const texts = new Map<string, string>();
  const unreadable = new Set<string>();
  const drawingBudget = newDrawingBudget();
  const drawings = new Map<string, Uint8Array>();
  for (const [path, file] of places) {
    const what = bookPath(path);
    const { kind } = what;
    if (kind === "other") continue;
    if (what.kind === "drawing") {
      const intake = new DrawingIntake(path, what.name, drawingBudget);
      if (await takeFile(file, path, intake, log)) drawings.set(what.name, intake.bytes());
      continue;
    }
    const text = kind === "unknown" ? "" : await readText(file, path, new TextIntake(path, budget), log);
    if (text === null) unreadable.add(path);
    else texts.set(path, text);
  }
  return { texts, unreadable, drawings, guarded: true };
}

/** The shop that goes with a book: in its folder, else beside it, else none. */
async function shopFolder(folder: string): Promise<string | null> {
  for (const candidate of [join(folder, SHOP_FOLDER), join(dirname(folder), SHOP_FOLDER)]) {
    if (await isFolder(candidate)) return candidate;
  }
  return null;
}
