import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SnapMover, type SnapTarget, snapped } from "./snap.ts";

const square = (id: string, xMm: number, yMm: number, half: number): SnapTarget => ({
  id,
  xMm,
  yMm,
  box: { minXMm: xMm - half, maxXMm: xMm + half, minYMm: yMm - half, maxYMm: yMm + half },
});
const mover: SnapMover = { box: square("m", 0, 0, 5).box, origin: { xMm: 0, yMm: 0 } };

describe("snapped", () => {
  it("lines up middles and tells the free distance", () => {
    const { dxMm, dyMm, guides } = snapped(mover, 99, 43, [square("a", 100, 0, 8)], 0, 2);
    expect([dxMm, dyMm]).toEqual([100, 43]);
    expect(guides).toEqual([{ axis: "x", atMm: 100, fromMm: -8, toMm: 48, gapMm: 30, targetId: "a" }]);
  });

  it("lines up edges with edges", () => {
    const { dxMm, guides } = snapped(mover, 96.4, 43, [square("a", 100, 0, 8)], 0, 1);
    expect(dxMm).toBe(97);
    expect(guides[0]?.atMm).toBe(92);
  });

  it("takes the nearest of several that fit equally well", () => {
    const targets = [square("far", 100, 500, 5), square("near", 100, 0, 5)];
    expect(snapped(mover, 99.5, 30, targets, 0, 2).guides[0]?.targetId).toBe("near");
  });

  it("puts the origin on the grid where nothing is near", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.double({ min: -500, max: 500, noNaN: true }),
        fc.constantFrom(0.5, 1, 2.5, 5, 10),
        (dx, dy, grid) => {
          const result = snapped({ ...mover, origin: { xMm: 1.3, yMm: -0.7 } }, dx, dy, [], grid, 3);
          const steps = (1.3 + result.dxMm) / grid;
          expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-6);
          expect(Math.abs(result.dxMm - dx)).toBeLessThanOrEqual(grid / 2 + 1e-9);
          expect(result.guides).toEqual([]);
        },
      ),
      { seed: 11 },
    );
  });
});
