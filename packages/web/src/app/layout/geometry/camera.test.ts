import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { barMm, type Camera, fitted, panned, seenBox, toPanel, toScreen, zoomed } from "./camera.ts";

const camera: fc.Arbitrary<Camera> = fc.record({
  scale: fc.double({ min: 0.05, max: 60, noNaN: true }),
  x: fc.double({ min: -2000, max: 2000, noNaN: true }),
  y: fc.double({ min: -2000, max: 2000, noNaN: true }),
  mirrored: fc.boolean(),
});
const screen = fc.record({
  x: fc.double({ min: -2000, max: 2000, noNaN: true }),
  y: fc.double({ min: -2000, max: 2000, noNaN: true }),
});

describe("camera", () => {
  it("goes from the screen to the panel and back", () => {
    fc.assert(
      fc.property(camera, screen, (c, at) => {
        const back = toScreen(c, toPanel(c, at));
        expect(back.x).toBeCloseTo(at.x, 6);
        expect(back.y).toBeCloseTo(at.y, 6);
      }),
      { seed: 7 },
    );
  });

  it("keeps the place under the pointer when it zooms, and takes places along when it pans", () => {
    fc.assert(
      fc.property(camera, screen, fc.double({ min: 0.2, max: 5, noNaN: true }), (c, at, factor) => {
        const place = toPanel(c, at);
        const zoomedTo = toScreen(zoomed(c, factor, at), place);
        expect(zoomedTo.x).toBeCloseTo(at.x, 4);
        expect(zoomedTo.y).toBeCloseTo(at.y, 4);
        const pannedTo = toScreen(panned(c, 12, -5), place);
        expect(pannedTo.x).toBeCloseTo(at.x + 12, 4);
        expect(pannedTo.y).toBeCloseTo(at.y - 5, 4);
      }),
      { seed: 8 },
    );
  });

  it("draws an underside with x to the left and y up", () => {
    const c: Camera = { scale: 2, x: 100, y: 50, mirrored: true };
    expect(toScreen(c, { xMm: 10, yMm: 5 })).toEqual({ x: 80, y: 40 });
  });

  it("fits a box into the middle", () => {
    const box = { minXMm: 0, minYMm: 0, maxXMm: 500, maxYMm: 1000 };
    for (const mirrored of [false, true]) {
      const c = fitted(box, { width: 800, height: 664 }, mirrored);
      expect(c.scale).toBeCloseTo(0.6, 9);
      const middle = toScreen(c, { xMm: 250, yMm: 500 });
      expect(middle.x).toBeCloseTo(400, 9);
      expect(middle.y).toBeCloseTo(332, 9);
      const seen = seenBox(c, { width: 800, height: 664 });
      expect(seen.minYMm).toBeLessThan(0);
      expect(seen.maxYMm).toBeGreaterThan(1000);
    }
  });

  it("gives the scale bar a round length", () => {
    expect(barMm(1, 120)).toBe(100);
    expect(barMm(0.6, 120)).toBe(200);
    expect(barMm(10, 120)).toBe(10);
    expect(barMm(30, 120)).toBe(2);
  });
});
