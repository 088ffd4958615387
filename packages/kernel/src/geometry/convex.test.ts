import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { intersectionRings } from "./boolean.ts";
import { convexHull, convexOverlap, convexPieces, isConvex } from "./convex.ts";
import type { PointMm } from "./point.ts";
import { pointInRing, ringSides, signedArea } from "./polygon.ts";
import { ringDistance } from "./ring-distance.ts";
import { segmentDistance } from "./segment.ts";

const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });

/** Rings round (0, 0): one corner in each direction, so that no side crosses another. */
const star: fc.Arbitrary<readonly PointMm[]> = fc
  .array(fc.integer({ min: 2, max: 40 }), { minLength: 3, maxLength: 14 })
  .map((radii) =>
    radii.map((r, i) => {
      const angle = (2 * Math.PI * i) / radii.length;
      return at(r * Math.cos(angle), r * Math.sin(angle));
    }),
  );

const placed = fc
  .tuple(star, fc.integer({ min: -60, max: 60 }), fc.integer({ min: -60, max: 60 }))
  .map(([ring, x, y]) => ring.map((p) => at(p.xMm + x, p.yMm + y)));

const area = (rings: readonly (readonly PointMm[])[]): number =>
  rings.reduce((sum, ring) => sum + signedArea(ring), 0);

describe("convex pieces", () => {
  test("of an angle, by hand: an L of 10 × 10 with legs of 4 has 64 mm²", () => {
    const angle = [at(0, 0), at(10, 0), at(10, 4), at(4, 4), at(4, 10), at(0, 10)];
    expect(isConvex(angle)).toBe(false);
    const pieces = convexPieces(angle);
    expect(pieces).toHaveLength(4);
    expect(area(pieces)).toBeCloseTo(64, 9);
  });

  test("of a convex ring, either way round, are the ring itself, anticlockwise", () => {
    const square = [at(0, 0), at(4, 0), at(4, 4), at(2, 4), at(0, 4)];
    expect(convexPieces(square)).toEqual([square]);
    expect(convexPieces(square.toReversed())).toEqual([square]);
    expect(convexPieces([at(0, 0), at(1, 1)])).toEqual([]);
  });

  test("are convex, run anticlockwise and have the area of the ring", () => {
    fc.assert(
      fc.property(star, (ring) => {
        const pieces = convexPieces(ring);
        expect(pieces.every((piece) => isConvex(piece) && signedArea(piece) > 0)).toBe(true);
        expect(area(pieces)).toBeCloseTo(Math.abs(signedArea(ring)), 6);
      }),
      { seed: 1 },
    );
  });
});

describe("convex hull", () => {
  test("leaves out what lies within and on a side", () => {
    const points = [at(0, 0), at(2, 0), at(4, 0), at(4, 4), at(1, 1), at(0, 4), at(4, 0)];
    expect(convexHull(points)).toEqual([at(0, 0), at(4, 0), at(4, 4), at(0, 4)]);
    expect(convexHull([at(3, 3), at(3, 3)]).length).toBeLessThan(3);
    expect(convexHull([at(0, 0), at(2, 2), at(1, 1)])).toEqual([at(0, 0), at(2, 2)]);
  });

  test("is convex, holds every point, and has corners among the points", () => {
    fc.assert(
      fc.property(star, (points) => {
        const hull = convexHull(points);
        expect(isConvex(hull)).toBe(true);
        for (const p of points) expect(pointInRing(p, hull, 1e-6)).not.toBe("outside");
        for (const p of hull) expect(points).toContain(p);
      }),
      { seed: 2 },
    );
  });
});

describe("distance of two rings", () => {
  const square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];
  const moved = (x: number, y: number): readonly PointMm[] => square.map((p) => at(p.xMm + x, p.yMm + y));

  test("by hand: beside, across a corner, touching, within", () => {
    expect(ringDistance(square, moved(12, 3))).toBe(2);
    expect(ringDistance(square, moved(13, 14))).toBe(5);
    expect(ringDistance(square, moved(10, 10))).toBe(0);
    expect(ringDistance(square, [at(4, 4), at(6, 4), at(5, 6)])).toBe(0);
    expect(ringDistance([at(4, 4), at(6, 4), at(5, 6)], square)).toBe(0);
    expect(ringDistance(square, moved(30, 0), 0.5)).toBeGreaterThan(0.5);
    expect(ringDistance(square, [])).toBe(Number.POSITIVE_INFINITY);
  });

  test("is the least distance of their sides, or 0 when a corner of one lies in the other", () => {
    fc.assert(
      fc.property(placed, placed, fc.double({ min: 0.1, max: 50, noNaN: true }), (a, b, limit) => {
        const sides = ringSides(a).flatMap((s) => ringSides(b).map((t) => segmentDistance(s, t)));
        const within =
          a.some((p) => pointInRing(p, b) !== "outside") || b.some((p) => pointInRing(p, a) !== "outside");
        const expected = within ? 0 : Math.min(...sides);
        expect(ringDistance(a, b)).toBe(expected);
        expect(ringDistance(b, a)).toBeCloseTo(expected, 9);
        const limited = ringDistance(a, b, limit);
        if (expected <= limit) expect(limited).toBe(expected);
        else expect(limited).toBeGreaterThan(limit);
      }),
      { seed: 3, numRuns: 200 },
    );
  });
});

describe("what two convex rings share", () => {
  const square = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];

  test("is the square between two squares, and nothing when they are apart", () => {
    const far = square.map((p) => ({ xMm: p.xMm + 5, yMm: p.yMm + 5 }));
    expect(signedArea(convexOverlap(square, far))).toBeCloseTo(25, 9);
    expect(signedArea(convexOverlap(square, square))).toBeCloseTo(100, 9);
    expect(
      convexOverlap(
        square,
        square.map((p) => ({ xMm: p.xMm + 50, yMm: p.yMm })),
      ).length,
    ).toBe(0);
    expect(convexOverlap([], square)).toEqual([]);
  });

  test("has the area that the general overlap of rings has", () => {
    const points = fc.array(
      fc.record({ xMm: fc.integer({ min: 0, max: 40 }), yMm: fc.integer({ min: 0, max: 40 }) }),
      { minLength: 3, maxLength: 12 },
    );
    fc.assert(
      fc.property(points, points, (one, two) => {
        const [a, b] = [convexHull(one), convexHull(two)];
        fc.pre(a.length > 2 && b.length > 2);
        const general = intersectionRings([a], [b]).reduce((sum, ring) => sum + signedArea(ring), 0);
        // The general one works in whole micrometres.
        expect(Math.abs(signedArea(convexOverlap(a, b)) - general)).toBeLessThan(0.2);
      }),
      { seed: 7, numRuns: 200 },
    );
  });
});
