import type { FaultLog } from "../fault-log.ts";
import { readDxf } from "./dxf/read.ts";
import type { Outline } from "./outline.ts";
import { joinRings } from "./rings.ts";
import { readSvg } from "./svg/read.ts";

/** Folder of the outlines in the name of a fault's file. */
const FOLDER = "outlines";

/**
 * Reads the outline that a DXF or SVG file draws; which of the two it is says its name. What cannot be read is
 * a fault for each thing. Null when no closed ring is left.
 */
export function readOutline(name: string, text: string, log: FaultLog): Outline | null {
  const drawing = name.toLowerCase().endsWith(".svg") ? readSvg(text) : readDxf(text);
  const { rings, problems } = joinRings(drawing.paths);
  const file = `${FOLDER}/${name}`;
  for (const problem of drawing.problems) {
    log.add({ code: "outline-unreadable", file, row: problem.line, expected: problem.text });
  }
  for (const problem of problems) {
    log.add({ code: "outline-unreadable", file, expected: `closed rings only: ${problem}` });
  }
  if (rings.length > 0) return { rings, source: text };
  if (drawing.problems.length === 0 && problems.length === 0) {
    log.add({ code: "outline-unreadable", file, expected: "at least one closed ring; the drawing has none" });
  }
  return null;
}

/** Reads all outlines of a book. One of which nothing could be read is left out. */
export function readOutlines(
  texts: ReadonlyMap<string, string>,
  log: FaultLog,
): ReadonlyMap<string, Outline> {
  const outlines = new Map<string, Outline>();
  for (const [name, text] of texts) {
    const outline = readOutline(name, text, log);
    if (outline !== null) outlines.set(name, outline);
  }
  return outlines;
}
