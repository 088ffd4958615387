import fc from "fast-check";
import { expect, test } from "vitest";
import { box } from "./draw.ts";
import { type LabelRequest, placeLabels } from "./label-placer.ts";
import { leavesOf } from "./leaves.ts";
import type { Obstacle } from "./obstacle.ts";
import { overlaps } from "./overlaps.ts";

const BOUNDS = box(0, 0, 160, 110);

const spot = fc.record({ xMm: fc.integer({ min: 5, max: 155 }), yMm: fc.integer({ min: 5, max: 105 }) });

const crowd = fc.array(
  fc.record({ at: spot, words: fc.integer({ min: 1, max: 6 }), lines: fc.integer({ min: 1, max: 3 }) }),
  {
    minLength: 1,
    maxLength: 60,
  },
);

const requestsOf = (
  list: readonly { at: { xMm: number; yMm: number }; words: number; lines: number }[],
): LabelRequest[] =>
  list.map(({ at, words, lines }, i) => ({
    id: String(i),
    lines: Array.from({ length: lines }, () => ({ text: `${i} ${"label".repeat(words)}`, heightMm: 2.5 })),
    target: at,
    layer: "TEXT",
    places: ({ widthMm, heightMm }) => [
      { middle: { xMm: at.xMm + widthMm / 2 + 1, yMm: at.yMm }, turnDeg: 0, cost: 0 },
      { middle: { xMm: at.xMm, yMm: at.yMm - heightMm / 2 - 1 }, turnDeg: 0, cost: 1 },
      { middle: { xMm: at.xMm, yMm: at.yMm }, turnDeg: 37, cost: 2 },
    ],
  }));

test("however crowded, no label overlaps another, none leaves the drawing, none is lost", () => {
  fc.assert(
    fc.property(crowd, (list) => {
      const requests = requestsOf(list);
      const obstacles: Obstacle[] = list.slice(1).map((l, i) => ({
        kind: "stretch",
        a: list[i]?.at ?? l.at,
        b: l.at,
        halfMm: 1,
      }));
      const { marks, balloons } = placeLabels(requests, obstacles, [], BOUNDS);
      const page = { widthMm: 160, heightMm: 110, marks };
      expect(overlaps(page)).toEqual([]);
      const texts = leavesOf(marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : []));
      const told = new Set([...texts.map((t) => t.split(" ")[0]), ...balloons.map((b) => b.id)]);
      for (const request of requests) expect(told.has(request.id)).toBe(true);
    }),
    { seed: 20261125, numRuns: 30 },
  );
});

test("the same requests give the same drawing", () => {
  const list = Array.from({ length: 25 }, (_, i) => ({
    at: { xMm: 10 + i * 5, yMm: 50 + (i % 3) },
    words: 3,
    lines: 2,
  }));
  expect(placeLabels(requestsOf(list), [], [], BOUNDS)).toEqual(
    placeLabels(requestsOf(list), [], [], BOUNDS),
  );
});

test("without any room a label is told in the table", () => {
  const { marks, balloons } = placeLabels(
    requestsOf([{ at: { xMm: 2, yMm: 2 }, words: 6, lines: 3 }]),
    [],
    [],
    box(0, 0, 4, 4),
  );
  expect(marks).toEqual([]);
  expect(balloons.map((b) => [b.id, b.at])).toEqual([["0", null]]);
});
