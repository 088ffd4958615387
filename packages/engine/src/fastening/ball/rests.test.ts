import {
  circleRectangleDistance,
  distance,
  type PointMm,
  pointRectangleDistance,
  polar,
  Query,
  type RectangleMm,
  rectangleCorners,
  rectangleDistance,
} from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Solid } from "../../model/index.ts";
import { obstacleOf } from "./obstacles.ts";
import { BallRoom } from "./panel-ball.ts";
import { restsOf } from "./rests.ts";
import { gridRests } from "./testing/grid.ts";

const SIZE = { widthMm: 260, heightMm: 320 };
const BALL_MM = 27;

interface Disc extends PointMm {
  readonly radiusMm: number;
}
type Thing = Disc | RectangleMm;

const isDisc = (thing: Thing): thing is Disc => "radiusMm" in thing;

const clearOf = (p: PointMm, thing: Thing): number =>
  isDisc(thing) ? distance(p, thing) - thing.radiusMm : pointRectangleDistance(p, thing);

function between(a: Thing, b: Thing): number {
  if (isDisc(a) && isDisc(b)) return distance(a, b) - a.radiusMm - b.radiusMm;
  if (isDisc(a)) return isDisc(b) ? 0 : circleRectangleDistance(a, a.radiusMm, b);
  return isDisc(b) ? circleRectangleDistance(b, b.radiusMm, a) : rectangleDistance(a, b);
}

const edgeClear = (p: PointMm): number => Math.min(p.xMm, p.yMm, SIZE.widthMm - p.xMm, SIZE.heightMm - p.yMm);

const ringOf = (thing: Thing): readonly PointMm[] =>
  isDisc(thing)
    ? Array.from({ length: 90 }, (_, i) => {
        const p = polar(i * 4, thing.radiusMm);
        return { xMm: thing.xMm + p.xMm, yMm: thing.yMm + p.yMm };
      })
    : rectangleCorners(thing);

function solidOf(thing: Thing, index: number): Solid {
  const ring = ringOf(thing);
  const [xs, ys] = [ring.map((p) => p.xMm), ring.map((p) => p.yMm)];
  return {
    id: `s${index}`,
    itemId: `s${index}`,
    kind: "device",
    panelId: "p",
    side: "top",
    ring,
    box: {
      minXMm: Math.min(...xs),
      minYMm: Math.min(...ys),
      maxXMm: Math.max(...xs),
      maxYMm: Math.max(...ys),
    },
    lowMm: 0,
    highMm: 40,
    moves: false,
  };
}

const place = {
  xMm: fc.integer({ min: 10, max: 250 }),
  yMm: fc.integer({ min: 10, max: 310 }),
};
const thing: fc.Arbitrary<Thing> = fc.oneof(
  fc.record({ ...place, radiusMm: fc.integer({ min: 3, max: 22 }) }),
  fc.record({
    ...place,
    rotationDeg: fc.integer({ min: 0, max: 179 }),
    widthMm: fc.integer({ min: 20, max: 110 }),
    depthMm: fc.integer({ min: 4, max: 12 }),
  }),
);

/** Gaps that a ball just passes, or just does not, are seen otherwise on a grid; there a layout says nothing. */
function isClearCut(things: readonly Thing[]): boolean {
  const sure = (mm: number): boolean => Math.abs(mm - BALL_MM) > 4;
  return things.every(
    (a, i) =>
      things.slice(0, i).every((b) => sure(between(a, b))) &&
      sure(Math.min(...ringOf(a).map((p) => p.xMm))) &&
      sure(Math.min(...ringOf(a).map((p) => p.yMm))) &&
      sure(SIZE.widthMm - Math.max(...ringOf(a).map((p) => p.xMm))) &&
      sure(SIZE.heightMm - Math.max(...ringOf(a).map((p) => p.yMm))),
  );
}

describe("places where a ball rests", () => {
  it("are those that a grid finds, as deep, level and leaning (seed 17)", () => {
    let compared = 0;
    fc.assert(
      fc.property(
        fc.array(thing, { minLength: 2, maxLength: 8 }).filter(isClearCut),
        fc.constantFrom(0, 8, -8),
        (things, turnDeg) => {
          const outline = [
            rectangleCorners({ xMm: 130, yMm: 160, widthMm: 260, depthMm: 320, rotationDeg: 0 }),
          ];
          const obstacles = things.flatMap((t, i) => obstacleOf(solidOf(t, i), BALL_MM) ?? []);
          const surface = {
            outline,
            obstacles,
            holes: [],
            throwers: new Set<string>(),
            ballMm: BALL_MM,
            slopeDeg: 6.5,
          };
          const { region } = new BallRoom(surface, new Query(Object.is));
          const exact = restsOf(
            region,
            turnDeg,
            1,
            () => true,
            () => false,
          );
          const clearMm = (p: PointMm): number =>
            things.reduce((least, t) => Math.min(least, clearOf(p, t)), edgeClear(p));
          const grid = gridRests(SIZE, clearMm, BALL_MM / 2, turnDeg, 2);
          const rad = (turnDeg * Math.PI) / 180;
          const height = (p: PointMm): number => p.yMm * Math.cos(rad) - p.xMm * Math.sin(rad);
          const isLike = (
            a: { readonly at: PointMm; readonly depthMm: number },
            b: { readonly at: PointMm; readonly depthMm: number },
          ): boolean =>
            Math.abs(height(a.at) - height(b.at)) < 5 &&
            (a.depthMm === b.depthMm || Math.abs(a.depthMm - b.depthMm) < 7);
          for (const rest of exact.filter((r) => r.depthMm > 8)) {
            // Two basins of nearly the same depth change roles; then the place differs and the depth does not.
            expect(
              grid.some((g) => isLike(rest, g)),
              `${JSON.stringify(rest)} on the grid ${JSON.stringify(grid)}`,
            ).toBe(true);
            compared++;
          }
          for (const rest of grid.filter((r) => r.depthMm > 8))
            expect(
              exact.some((e) => isLike(rest, e)),
              `${JSON.stringify(rest)} in ${JSON.stringify(exact)}`,
            ).toBe(true);
        },
      ),
      { seed: 17, numRuns: 60 },
    );
    expect(compared).toBeGreaterThan(60);
  });

  it("lie where two walls meet in a trough, by formula", () => {
    // Two walls at 45°, their faces meeting in (130, 100): the ball touches both at √2 of its radius above that.
    const wall = (sign: 1 | -1): RectangleMm => ({
      xMm: 130 + sign * (40 * Math.SQRT1_2 + 5 * Math.SQRT1_2),
      yMm: 100 + 40 * Math.SQRT1_2 - 5 * Math.SQRT1_2,
      rotationDeg: sign * 45,
      widthMm: 100,
      depthMm: 10,
    });
    const obstacles = [wall(1), wall(-1)].flatMap((t, i) => obstacleOf(solidOf(t, i), BALL_MM) ?? []);
    const outline = [rectangleCorners({ xMm: 130, yMm: 160, widthMm: 260, depthMm: 320, rotationDeg: 0 })];
    const surface = {
      outline,
      obstacles,
      holes: [],
      throwers: new Set<string>(),
      ballMm: BALL_MM,
      slopeDeg: 6.5,
    };
    const pockets = new BallRoom(surface, new Query(Object.is)).pockets(1);
    const trough = pockets.find((p) => p.at.yMm > 50 && p.lean === "level");
    expect(trough?.at.xMm).toBeCloseTo(130, 1);
    expect(trough?.at.yMm).toBeCloseTo(100 + (BALL_MM / 2) * Math.SQRT2, 1);
    expect(trough?.against.map((s) => s.id).sort()).toEqual(["s0", "s1"]);
    // Out over the upper corner of a face, 90 mm along it from where the faces meet.
    expect(trough?.depthMm).toBeCloseTo(90 * Math.SQRT1_2 + BALL_MM / 2 - (BALL_MM / 2) * Math.SQRT2, 0);
  });
});
