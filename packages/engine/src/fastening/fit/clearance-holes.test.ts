import { expect, it } from "vitest";
import { clearanceHole } from "./clearance-holes.ts";

/** ISO 273, fine, medium and coarse series, mm. Source: https://engineeringhardware.com/?p=50. */
const PUBLISHED = [
  [2, 2.2, 2.4, 2.6],
  [2.5, 2.7, 2.9, 3.1],
  [3, 3.2, 3.4, 3.6],
  [3.5, 3.7, 3.9, 4.2],
  [4, 4.3, 4.5, 4.8],
  [5, 5.3, 5.5, 5.8],
  [6, 6.4, 6.6, 7],
  [8, 8.4, 9, 10],
  [10, 10.5, 11, 12],
] as const;

it.each(PUBLISHED)("gives the clearance holes of M%d", (threadMm, fineMm, mediumMm, coarseMm) => {
  expect(clearanceHole(threadMm)).toEqual({ threadMm, fineMm, mediumMm, coarseMm });
});

it("gives a thread that is not listed the hole of the next thicker one, and none beyond M10", () => {
  expect(clearanceHole(2.9)?.threadMm).toBe(3);
  expect(clearanceHole(4.2)?.threadMm).toBe(5);
  expect(clearanceHole(12)).toBeNull();
});
