import type { Distances } from "./matrix.ts";

/**
 * Bound of Held and Karp for a closed tour: the largest, over node penalties π, of the cheapest 1-tree (a spanning
 * tree of all nodes but `special`, and the two cheapest edges of that one) less 2Σπ, by `steps` subgradient steps
 * (M. Held, R. M. Karp, Math. Programming 1 (1971) 6–25; step rule of M. Held, P. Wolfe, H. Crowder 1974).
 * @param value length of a known tour, for the length of the steps
 */
export const oneTreeBound = ({ n, d }: Distances, special: number, value: number, steps: number): number => {
  const penalty = new Float64Array(n);
  const degree = new Int32Array(n);
  const last = new Int32Array(n);
  const key = new Float64Array(n);
  const parent = new Int32Array(n);
  const inside = new Uint8Array(n);
  let bound = Number.NEGATIVE_INFINITY;
  let scale = 2;
  let stale = 0;
  for (let step = 0; step < steps; step++) {
    degree.fill(0);
    key.fill(Number.POSITIVE_INFINITY);
    parent.fill(-1);
    inside.fill(0);
    inside[special] = 1;
    let total = 0;
    for (let count = 1; count < n; count++) {
      let u = -1;
      for (let v = 0; v < n; v++) {
        if (inside[v] === 0 && (u < 0 || (key[v] ?? 0) < (key[u] ?? 0))) u = v;
      }
      inside[u] = 1;
      const p = parent[u] ?? -1;
      if (p >= 0) {
        total += key[u] ?? 0;
        degree[u] = (degree[u] ?? 0) + 1;
        degree[p] = (degree[p] ?? 0) + 1;
      }
      const own = penalty[u] ?? 0;
      for (let v = 0; v < n; v++) {
        if (inside[v] === 1) continue;
        const c = (d[u * n + v] ?? 0) + own + (penalty[v] ?? 0);
        if (c < (key[v] ?? 0)) {
          key[v] = c;
          parent[v] = u;
        }
      }
    }
    let first = -1;
    let second = -1;
    const spoke = (v: number): number =>
      v < 0
        ? Number.POSITIVE_INFINITY
        : (d[special * n + v] ?? 0) + (penalty[special] ?? 0) + (penalty[v] ?? 0);
    for (let v = 0; v < n; v++) {
      if (v === special) continue;
      if (spoke(v) < spoke(first)) {
        second = first;
        first = v;
      } else if (spoke(v) < spoke(second)) second = v;
    }
    total += spoke(first) + spoke(second);
    for (const v of [first, second]) degree[v] = (degree[v] ?? 0) + 1;
    degree[special] = 2;
    let norm = 0;
    for (let v = 0; v < n; v++) {
      total -= 2 * (penalty[v] ?? 0);
      norm += ((degree[v] ?? 0) - 2) ** 2;
    }
    if (total > bound + 1e-9 * Math.abs(value)) stale = 0;
    else stale++;
    bound = Math.max(bound, total);
    if (norm === 0 || bound >= value) break;
    if (stale >= 10) {
      scale /= 2;
      stale = 0;
      if (scale < 1e-4) break;
    }
    const move = (scale * Math.max(1e-9 * Math.abs(value), value - total)) / norm;
    for (let v = 0; v < n; v++) {
      const excess = (degree[v] ?? 0) - 2;
      penalty[v] = (penalty[v] ?? 0) + move * (0.7 * excess + 0.3 * (step === 0 ? excess : (last[v] ?? 0)));
      last[v] = excess;
    }
  }
  return Math.min(bound, value);
};
