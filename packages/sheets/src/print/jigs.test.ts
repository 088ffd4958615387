import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { FastenerItem, LineResult } from "@pinwright/engine";
import { afterAll, beforeAll, expect, test } from "vitest";
import { composeAssemblySheets } from "../assembly-sheets.ts";
import type { SheetDocument } from "../compose/document.ts";
import type { AssemblySheetKind } from "../identity.ts";
import { OPTIONS, woodenLine } from "../testing/first-light.ts";
import { readDxf } from "../testing/read-dxf.ts";
import { renderDocument } from "./render.ts";

/** A jig's hole falls on the hole of the panel within this. */
const ON_HOLE_MM = 0.05;
/** Width of the deck of first-light: seen from below, x runs from its other edge. */
const DECK_MM = 400;

const folder = mkdtempSync(join(tmpdir(), "pinwright-jigs-"));
afterAll(() => rmSync(folder, { recursive: true }));

let line: LineResult;
beforeAll(async () => {
  line = await woodenLine();
});

async function written(document: SheetDocument, format: "pdf" | "dxf"): Promise<string> {
  const path = join(folder, `${document.fileName}.${format}`);
  writeFileSync(path, await renderDocument(document, format));
  return path;
}

const drawings = (kind: AssemblySheetKind): readonly SheetDocument[] =>
  [...composeAssemblySheets(line, OPTIONS, [kind])].filter((d) => d.drawing !== null);

const fasteners = (ids: readonly string[]): readonly FastenerItem[] =>
  ids.flatMap((id) => {
    const item = line.machine.items.get(id);
    return item?.kind === "fastener" ? [item] : [];
  });

/** Where a fastener of the underside is as the panel lies inverted. */
const lying = (item: FastenerItem): readonly [number, number] => [DECK_MM - item.place.xMm, item.place.yMm];

test.each(["drill-table", "pilot-template"] as const)(
  "the holes of the %s read back from DXF fall on those of the panel, with their drills",
  async (kind) => {
    const [document] = drawings(kind);
    if (document === undefined) throw new Error("the deck is drilled");
    const read = readDxf(await written(document, "dxf"));
    expect([read.errors, read.fixes, read.units]).toEqual([0, 0, 4]);
    const holes = read.circles.filter(([layer]) => layer.startsWith("DRILL_UNDER_"));
    const all = fasteners([...line.fastening.fits.keys()]);
    expect(holes).toHaveLength(all.length);
    for (const item of all) {
      const [x, y] = lying(item);
      const hole = line.fastening.fits.get(item.id)?.hole;
      const found = holes.find(([, hx, hy]) => Math.hypot(hx - x, hy - y) < ON_HOLE_MM);
      expect(found, item.id).toBeDefined();
      expect((found?.[3] ?? 0) * 2).toBeCloseTo(hole?.diameterMm ?? 0, 4);
      const depth = hole?.depthMm ?? null;
      const ending = depth === null ? "THROUGH" : `Z${String(Math.round(depth * 10)).padStart(3, "0")}`;
      expect(found?.[0]).toBe(
        `DRILL_UNDER_D${String(Math.round((hole?.diameterMm ?? 0) * 100)).padStart(3, "0")}_${ending}`,
      );
    }
    // The edge of the panel, true to size, from 0, 0.
    const [edge] = read.outlines.filter(([layer]) => layer === "CUT");
    expect(edge?.[1].map(([x]) => x).sort((a, b) => a - b)).toEqual([0, 0, DECK_MM, DECK_MM]);
    expect(Math.max(...(edge?.[1] ?? []).map(([, y]) => y))).toBe(300);
  },
);

test("the holes of each tray fall on those of the panel as it lies, wider than the thread by half a millimetre", async () => {
  const steps = line.steps.steps.filter((s) => s.fastenerIds.length > 0);
  const trays = drawings("screw-tray");
  expect(trays).toHaveLength(steps.length);
  for (const [i, step] of steps.entries()) {
    const document = trays[i];
    if (document === undefined) continue;
    const read = readDxf(await written(document, "dxf"));
    expect([read.errors, read.fixes, read.units]).toEqual([0, 0, 4]);
    expect(read.layers).toEqual(expect.arrayContaining(["CUT", "DRILL_TRAY", "ENGRAVE"]));
    const holes = read.circles.filter(([layer]) => layer === "DRILL_TRAY");
    const own = fasteners(step.fastenerIds);
    expect(holes).toHaveLength(own.length);
    for (const item of own) {
      const [x, y] = lying(item);
      const found = holes.find(([, hx, hy]) => Math.hypot(hx - x, hy - y) < ON_HOLE_MM);
      expect((found?.[3] ?? 0) * 2, item.id).toBeCloseTo(item.type.diameter_mm + 0.5, 4);
    }
    const [cut] = read.outlines.filter(([layer]) => layer === "CUT");
    const xs = cut?.[1].map(([x]) => x) ?? [];
    for (const [, x] of holes) {
      expect(x).toBeGreaterThan(Math.min(...xs));
      expect(x).toBeLessThan(Math.max(...xs));
    }
  }
});

/** Extents of all closed paths of straight lines on a page, as poppler reads them. */
function extentsMm(pdf: string): readonly (readonly [width: number, height: number])[] {
  const svg = execFileSync("pdftocairo", ["-svg", "-noshrink", pdf, "-"], {
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  return [...svg.matchAll(/<path[^>]*>/gu)].flatMap(([path]) => {
    const d = /\sd="(M [^"C]*Z)[^"]*"/u.exec(path)?.[1];
    if (d === undefined) return [];
    const scale = Math.abs(Number(/matrix\(([\d.-]+)/u.exec(path)?.[1] ?? "1"));
    const numbers = [...d.matchAll(/-?[\d.]+/gu)].map(([n]) => (Number(n) * scale * 25.4) / 72);
    const xs = numbers.filter((_, i) => i % 2 === 0);
    const ys = numbers.filter((_, i) => i % 2 === 1);
    return [[Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)] as const];
  });
}

test("the deck measures 400 × 300 mm on the PDF of map, drilling and template, within 0.1 mm a metre", async () => {
  for (const kind of ["screw-map", "drill-table", "pilot-template"] as const) {
    const document = drawings(kind)[0];
    if (document === undefined) throw new Error(`${kind} is a drawing`);
    const near = extentsMm(await written(document, "pdf")).filter(
      ([width, height]) => Math.abs(width - DECK_MM) < 0.5 && Math.abs(height - 300) < 0.5,
    );
    expect(near.length, kind).toBeGreaterThan(0);
    for (const [width, height] of near) {
      expect(Math.abs(width - DECK_MM)).toBeLessThan(0.04);
      expect(Math.abs(height - 300)).toBeLessThan(0.03);
    }
  }
});
