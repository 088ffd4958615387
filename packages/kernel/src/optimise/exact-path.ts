import type { Distances } from "./matrix.ts";

/**
 * The shortest path from `start` through all nodes, to `end` or to wherever it is shortest, by the dynamic programme
 * of M. Held and R. M. Karp (J. SIAM 10 (1962) 196–210): n² 2ⁿ⁻¹ steps.
 */
export const exactPath = ({ n, d }: Distances, start: number, end: number | null): number[] => {
  if (n < 2) return n === 1 ? [start] : [];
  const others: number[] = [];
  for (let v = 0; v < n; v++) if (v !== start) others.push(v);
  const m = others.length;
  const full = (1 << m) - 1;
  const best = new Float64Array((full + 1) * m).fill(Number.POSITIVE_INFINITY);
  const from = new Int8Array((full + 1) * m).fill(-1);
  const last = end === null ? -1 : others.indexOf(end);
  const at = (i: number): number => others[i] ?? 0;
  for (let i = 0; i < m; i++) best[(1 << i) * m + i] = d[start * n + at(i)] ?? 0;
  for (let set = 1; set <= full; set++) {
    for (let i = 0; i < m; i++) {
      const value = best[set * m + i] ?? 0;
      if ((set & (1 << i)) === 0 || value === Number.POSITIVE_INFINITY) continue;
      if (i === last && set !== full) continue;
      const row = at(i) * n;
      for (let j = 0; j < m; j++) {
        if ((set & (1 << j)) !== 0) continue;
        const next = (set | (1 << j)) * m + j;
        const length = value + (d[row + at(j)] ?? 0);
        if (length < (best[next] ?? 0)) {
          best[next] = length;
          from[next] = i;
        }
      }
    }
  }
  let i = last;
  if (i < 0) {
    i = 0;
    for (let j = 1; j < m; j++) if ((best[full * m + j] ?? 0) < (best[full * m + i] ?? 0)) i = j;
  }
  const order: number[] = [];
  for (let set = full; i >= 0; ) {
    order.push(at(i));
    const previous = from[set * m + i] ?? -1;
    set ^= 1 << i;
    i = previous;
  }
  order.push(start);
  return order.reverse();
};
