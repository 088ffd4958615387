import type { BookRow } from "@pinwright/book";
import fc from "fast-check";
import { expect, it } from "vitest";
import { createBook } from "../../testing/book.ts";
import { cutoutDistance, cutoutShape } from "../cutouts/cutout-shape.ts";
import { localWood } from "./local-wood.ts";

const THICKNESS_MM = 13;
const RADIUS_MM = 2;

/** Whether a point lies within a circle, rectangle or slot, from its own numbers. */
function holds(row: BookRow<"cutouts">, xMm: number, yMm: number): boolean {
  const turn = (row.rotation_deg * Math.PI) / 180;
  const [dx, dy] = [xMm - row.x_mm, yMm - row.y_mm];
  const x = Math.abs(dx * Math.cos(turn) + dy * Math.sin(turn));
  const y = Math.abs(dy * Math.cos(turn) - dx * Math.sin(turn));
  const [w, h] = [row.width_mm ?? 0, row.height_mm ?? 0];
  if (row.shape === "circle") return Math.hypot(x, y) < w / 2;
  if (row.shape === "rect") return x < w / 2 && y < h / 2;
  return Math.hypot(Math.max(0, x - (w - h) / 2), y) < h / 2;
}

/** Points over the disc of a thread, its rim included. */
const DISC = Array.from({ length: 40 * 72 }, (_, i) => {
  const r = (RADIUS_MM * (Math.floor(i / 72) + 1)) / 40;
  const turn = ((i % 72) * Math.PI) / 36;
  return { xMm: r * Math.cos(turn), yMm: r * Math.sin(turn) };
});

it("finds the wood that boring into many points of the thread's disc finds", () => {
  const cutout = fc.record({
    side: fc.constantFrom("top" as const, "under" as const),
    shape: fc.constantFrom("circle" as const, "rect" as const, "slot" as const),
    x_mm: fc.integer({ min: -12, max: 12 }),
    y_mm: fc.integer({ min: -12, max: 12 }),
    width_mm: fc.integer({ min: 8, max: 20 }),
    height_mm: fc.integer({ min: 3, max: 8 }),
    rotation_deg: fc.integer({ min: 0, max: 359 }),
    depth_mm: fc.option(fc.integer({ min: 1, max: 6 }), { freq: 6 }),
  });
  const side = fc.constantFrom("top" as const, "under" as const);
  fc.assert(
    fc.property(fc.array(cutout, { maxLength: 4 }), side, (cutouts, from) => {
      const book = createBook({
        panels: [{ id: "pf", wood: "hardwood", width_mm: 100, height_mm: 100, thickness_mm: THICKNESS_MM }],
        cutouts: cutouts.map((row, i) => ({ id: `c${i}`, panel: "pf", ...row })),
      });
      const [panel] = book.tables.panels;
      if (panel === undefined) return;
      const rows = book.tables.cutouts;
      const shapes = rows.flatMap((row) => cutoutShape(book, row) ?? []);
      const axis = { xMm: 0, yMm: 0, side: from, radiusMm: RADIUS_MM, ownHoleMm: 0 };
      // Where a side only grazes the thread or the axis, points that are so far apart cannot tell.
      fc.pre(
        shapes.every((shape) => {
          const mm = cutoutDistance(shape, axis);
          return Math.abs(mm) > 0.1 && Math.abs(mm - RADIUS_MM) > 0.1;
        }),
      );
      const wood = localWood(panel, undefined, shapes, axis);
      const over = (p: { xMm: number; yMm: number }) => rows.filter((row) => holds(row, p.xMm, p.yMm));
      const bored = [...DISC, { xMm: 0, yMm: 0 }].map(over);
      const depths = (own: boolean) =>
        bored.flat().flatMap(({ depth_mm, side: s }) => ((s === from) === own ? (depth_mm ?? []) : []));
      expect(wood.hole !== null).toBe(bored.flat().some(({ depth_mm }) => depth_mm === null));
      expect(wood.endMm).toBe(THICKNESS_MM - Math.max(0, ...depths(false)));
      expect(wood.wholeFromMm).toBe(Math.max(0, ...depths(true)));
      const atAxis = over({ xMm: 0, yMm: 0 }).filter((row) => row.side === from);
      expect(wood.recessMm).toBe(Math.max(0, ...atAxis.map(({ depth_mm }) => depth_mm ?? 0)));
    }),
    { numRuns: 80, seed: 3 },
  );
});
