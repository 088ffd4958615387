import type { BookRow } from "@pinwright/book";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createBook } from "../../testing/book.ts";
import {
  type CutoutShape,
  cutoutDepths,
  cutoutDistance,
  cutoutShape,
  cutoutWidthMm,
} from "./cutout-shape.ts";

const SQUARE_WITH_HOLE = {
  rings: [
    [
      { xMm: -10, yMm: -10 },
      { xMm: 10, yMm: -10 },
      { xMm: 10, yMm: 10 },
      { xMm: -10, yMm: 10 },
    ],
    [
      { xMm: -4, yMm: -4 },
      { xMm: -4, yMm: 4 },
      { xMm: 4, yMm: 4 },
      { xMm: 4, yMm: -4 },
    ],
  ],
};

function shapeOf(row: Partial<BookRow<"cutouts">>): CutoutShape {
  const book = createBook({ cutouts: [{ id: "c", panel: "pf", side: "top", x_mm: 0, y_mm: 0, ...row }] });
  const full = book.tables.cutouts[0] ?? expect.fail();
  return (
    cutoutShape({ ...book, outlines: new Map([["frame.svg", SQUARE_WITH_HOLE]]) }, full) ?? expect.fail()
  );
}

const at = (xMm: number, yMm: number) => ({ xMm, yMm });

describe("cutoutDistance", () => {
  it("is the distance from a circle's side", () => {
    const circle = shapeOf({ shape: "circle", x_mm: 10, width_mm: 8 });
    expect(cutoutDistance(circle, at(10, 0))).toBe(-4);
    expect(cutoutDistance(circle, at(10, 10))).toBe(6);
  });

  it("is the distance from a turned rectangle's side", () => {
    const rect = shapeOf({ shape: "rect", width_mm: 20, height_mm: 10, rotation_deg: 90 });
    expect(cutoutDistance(rect, at(0, 0))).toBe(-5);
    expect(cutoutDistance(rect, at(4, 0))).toBeCloseTo(-1, 12);
    expect(cutoutDistance(rect, at(8, 0))).toBeCloseTo(3, 12);
    expect(cutoutDistance(rect, at(8, 14))).toBeCloseTo(5, 12);
  });

  it("is the distance from a slot with round ends", () => {
    const slot = shapeOf({ shape: "slot", width_mm: 20, height_mm: 6 });
    expect(cutoutDistance(slot, at(0, 5))).toBe(2);
    expect(cutoutDistance(slot, at(12, 0))).toBe(2);
    expect(cutoutDistance(slot, at(10, 4))).toBeCloseTo(2, 12);
    expect(cutoutWidthMm(slot)).toBe(6);
  });

  it("is that of a drawing with a hole in it", () => {
    const frame = shapeOf({ shape: "outline", outline: "frame.svg", x_mm: 100 });
    expect(cutoutDistance(frame, at(100, 0))).toBe(4);
    expect(cutoutDistance(frame, at(107, 0))).toBe(-3);
    expect(cutoutDistance(frame, at(115, 0))).toBe(5);
  });

  it("agrees with the nearest of many points on the side of the shape", () => {
    const row = fc.record({
      shape: fc.constantFrom("circle" as const, "rect" as const, "slot" as const),
      x_mm: fc.integer({ min: -20, max: 20 }),
      width_mm: fc.integer({ min: 10, max: 40 }),
      height_mm: fc.integer({ min: 4, max: 10 }),
      rotation_deg: fc.integer({ min: -180, max: 180 }),
    });
    const point = fc.record({
      xMm: fc.integer({ min: -40, max: 40 }),
      yMm: fc.integer({ min: -40, max: 40 }),
    });
    fc.assert(
      fc.property(row, point, (given, p) => {
        const turn = (given.rotation_deg * Math.PI) / 180;
        const [x, y] = [p.xMm - given.x_mm, p.yMm];
        const own = at(x * Math.cos(turn) + y * Math.sin(turn), y * Math.cos(turn) - x * Math.sin(turn));
        const sides = sidePoints(given);
        const nearest = Math.min(...sides.map((q) => Math.hypot(q.xMm - own.xMm, q.yMm - own.yMm)));
        expect(Math.abs(Math.abs(cutoutDistance(shapeOf(given), p)) - nearest)).toBeLessThan(0.06);
        if (nearest > 0.1) expect(cutoutDistance(shapeOf(given), p) < 0).toBe(holds(given, own));
      }),
      { numRuns: 300, seed: 7 },
    );
  });
});

interface Sizes {
  readonly shape: "circle" | "rect" | "slot";
  readonly width_mm: number;
  readonly height_mm: number;
}

const STEPS = 1500;

/** Points on the side of a shape in its own frame, less than 0.1 mm apart. */
function sidePoints({ shape, width_mm: w, height_mm: h }: Sizes): readonly { xMm: number; yMm: number }[] {
  const share = Array.from({ length: STEPS }, (_, i) => i / STEPS);
  const around = (r: number, dx: number) =>
    share.map((s) => at(dx + r * Math.cos(s * 2 * Math.PI), r * Math.sin(s * 2 * Math.PI)));
  if (shape === "circle") return around(w / 2, 0);
  const along = share.flatMap((s) => [at((s - 0.5) * w, h / 2), at((s - 0.5) * w, -h / 2)]);
  if (shape === "rect")
    return [
      ...along,
      ...share.flatMap((s) => [at(w / 2, (s - 0.5) * h), at(-w / 2, (s - 0.5) * h)]),
      at(w / 2, h / 2),
    ];
  const half = (w - h) / 2;
  const ends = [...around(h / 2, half), ...around(h / 2, -half)].filter(({ xMm }) => Math.abs(xMm) >= half);
  return [...along.filter(({ xMm }) => Math.abs(xMm) <= half), ...ends];
}

/** Whether a point of its own frame lies within a shape. */
function holds(
  { shape, width_mm: w, height_mm: h }: Sizes,
  { xMm, yMm }: { xMm: number; yMm: number },
): boolean {
  if (shape === "circle") return Math.hypot(xMm, yMm) < w / 2;
  if (shape === "rect") return Math.abs(xMm) < w / 2 && Math.abs(yMm) < h / 2;
  return Math.hypot(Math.max(0, Math.abs(xMm) - (w - h) / 2), yMm) < h / 2;
}

describe("cutoutDepths", () => {
  it("counts from the face of either side", () => {
    const pocket = { side: "top", depthMm: 6 } as const;
    expect(cutoutDepths(pocket, 13, "top")).toEqual([0, 6]);
    expect(cutoutDepths(pocket, 13, "under")).toEqual([7, 13]);
  });

  it("goes right through when it is as deep as the panel is thick", () => {
    expect(cutoutDepths({ side: "top", depthMm: 13 }, 13, "under")).toEqual([0, 13]);
    expect(cutoutDepths({ side: "under", depthMm: null }, 13, "top")).toEqual([0, 13]);
  });
});
