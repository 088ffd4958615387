import { type AssignProblem, type Direction, directionsOf } from "./problem.ts";

/** Subgradient steps of the bound. */
const STEPS = 800;

/**
 * Millimetres that no assignment can be below. The chains of one direction, their feeds taken as one node, are a
 * spanning tree in which a site has at most two wires and the feeds at least as many as lines are needed; and two
 * sites next to each other on a column are never next to each other on a row, since they would share a crossing. These
 * rules are priced (Lagrange) and what is left are two cheapest spanning trees (R. Prim 1957); the prices are improved
 * by subgradient steps (M. Held, P. Wolfe, H. Crowder, Math. Programming 6 (1974) 62–88).
 * @param valueMm length of a known assignment, for the length of the steps
 */
export function assignBoundMm(problem: AssignProblem, valueMm: number): number {
  const n = problem.sites.length;
  if (n === 0) return 0;
  const [columns, rows] = directionsOf(problem);
  const trees = [
    new PricedTree(columns, Math.ceil(n / problem.rows.length)),
    new PricedTree(rows, Math.ceil(n / problem.columns.length)),
  ];
  const shared = new Float64Array(n * n);
  let best = 0;
  let scale = 1;
  let stale = 0;
  for (let step = 0; step < STEPS; step++) {
    let bound = trees.reduce((sum, tree) => sum + tree.solve(shared), 0);
    for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) bound -= shared[i * n + j] ?? 0;
    stale = bound > best + 1e-6 * valueMm ? 0 : stale + 1;
    best = Math.max(best, bound);
    if (stale >= 20) {
      scale /= 2;
      stale = 0;
      if (scale < 1e-4) break;
    }
    const [first, second] = trees;
    if (first === undefined || second === undefined) break;
    const overlap = (i: number, j: number): number => first.has(i, j) + second.has(i, j) - 1;
    let norm = first.norm() + second.norm();
    for (let i = 0; i < n; i++)
      for (let j = 0; j < i; j++) {
        const over = overlap(i, j);
        if (over > 0 || (shared[i * n + j] ?? 0) > 0) norm += over * over;
      }
    if (norm === 0 || bound >= valueMm) break;
    const length = (scale * Math.max(1e-6 * valueMm, valueMm - bound)) / norm;
    for (const tree of trees) tree.step(length);
    for (let i = 0; i < n; i++)
      for (let j = 0; j < i; j++) {
        const price = Math.max(0, (shared[i * n + j] ?? 0) + length * overlap(i, j));
        shared[i * n + j] = price;
        shared[j * n + i] = price;
      }
  }
  // Rounding must not lift the bound above the truth.
  return Math.max(0, Math.min(best - 1e-9 * valueMm, valueMm));
}

/** The cheapest spanning tree of one direction under the prices of its rules. */
class PricedTree {
  readonly #n: number;
  readonly #mm: Float64Array;
  readonly #feed: Float64Array;
  /** Price of a third wire at a site. */
  readonly #price: Float64Array;
  /** What every wire from a feed is given, so that there are enough of them. */
  #gift = 0;
  readonly #leastFeeds: number;
  readonly #parent: Int32Array;
  readonly #degree: Int32Array;
  #feeds = 0;

  constructor({ lines, mm, groupOf, pinned }: Direction, leastFeeds: number) {
    const n = groupOf.length;
    this.#n = n;
    this.#leastFeeds = leastFeeds;
    this.#mm = new Float64Array(n * n).fill(Number.POSITIVE_INFINITY);
    this.#feed = new Float64Array(n);
    for (let i = 0; i < n; i++) {
      const own = pinned[i] ?? null;
      this.#feed[i] = Math.min(
        ...lines.flatMap(({ feedMm }, l) => (own === null || own === l ? (feedMm[i] ?? []) : [])),
      );
      for (let j = 0; j < n; j++) {
        const other = pinned[j] ?? null;
        const apart = own !== null && other !== null && own !== other;
        if (i !== j && groupOf[i] === groupOf[j] && !apart) this.#mm[i * n + j] = mm[i]?.[j] ?? 0;
      }
    }
    this.#price = new Float64Array(n);
    this.#parent = new Int32Array(n);
    this.#degree = new Int32Array(n);
  }

  /** Mm of the cheapest tree under the prices, less what the prices would give back. */
  solve(shared: Float64Array): number {
    const n = this.#n;
    const key = this.#feed.map((mm, i) => mm + (this.#price[i] ?? 0) - this.#gift);
    const inside = new Uint8Array(n);
    this.#parent.fill(-1);
    this.#degree.fill(0);
    this.#feeds = 0;
    let sum = this.#gift * this.#leastFeeds;
    for (let count = 0; count < n; count++) {
      let u = -1;
      for (let v = 0; v < n; v++) if (inside[v] === 0 && (u < 0 || (key[v] ?? 0) < (key[u] ?? 0))) u = v;
      inside[u] = 1;
      sum += (key[u] ?? 0) - 2 * (this.#price[u] ?? 0);
      this.#degree[u] = (this.#degree[u] ?? 0) + 1;
      const parent = this.#parent[u] ?? -1;
      if (parent < 0) this.#feeds++;
      else this.#degree[parent] = (this.#degree[parent] ?? 0) + 1;
      for (let v = 0; v < n; v++) {
        if (inside[v] === 1) continue;
        const mm =
          (this.#mm[u * n + v] ?? 0) +
          (this.#price[u] ?? 0) +
          (this.#price[v] ?? 0) +
          (shared[u * n + v] ?? 0);
        if (mm < (key[v] ?? 0)) {
          key[v] = mm;
          this.#parent[v] = u;
        }
      }
    }
    return sum;
  }

  /** 1 when the last tree joins two sites, else 0. */
  has(i: number, j: number): number {
    return this.#parent[i] === j || this.#parent[j] === i ? 1 : 0;
  }

  /** Squared length of the subgradient: how far the last tree is from obeying the rules that are priced. */
  norm(): number {
    let sum = 0;
    for (let i = 0; i < this.#n; i++) {
      const over = (this.#degree[i] ?? 0) - 2;
      if (over > 0 || (this.#price[i] ?? 0) > 0) sum += over * over;
    }
    const missing = this.#leastFeeds - this.#feeds;
    return missing > 0 || this.#gift > 0 ? sum + missing * missing : sum;
  }

  step(length: number): void {
    for (let i = 0; i < this.#n; i++)
      this.#price[i] = Math.max(0, (this.#price[i] ?? 0) + length * ((this.#degree[i] ?? 0) - 2));
    this.#gift = Math.max(0, this.#gift + length * (this.#leastFeeds - this.#feeds));
  }
}
