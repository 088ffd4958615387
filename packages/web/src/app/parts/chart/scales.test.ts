import { expect, it } from "vitest";
import { linearScale, logScale, roundStep } from "./scales.ts";

it.each([
  [10, 5, 2],
  [48, 5, 10],
  [100, 8, 20],
  [0.9, 5, 0.2],
])("%d in at most %d steps goes by %d", (span, most, step) => {
  expect(roundStep(span, most)).toBeCloseTo(step);
});

it("an even axis begins at nothing and ends at a round value", () => {
  const scale = linearScale(3, 23, 100, 0, 5);
  expect(scale.ticks.map(({ value }) => value)).toEqual([0, 5, 10, 15, 20, 25]);
  expect([scale.at(0), scale.at(25)]).toEqual([100, 0]);
  expect(linearScale(-4, 8, 0, 1, 6).ticks.map(({ value }) => value)).toEqual([-4, -2, 0, 2, 4, 6, 8]);
});

it("an axis of powers has each of them as wide", () => {
  const scale = logScale(1, 1000, 0, 300);
  expect([scale.at(1), scale.at(10), scale.at(100), scale.at(1000)].map(Math.round)).toEqual([
    0, 100, 200, 300,
  ]);
  expect(scale.ticks.filter(({ isMinor }) => !isMinor).map(({ value }) => value)).toEqual([1, 10, 100, 1000]);
});
