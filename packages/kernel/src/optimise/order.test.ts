import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { csvRows } from "../testing/csv-rows.ts";
import { type Order, shortestPathOrder, shortestTourOrder } from "./index.ts";
import { readTsp } from "./testing/tsp.ts";

const TSPLIB = new URL("./testing/tsplib/", import.meta.url);
const INSTANCES = csvRows(new URL("optima.csv", TSPLIB)).map((row) => ({
  name: row.instance ?? "",
  optimum: Number(row.optimum),
}));

const length = (
  matrix: readonly (readonly number[])[],
  order: readonly number[],
  closed: boolean,
): number => {
  const legs = order.slice(1).map((v, i) => [order[i] ?? -1, v] as const);
  if (closed) legs.push([order[order.length - 1] ?? -1, order[0] ?? -1]);
  return legs.reduce((sum, [u, v]) => sum + (matrix[u]?.[v] ?? Number.NaN), 0);
};

/** Every node once, the length as said, the bound not above it. */
const expectOrder = (matrix: readonly (readonly number[])[], found: Order, closed: boolean): void => {
  expect(found.order.toSorted((a, b) => a - b)).toEqual(matrix.map((_, i) => i));
  expect(found.value).toBeCloseTo(length(matrix, found.order, closed), 6);
  expect(found.lowerBound).toBeLessThanOrEqual(found.value + 1e-9);
};

const permutations = (items: readonly number[]): number[][] =>
  items.length === 0
    ? [[]]
    : items.flatMap((x) => permutations(items.filter((y) => y !== x)).map((rest) => [x, ...rest]));

const places = (least: number, most: number) =>
  fc.array(fc.record({ x: fc.integer({ min: 0, max: 99 }), y: fc.integer({ min: 0, max: 99 }) }), {
    minLength: least,
    maxLength: most,
  });
type Places = readonly { readonly x: number; readonly y: number }[];
const distances = (points: Places) => points.map((p) => points.map((q) => Math.hypot(p.x - q.x, p.y - q.y)));

describe("shortestTourOrder on TSPLIB (optima of its list of solutions)", () => {
  it.each(INSTANCES)("$name: within 3 %, and the bound within 3 % below", ({ name, optimum }) => {
    const matrix = readTsp(new URL(`${name}.tsp`, TSPLIB));
    const found = shortestTourOrder(matrix);
    expectOrder(matrix, found, true);
    expect(found.value).toBeGreaterThanOrEqual(optimum);
    expect(found.value).toBeLessThanOrEqual(1.03 * optimum);
    expect(found.lowerBound).toBeLessThanOrEqual(optimum);
    expect(found.lowerBound).toBeGreaterThan(0.97 * optimum);
  });
});

describe("shortestPathOrder", () => {
  it("is the best of all orders for few nodes, with a free or a given end (seed 31)", () => {
    fc.assert(
      fc.property(places(2, 7), fc.boolean(), (points, fixed) => {
        const matrix = distances(points);
        const n = points.length;
        const end = fixed ? n - 1 : undefined;
        const found = shortestPathOrder(matrix, 0, end);
        expectOrder(matrix, found, false);
        const all = permutations(points.map((_, i) => i)).filter(
          (p) => p[0] === 0 && (end === undefined || p[n - 1] === end),
        );
        expect(found.value).toBeCloseTo(Math.min(...all.map((p) => length(matrix, p, false))), 9);
        expect(found.lowerBound).toBe(found.value);
        expect(found.order[0]).toBe(0);
        if (end !== undefined) expect(found.order[n - 1]).toBe(end);
      }),
      { seed: 31, numRuns: 60 },
    );
  });

  it("keeps start and end beyond the exact size, within 5 % of its bound on average (seed 32)", () => {
    const gaps: number[] = [];
    fc.assert(
      fc.property(places(25, 25), fc.boolean(), (points, fixed) => {
        const matrix = distances(points);
        const end = fixed ? 7 : undefined;
        const found = shortestPathOrder(matrix, 3, end);
        expectOrder(matrix, found, false);
        expect(found.order[0]).toBe(3);
        if (end !== undefined) expect(found.order[24]).toBe(7);
        gaps.push(found.value / found.lowerBound - 1);
      }),
      { seed: 32, numRuns: 30 },
    );
    expect(gaps.reduce((a, b) => a + b, 0) / gaps.length).toBeLessThan(0.05);
  });

  it("bounds a path of 13 nodes by no more than the exact path (seed 33)", () => {
    fc.assert(
      fc.property(places(2, 12), (points) => {
        // A copy of the start lies at no distance: the path through 13 or more is as long as without the copies.
        const copies = [...points, ...Array.from({ length: 13 }, () => points[0] ?? { x: 0, y: 0 })];
        const exact = shortestPathOrder(distances(points), 0).value;
        const found = shortestPathOrder(distances(copies), 0);
        expect(found.lowerBound).toBeLessThanOrEqual(exact + 1e-6);
        expect(found.value).toBeGreaterThanOrEqual(exact - 1e-6);
      }),
      { seed: 33, numRuns: 60 },
    );
  });

  it("orders one node, and refuses what is no matrix of distances", () => {
    expect(shortestPathOrder([[0]], 0)).toEqual({ order: [0], value: 0, lowerBound: 0 });
    expect(() => shortestPathOrder([[0, 1]], 0)).toThrow("row 0 has 2 distances, expected 1");
    const skew = [
      [0, 1],
      [2, 0],
    ];
    expect(() => shortestPathOrder(skew, 0)).toThrow("expected the same");
    expect(() => shortestPathOrder([[0]], 1)).toThrow("node is 1, expected 0 to 0");
  });
});
