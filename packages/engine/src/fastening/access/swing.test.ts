import { type PointMm, pointInRing, polar, segmentsMeet } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blockedBearings, freestSector, type Handle } from "./swing.ts";

const HANDLE: Handle = { tipDiameterMm: 18, gripDiameterMm: 10, gripLengthMm: 80 };

/** Corners of a handle at a bearing, its end cut off square within its circle. */
function bar(deg: number, handle: Handle): readonly PointMm[] {
  const half = handle.gripDiameterMm / 2;
  const end = Math.sqrt(handle.gripLengthMm ** 2 - half ** 2);
  const { xMm: c, yMm: s } = polar(deg, 1);
  return [
    [0, -half],
    [end, -half],
    [end, half],
    [0, half],
  ].map(([x = 0, y = 0]) => ({ xMm: x * c - y * s, yMm: x * s + y * c }));
}

const cross = (a: readonly PointMm[], b: readonly PointMm[]): boolean =>
  a.some((p, i) =>
    b.some((q, j) =>
      segmentsMeet({ a: p, b: a[(i + 1) % a.length] ?? p }, { a: q, b: b[(j + 1) % b.length] ?? q }),
    ),
  );
const meet = (a: readonly PointMm[], b: readonly PointMm[]): boolean =>
  cross(a, b) ||
  a.some((p) => pointInRing(p, b) === "inside") ||
  b.some((p) => pointInRing(p, a) === "inside");

const obstacle = fc
  .record({
    radii: fc.array(fc.integer({ min: 3, max: 25 }), { minLength: 3, maxLength: 7 }),
    deg: fc.integer({ min: 0, max: 359 }),
    mm: fc.integer({ min: 0, max: 110 }),
  })
  .map(({ radii, deg, mm }): PointMm[] => {
    const at = polar(deg, mm);
    return radii.map((r, i) => {
      const p = polar((i * 360) / radii.length + 17, r);
      return { xMm: at.xMm + p.xMm, yMm: at.yMm + p.yMm };
    });
  });

const blocked = (deg: number, bearings: readonly (readonly [number, number])[], slack: number): boolean =>
  bearings.some(([from, to]) =>
    [-360, 0, 360].some((turn) => deg + turn > from - slack && deg + turn < to + slack),
  );

describe("blockedBearings", () => {
  it("agrees with a bar laid at every fifth degree", () => {
    fc.assert(
      fc.property(obstacle, (ring) => {
        const bearings = blockedBearings({ xMm: 0, yMm: 0 }, HANDLE, ring);
        for (let deg = 0; deg < 360; deg += 5) {
          if (meet(bar(deg, HANDLE), ring)) expect(blocked(deg, bearings, 1e-6)).toBe(true);
          // A bar with a long end beyond its circle meets all that the rounded one does.
          const longer = { ...HANDLE, gripLengthMm: HANDLE.gripLengthMm + 1, gripDiameterMm: 10.2 };
          if (blocked(deg, bearings, -1e-6) && bearings[0]?.[1] !== 360)
            expect(meet(bar(deg, longer), ring)).toBe(true);
        }
      }),
      { numRuns: 200, seed: 3 },
    );
  });
});

describe("freestSector", () => {
  const count = (a: readonly string[], b: readonly string[]): number => a.length - b.length;

  it("finds a gap exactly as wide as the swing", () => {
    const met = new Map([["a", [[60, 360] as const]]]);
    expect(freestSector(met, 60, count)).toEqual([]);
    expect(freestSector(met, 60.1, count)).toEqual(["a"]);
  });

  it("is as good as any of a thousand sectors", () => {
    const interval = fc.record({
      key: fc.constantFrom("a", "b", "c", "d"),
      from: fc.integer({ min: 0, max: 359 }),
      width: fc.integer({ min: 1, max: 200 }),
    });
    fc.assert(
      fc.property(
        fc.array(interval, { maxLength: 8 }),
        fc.integer({ min: 10, max: 180 }),
        (intervals, swing) => {
          const met = new Map<string, (readonly [number, number])[]>();
          for (const { key, from, width } of intervals)
            met.set(key, [...(met.get(key) ?? []), [from, from + width]]);
          const best = freestSector(met, swing, count);
          for (let from = 0; from < 360; from += 0.36) {
            const own = [...met].filter(([, list]) =>
              list.some(([low, high]) =>
                [-360, 0, 360].some((t) => from + t < high - 1e-6 && low < from + swing + t - 1e-6),
              ),
            );
            expect(best.length).toBeLessThanOrEqual(own.length);
          }
        },
      ),
      { numRuns: 60, seed: 9 },
    );
  });
});
