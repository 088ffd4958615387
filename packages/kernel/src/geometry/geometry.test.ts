import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cosSinDeg, directionDeg, normaliseDeg, polar, rotatePoint, turnDeg } from "./angle.ts";
import { differenceRings, offsetRings, thickenLine, unionRings } from "./boolean.ts";
import { boxOf } from "./box.ts";
import { composeFrames, type FrameMm, fromFrame, intoFrame, mirrorDeg, mirrorX } from "./frame.ts";
import { GridIndex } from "./grid-index.ts";
import { distance, pointAlong, pointBetween, polylineLength } from "./point.ts";
import { centroid, pointInRing, pointInRings, type RingMm, signedArea } from "./polygon.ts";
import {
  circleRectangleDistance,
  pointRectangleDistance,
  type RectangleMm,
  rectangleCorners,
  rectangleDistance,
  rectanglesOverlap,
  segmentRectangleDistance,
} from "./rectangle.ts";
import { type SegmentMm, segmentDistance, segmentIntersection, segmentsMeet } from "./segment.ts";
import { fromFrame3, intoFrame3, rotateXyz } from "./space.ts";

const SEED = { seed: 20_261 };
const at = (xMm: number, yMm: number) => ({ xMm, yMm });
const mm = fc.double({ min: -1000, max: 1000, noNaN: true });
const point = fc.record({ xMm: mm, yMm: mm });
const deg = fc.double({ min: -720, max: 720, noNaN: true });
const frame = fc.record({ xMm: mm, yMm: mm, rotationDeg: deg });
const size = fc.double({ min: 1, max: 200, noNaN: true });
const near = fc.double({ min: -200, max: 200, noNaN: true });
const rectangle: fc.Arbitrary<RectangleMm> = fc.record({
  xMm: near,
  yMm: near,
  rotationDeg: deg,
  widthMm: size,
  depthMm: size,
});
const whole = fc.integer({ min: -200, max: 200 });
const segment: fc.Arbitrary<SegmentMm> = fc.record({
  a: fc.record({ xMm: whole, yMm: whole }),
  b: fc.record({ xMm: whole, yMm: whole }),
});
const SQUARE: RingMm = [at(0, 0), at(10, 0), at(10, 10), at(0, 10)];
const HOLE: RingMm = [at(2, 2), at(2, 8), at(8, 8), at(8, 2)];

describe("angles", () => {
  test("multiples of 90 do not drift", () => {
    expect([0, 90, 180, 270, 360, -90].map((d) => cosSinDeg(d))).toEqual([
      { cos: 1, sin: 0 },
      { cos: 0, sin: 1 },
      { cos: -1, sin: 0 },
      { cos: 0, sin: -1 },
      { cos: 1, sin: 0 },
      { cos: 0, sin: -1 },
    ]);
  });

  test("a direction is the direction of its vector", () => {
    fc.assert(
      fc.property(deg, size, (d, length) => {
        expect(Math.abs(turnDeg(directionDeg(polar(d, length)), d))).toBeLessThan(1e-9);
      }),
      SEED,
    );
  });

  test("normalised angles lie in [0, 360), turns in (−180, 180]", () => {
    fc.assert(
      fc.property(deg, deg, (a, b) => {
        expect(normaliseDeg(a)).toBeGreaterThanOrEqual(0);
        expect(normaliseDeg(a)).toBeLessThan(360);
        expect(turnDeg(a, b)).toBeGreaterThan(-180);
        expect(turnDeg(a, b)).toBeLessThanOrEqual(180);
      }),
      SEED,
    );
  });
});

describe("frames", () => {
  test("into a frame and out again is the same point, and lengths stay", () => {
    fc.assert(
      fc.property(frame, point, point, (f, p, q) => {
        expect(distance(fromFrame(f, intoFrame(f, p)), p)).toBeLessThan(1e-9);
        expect(distance(fromFrame(f, p), fromFrame(f, q))).toBeCloseTo(distance(p, q), 8);
      }),
      SEED,
    );
  });

  test("a composed frame does both in turn", () => {
    fc.assert(
      fc.property(frame, frame, point, (outer: FrameMm, inner, p) => {
        const both = fromFrame(composeFrames(outer, inner), p);
        expect(distance(both, fromFrame(outer, fromFrame(inner, p)))).toBeLessThan(1e-8);
      }),
      SEED,
    );
  });

  test("mirrored twice is the same; a mirrored vector has the mirrored direction", () => {
    fc.assert(
      fc.property(point, deg, (p, d) => {
        expect(distance(mirrorX(mirrorX(p, 257), 257), p)).toBeLessThan(1e-9);
        expect(Math.abs(turnDeg(mirrorDeg(mirrorDeg(d)), d))).toBeLessThan(1e-9);
        expect(Math.abs(turnDeg(directionDeg(mirrorX(polar(d, 10))), mirrorDeg(d)))).toBeLessThan(1e-9);
      }),
      SEED,
    );
  });
});

describe("segments", () => {
  test("known places", () => {
    const s = { a: at(0, 0), b: at(10, 10) };
    expect(segmentIntersection(s, { a: at(0, 10), b: at(10, 0) })).toEqual(at(5, 5));
    expect(segmentsMeet(s, { a: at(10, 10), b: at(20, 0) })).toBe(true);
    expect(segmentsMeet(s, { a: at(11, 11), b: at(20, 20) })).toBe(false);
    expect(segmentDistance({ a: at(0, 0), b: at(10, 0) }, { a: at(13, 4), b: at(13, 20) })).toBe(5);
  });

  test("they meet exactly when their distance is 0, whichever way round they are given", () => {
    fc.assert(
      fc.property(segment, segment, (s, t) => {
        const flipped = { a: t.b, b: t.a };
        expect(segmentsMeet(s, t)).toBe(segmentsMeet(flipped, s));
        expect(segmentDistance(s, t)).toBeCloseTo(segmentDistance(flipped, s), 9);
        expect(segmentDistance(s, t) === 0).toBe(segmentsMeet(s, t));
        const meet = segmentIntersection(s, t);
        if (meet !== null) {
          expect(segmentDistance({ a: meet, b: meet }, s)).toBeLessThan(1e-8);
          expect(segmentDistance({ a: meet, b: meet }, t)).toBeLessThan(1e-8);
        }
      }),
      SEED,
    );
  });

  test("a point along a polyline is at its distance", () => {
    const line = [at(0, 0), at(30, 0), at(30, 40)];
    expect(polylineLength(line)).toBe(70);
    expect(pointAlong(line, 50)).toEqual(at(30, 20));
    expect(pointAlong(line, 100)).toEqual(at(30, 40));
    expect(() => pointAlong([], 1)).toThrow(RangeError);
  });
});

describe("polygons", () => {
  test("area, orientation, centroid, holes", () => {
    expect(signedArea(SQUARE)).toBe(100);
    expect(signedArea(HOLE)).toBe(-36);
    expect(centroid(SQUARE)).toEqual(at(5, 5));
    expect(pointInRing(at(5, 5), SQUARE)).toBe("inside");
    expect(pointInRing(at(10, 5), SQUARE)).toBe("on");
    expect(pointInRings(at(5, 5), [SQUARE, HOLE])).toBe("outside");
    expect(pointInRings(at(1, 5), [SQUARE, HOLE])).toBe("inside");
  });

  test("offset, union, difference in whole micrometres", () => {
    expect(boxOf(offsetRings([SQUARE], 1, "miter").flat())).toEqual({
      minXMm: -1,
      minYMm: -1,
      maxXMm: 11,
      maxYMm: 11,
    });
    const rounded = offsetRings([SQUARE], 1)[0] ?? [];
    expect(signedArea(rounded)).toBeCloseTo(100 + 40 + Math.PI, 0);
    expect(offsetRings([SQUARE], -6)).toEqual([]);
    const other: RingMm = [at(5, 5), at(15, 5), at(15, 15), at(5, 15)];
    const area = (rings: readonly RingMm[]) => rings.reduce((sum, r) => sum + signedArea(r), 0);
    expect(area(unionRings([SQUARE], [other]))).toBeCloseTo(175, 9);
    expect(area(differenceRings([SQUARE], [other]))).toBeCloseTo(75, 9);
    expect(area(thickenLine([at(0, 0), at(100, 0)], 10))).toBeCloseTo(1000 + 25 * Math.PI, 0);
  });
});

describe("rectangles", () => {
  test("overlap by separating axes equals distance 0", () => {
    fc.assert(
      fc.property(rectangle, rectangle, (a, b) => {
        const corners = rectangleCorners(b);
        expect(rectanglesOverlap(a, b)).toBe(rectanglesOverlap(b, a));
        expect(rectangleDistance(a, b)).toBeCloseTo(rectangleDistance(b, a), 9);
        if (rectanglesOverlap(a, b)) {
          const meets =
            corners.some((p) => pointRectangleDistance(p, a) === 0) ||
            rectangleCorners(a).some((p) => pointRectangleDistance(p, b) === 0) ||
            segmentRectangleDistance({ a: corners[0], b: corners[2] }, a) < 1e-6 ||
            segmentRectangleDistance({ a: corners[1], b: corners[3] }, a) < 1e-6;
          expect(meets).toBe(true);
        } else expect(rectangleDistance(a, b)).toBeGreaterThan(0);
      }),
      SEED,
    );
  });

  test("the distance of a segment equals the least distance of finely cut points of it", () => {
    fc.assert(
      fc.property(rectangle, segment, (r, s) => {
        let least = Number.POSITIVE_INFINITY;
        for (let i = 0; i <= 400; i++) {
          least = Math.min(least, pointRectangleDistance(pointBetween(s.a, s.b, i / 400), r));
        }
        const step = distance(s.a, s.b) / 400;
        expect(segmentRectangleDistance(s, r)).toBeLessThanOrEqual(least + 1e-9);
        expect(segmentRectangleDistance(s, r)).toBeGreaterThanOrEqual(least - step);
      }),
      SEED,
    );
  });

  test("turned rectangles overlap though their boxes do not tell", () => {
    const diamond = { xMm: 0, yMm: 0, rotationDeg: 45, widthMm: 10, depthMm: 10 };
    const small = { xMm: 6, yMm: 6, rotationDeg: 0, widthMm: 4, depthMm: 4 };
    expect(rectanglesOverlap(diamond, small)).toBe(false);
    expect(rectangleDistance(diamond, small)).toBeCloseTo(Math.hypot(4, 4) - 5, 9);
    expect(rectanglesOverlap(diamond, { ...small, xMm: 5, yMm: 5 })).toBe(true);
    expect(circleRectangleDistance(at(10, 0), 1, { ...small, xMm: 0, yMm: 0 })).toBe(7);
  });
});

test("a grid gives what looking at all gives, in the order of adding", () => {
  fc.assert(
    fc.property(fc.array(segment, { maxLength: 40 }), segment, (segments, probe) => {
      const box = (s: SegmentMm) => boxOf([s.a, s.b]) ?? { minXMm: 0, minYMm: 0, maxXMm: 0, maxYMm: 0 };
      const grid = new GridIndex<number>(37);
      segments.forEach((s, i) => {
        grid.add(box(s), i);
      });
      const p = box(probe);
      const all = segments.flatMap((s, i) => {
        const b = box(s);
        return b.minXMm <= p.maxXMm && p.minXMm <= b.maxXMm && b.minYMm <= p.maxYMm && p.minYMm <= b.maxYMm
          ? [i]
          : [];
      });
      expect(grid.near(p)).toEqual(all);
    }),
    SEED,
  );
});

describe("space", () => {
  test("x, then y, then z about fixed axes, exact at quarters", () => {
    expect(rotateXyz({ xMm: 0, yMm: 1, zMm: 0 }, 90, 90, 0)).toEqual({ xMm: 1, yMm: 0, zMm: 0 });
    expect(rotateXyz({ xMm: 1, yMm: 0, zMm: 0 }, 0, 0, 90)).toEqual({ xMm: 0, yMm: 1, zMm: 0 });
    expect(rotatePoint(at(1, 0), 90)).toEqual(at(0, 1));
  });

  test("into a frame and out again is the same point", () => {
    const point3 = fc.record({ xMm: mm, yMm: mm, zMm: mm });
    const frame3 = fc.record({ xMm: mm, yMm: mm, zMm: mm, rxDeg: deg, ryDeg: deg, rzDeg: deg });
    fc.assert(
      fc.property(frame3, point3, (f, p) => {
        const back = fromFrame3(f, intoFrame3(f, p));
        expect(
          Math.abs(back.xMm - p.xMm) + Math.abs(back.yMm - p.yMm) + Math.abs(back.zMm - p.zMm),
        ).toBeLessThan(1e-8);
      }),
      SEED,
    );
  });
});
