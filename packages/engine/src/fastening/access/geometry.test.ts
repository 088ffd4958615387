import { type PointMm, pointInRing, polar, seededRandom } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { discMeetsRing, ringDistance } from "./geometry.ts";

/** A ring about the origin whose corners lie in the order of their bearings: often not convex, never crossing itself. */
const star = fc
  .array(fc.integer({ min: 4, max: 40 }), { minLength: 3, maxLength: 9 })
  .map((radii): PointMm[] => radii.map((r, i) => polar((i * 360) / radii.length, r)));
const place = fc.record({
  xMm: fc.integer({ min: -60, max: 60 }),
  yMm: fc.integer({ min: -60, max: 60 }),
});

/** Points strewn over a disc, as many on its rim as within. */
function strewn(middle: PointMm, radiusMm: number): readonly PointMm[] {
  const random = seededRandom(7);
  return Array.from({ length: 400 }, (_, i) => {
    const p = polar(random() * 360, radiusMm * (i % 2 === 0 ? 1 : Math.sqrt(random())));
    return { xMm: middle.xMm + p.xMm, yMm: middle.yMm + p.yMm };
  });
}

describe("discMeetsRing", () => {
  it("agrees with points strewn over the disc", () => {
    fc.assert(
      fc.property(star, place, fc.integer({ min: 1, max: 30 }), (ring, middle, radiusMm) => {
        const inside = (grownMm: number): boolean =>
          strewn(middle, radiusMm + grownMm).some((p) => pointInRing(p, ring) === "inside");
        if (inside(0)) expect(discMeetsRing(middle, radiusMm + 0.001, ring)).toBe(true);
        // Where the disc is said to meet the ring, one that is a little larger has a point in it, or the ring a corner in it.
        if (discMeetsRing(middle, radiusMm, ring)) {
          const corner = ring.some((p) => Math.hypot(p.xMm - middle.xMm, p.yMm - middle.yMm) <= radiusMm + 2);
          expect(corner || inside(2)).toBe(true);
        }
      }),
      { numRuns: 300, seed: 11 },
    );
  });

  it("does not count what only touches", () => {
    const square = [polar(45, 10), polar(135, 10), polar(225, 10), polar(315, 10)];
    const side = 10 / Math.SQRT2;
    expect(discMeetsRing({ xMm: side + 5, yMm: 0 }, 5, square)).toBe(false);
    expect(discMeetsRing({ xMm: side + 5, yMm: 0 }, 5.01, square)).toBe(true);
  });
});

describe("ringDistance", () => {
  it("is the least distance of strewn points of the ring's area, and 0 within", () => {
    fc.assert(
      fc.property(star, place, (ring, p) => {
        const exact = ringDistance(p, ring);
        const sampled = ring.flatMap((a, i) => {
          const b = ring[(i + 1) % ring.length] ?? a;
          return Array.from({ length: 50 }, (_, k) =>
            Math.hypot(
              a.xMm + ((b.xMm - a.xMm) * k) / 50 - p.xMm,
              a.yMm + ((b.yMm - a.yMm) * k) / 50 - p.yMm,
            ),
          );
        });
        if (pointInRing(p, ring) === "inside") expect(exact).toBe(0);
        else {
          expect(exact).toBeLessThanOrEqual(Math.min(...sampled) + 1e-9);
          expect(exact).toBeGreaterThanOrEqual(Math.min(...sampled) - 2);
        }
      }),
      { numRuns: 300, seed: 5 },
    );
  });
});
