import type { BookFiles } from "../csv/files.ts";
import { bookPath } from "../csv/paths.ts";
import type { FaultLog } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import { DrawingIntake, newDrawingBudget } from "./drawing-intake.ts";
import { newBudget, TextIntake } from "./intake.ts";
import type { ZipReader } from "./unzip.ts";

/** Whoever packs a folder often packs the folder itself: then every path starts with its name. */
function commonFolder(names: readonly string[]): string {
  if (names.includes(MACHINE_FILE)) return "";
  const machine = names.find((name) => /^[^/]+\/[^/]+$/.test(name) && name.endsWith(`/${MACHINE_FILE}`));
  return machine === undefined ? "" : machine.slice(0, -MACHINE_FILE.length);
}

/** Reads the files of a book from a ZIP, as far as the limits allow. Only files that a book has are unpacked. */
export async function readZipFiles(zip: ZipReader, log: FaultLog): Promise<BookFiles> {
  const folder = commonFolder(zip.entries.map((entry) => entry.name));
  const budget = newBudget();
  const drawingBudget = newDrawingBudget();
  const drawings = new Map<string, Uint8Array>();
  const texts = new Map<string, string>();
  const unreadable = new Set<string>();
  let outlines = 0;
  for (const entry of zip.entries) {
    if (!entry.name.startsWith(folder)) continue;
    const path = entry.name.slice(folder.length);
    const what = bookPath(path);
    const { kind } = what;
    if (kind === "other") continue;
    if (what.kind === "drawing") {
      const intake = new DrawingIntake(path, what.name, drawingBudget);
      const fault = await zip.read(entry, (piece, last) => intake.push(piece, last));
      if (fault === null) drawings.set(what.name, intake.bytes());
      else log.add({ ...fault, file: path });
      continue;
    }
    if (kind === "unknown") {
      texts.set(path, "");
      continue;
    }
    if (kind === "outline" && ++outlines > LIMITS.outlineFiles) {
      log.add({
        code: "file-too-large",
        file: path,
        expected: `at most ${LIMITS.outlineFiles} outlines; this one is not read`,
      });
      continue;
    }
    const intake = new TextIntake(path, budget);
    const fault = await zip.read(entry, (piece, last) => intake.push(piece, last));
    if (fault === null) texts.set(path, intake.text());
    else {
      log.add({ ...fault, file: path });
      unreadable.add(path);
    }
  }
  return { texts, unreadable, drawings, guarded: true };
}
