import {
  differenceRings,
  offsetRings,
  type PointMm,
  polar,
  type RingMm,
  signedArea,
} from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { growRing, isConvex } from "./grow.ts";

const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });

/** Rings with a corner every few degrees at any distance from the middle: they do not cross themselves. */
const star: fc.Arbitrary<RingMm> = fc
  .array(fc.integer({ min: 4, max: 80 }), { minLength: 3, maxLength: 24 })
  .map((radii) => radii.map((r, i) => polar((i * 360) / radii.length, r)));

const area = (rings: readonly RingMm[]): number => rings.reduce((sum, ring) => sum + signedArea(ring), 0);

describe("grown rings", () => {
  it("cover what a general offset covers, but for what arcs are drawn with (seed 5)", () => {
    fc.assert(
      fc.property(star, fc.constantFrom(3, 11.2, 13.5), (ring, byMm) => {
        const grown = growRing(ring, byMm);
        const exact = offsetRings([ring], byMm);
        // Whatever is beyond, or missing, is a strip along the outline thinner than 0.15 mm.
        expect(differenceRings([grown], offsetRings([ring], byMm + 0.15))).toEqual([]);
        const missing = differenceRings(offsetRings([ring], byMm - 0.15), [grown]);
        expect(area(missing)).toBeLessThan(0.05);
        expect(Math.abs(area(differenceRings(exact, [grown])))).toBeLessThan(0.15 * 700);
      }),
      { seed: 5, numRuns: 150 },
    );
  });

  it("have few corners round what is round, and keep long sides exactly", () => {
    const disc = Array.from({ length: 90 }, (_, i) => polar(i * 4, 5));
    expect(growRing(disc, 13.5)).toHaveLength(30);
    const square = [at(0, 0), at(40, 0), at(40, 40), at(0, 40)];
    const grown = growRing(square, 10);
    expect(Math.min(...grown.map((p) => p.yMm))).toBeCloseTo(-10, 9);
    expect(grown.filter((p) => Math.abs(p.xMm - 50) < 1e-9)).toHaveLength(2);
    expect([isConvex(square), isConvex([at(0, 0), at(40, 0), at(10, 10), at(0, 40)])]).toEqual([true, false]);
  });
});
