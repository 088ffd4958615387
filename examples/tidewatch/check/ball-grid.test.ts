import type { PointMm } from "@pinwright/kernel";
import { expect, test } from "vitest";
import { ballGrid, cellOf, flood, isSwept, rests, tightPlaces } from "./ball-grid.ts";

const box = (minX: number, minY: number, maxX: number, maxY: number): PointMm[] => [
  { xMm: minX, yMm: minY },
  { xMm: maxX, yMm: minY },
  { xMm: maxX, yMm: maxY },
  { xMm: minX, yMm: maxY },
];
/** A tray of 200 × 300 mm, open nowhere. */
const tray = [box(0, 0, 200, 10), box(0, 290, 200, 300), box(0, 0, 10, 300), box(190, 0, 200, 300)];
const start = { xMm: 100, yMm: 270 };

const restsWith = (obstacles: readonly PointMm[][], leanDeg = 0) => {
  const grid = ballGrid([...tray, ...obstacles], 13.5, 200, 300);
  return rests(grid, flood(grid, start), leanDeg, 0.5);
};

test("a ball in an empty tray rests at its lower edge only", () => {
  const found = restsWith([]);
  expect(found).toHaveLength(1);
  expect(found[0]?.at.yMm).toBeCloseTo(23.5, 6);
});

test("a shelf with a lip holds a ball, and says how far it would have to climb", () => {
  const shelf = box(60, 150, 140, 155);
  const lips = [box(60, 150, 64, 175), box(136, 150, 140, 175)];
  const held = restsWith([shelf, ...lips]).filter(({ depthMm }) => Number.isFinite(depthMm));
  expect(held).toHaveLength(1);
  // It has to roll over the corners of lips 20 mm higher than the shelf.
  expect(held[0]?.depthMm).toBeCloseTo(20, -0.3);
});

test("a level ledge against a wall holds no ball when it can roll off, and holds it when the machine leans", () => {
  const ledge = [box(10, 150, 60, 155)];
  const isHeld = (leanDeg: number) => restsWith(ledge, leanDeg).some(({ at }) => at.yMm > 100);
  expect(isHeld(-2)).toBe(false);
  expect(isHeld(2)).toBe(true);
});

test("a gap of nearly a ball's width is told, a lane of 36 mm is not", () => {
  const tight = (gapMm: number) => {
    const walls = [...tray, box(10, 100, 100 - gapMm / 2, 200), box(100 + gapMm / 2, 100, 190, 200)];
    const small = ballGrid(walls, 12, 200, 300);
    return tightPlaces(small, flood(small, start), ballGrid(walls, 15, 200, 300), 12);
  };
  expect(tight(27)).toHaveLength(1);
  expect(tight(36)).toEqual([]);
});

test("a ball sweeps what its own width comes over and nothing else", () => {
  const grid = ballGrid([...tray, box(10, 10, 80, 290)], 13.5, 200, 300);
  const reached = flood(grid, start);
  expect(reached[cellOf(grid, { xMm: 100, yMm: 100 })]).toBe(1);
  expect(isSwept(grid, reached, { xMm: 84, yMm: 100 }, 13.5)).toBe(true);
  expect(isSwept(grid, reached, { xMm: 76, yMm: 100 }, 13.5)).toBe(false);
});
