import { exactPath } from "./exact-path.ts";
import { type Distances, distancesOf } from "./matrix.ts";
import { oneTreeBound } from "./one-tree.ts";
import { goodTour } from "./tour.ts";

/** An order of all nodes, its length, and a length that no order can beat. */
export interface Order {
  readonly order: readonly number[];
  readonly value: number;
  readonly lowerBound: number;
}

/** Counted limits of the ordering search. */
export interface OrderEffort {
  /** Disturbances of the local search, for each node. */
  readonly kicksPerNode: number;
  /** Subgradient steps of the bound. */
  readonly boundSteps: number;
  /** Up to so many nodes the order is exact, 12 at most; left out: 12. */
  readonly exactNodes?: number;
}

/** Up to so many nodes the order is exact. */
const EXACT = 12;

const USUAL: OrderEffort = { kicksPerNode: 10, boundSteps: 200 };

/**
 * The order in which an open path from `start` visits all nodes, short: exact up to 12 nodes; beyond, nearest
 * insertion, 2-opt, Or-opt and counted kicks, with the 1-tree bound of Held and Karp.
 * @param matrix symmetric distances
 * @param end last node; left out: wherever the path is shortest
 * @throws RangeError when the matrix is not square, symmetric and finite, or a node is out of range.
 */
export const shortestPathOrder = (
  matrix: readonly (readonly number[])[],
  start: number,
  end?: number,
  effort: OrderEffort = USUAL,
): Order => {
  const distances = distancesOf(matrix);
  const { n } = distances;
  for (const v of end === undefined ? [start] : [start, end]) {
    if (!Number.isInteger(v) || v < 0 || v >= n) throw new RangeError(`node is ${v}, expected 0 to ${n - 1}`);
  }
  if (end === start && n > 1)
    throw new RangeError(`the path starts and ends at node ${start}, expected two nodes`);
  if (n <= Math.min(EXACT, effort.exactNodes ?? EXACT)) {
    const order = exactPath(distances, start, end ?? null);
    const value = lengthOf(distances, order, false);
    return { order, value, lowerBound: value };
  }
  const { closed, dummy, relief } = closedBy(distances, start, end);
  const tour = goodTour(closed, effort.kicksPerNode * n);
  const at = tour.indexOf(dummy);
  const around = [...tour.slice(at + 1), ...tour.slice(0, at)];
  const order = around[0] === start ? around : around.reverse();
  const value = lengthOf(distances, order, false);
  const bound = oneTreeBound(closed, dummy, value - relief, effort.boundSteps) + relief;
  return { order, value, lowerBound: below(bound, value, relief) };
};

/**
 * A short closed tour through all nodes, from node 0: exact up to 12 nodes, beyond as in `shortestPathOrder`.
 * @throws RangeError when the matrix is not square, symmetric and finite.
 */
export const shortestTourOrder = (
  matrix: readonly (readonly number[])[],
  effort: OrderEffort = USUAL,
): Order => {
  const distances = distancesOf(matrix);
  const { n } = distances;
  if (n <= EXACT) {
    const order = exactTour(distances);
    const value = lengthOf(distances, order, true);
    return { order, value, lowerBound: value };
  }
  const tour = goodTour(distances, effort.kicksPerNode * n);
  const at = tour.indexOf(0);
  const order = [...tour.slice(at), ...tour.slice(0, at)];
  const value = lengthOf(distances, order, true);
  return { order, value, lowerBound: below(oneTreeBound(distances, 0, value, effort.boundSteps), value, 0) };
};

/** A tour is a path that ends at a copy of its start. */
const exactTour = ({ n, d }: Distances): number[] => {
  if (n < 3) return Array.from({ length: n }, (_, i) => i);
  const size = n + 1;
  const copy = new Float64Array(size * size);
  for (let i = 0; i < size; i++) {
    for (let j = 0; j < size; j++) copy[i * size + j] = d[(i % n) * n + (j % n)] ?? 0;
  }
  return exactPath({ n: size, d: copy }, 0, n).slice(0, n);
};

/** Rounding in sums with the relief must not lift a bound above the truth. */
const below = (bound: number, value: number, relief: number): number =>
  bound >= value ? value : bound - 1e-13 * (Math.abs(relief) + Math.abs(value));

/**
 * A closed problem whose tours are the open paths: one more node, joined for nothing to every possible last node,
 * and at a price so negative that it is always taken to `start` (and to `end` when that is given).
 */
const closedBy = (
  { n, d }: Distances,
  start: number,
  end: number | undefined,
): { closed: Distances; dummy: number; relief: number } => {
  let longest = 0;
  for (const x of d) longest = Math.max(longest, Math.abs(x));
  const gift = 1 + 2 * n * longest;
  const size = n + 1;
  const closed = new Float64Array(size * size);
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) closed[i * size + j] = d[i * n + j] ?? 0;
  const ends = end === undefined ? [start] : [start, end];
  for (const v of ends) {
    closed[n * size + v] = -gift;
    closed[v * size + n] = -gift;
  }
  return { closed: { n: size, d: closed }, dummy: n, relief: gift * ends.length };
};

const lengthOf = ({ n, d }: Distances, order: readonly number[], back: boolean): number => {
  let sum = 0;
  for (let i = 1; i < order.length; i++) sum += d[(order[i - 1] ?? 0) * n + (order[i] ?? 0)] ?? 0;
  if (back && order.length > 1) sum += d[(order[order.length - 1] ?? 0) * n + (order[0] ?? 0)] ?? 0;
  return sum;
};
