import { assign } from "../assign.ts";
import type { Tables } from "./problem.ts";

/**
 * No placement costs less: the bound of P. C. Gilmore (J. SIAM 10 (1962) 305–313) and E. L. Lawler (Management
 * Science 9 (1963) 586–599). Each free thing at each place pays at least the least scalar product of its weights with
 * the costs from there (largest weight by smallest cost), half of it because two things share a pair; to things that
 * are fixed it pays exactly; the cheapest assignment of these is taken. More places than things are as good as things
 * without weight.
 */
export function gilmoreLawlerBound(tables: Tables): number {
  const { n, m, w, c, fixed } = tables;
  const free: number[] = [];
  const held: number[] = [];
  fixed.forEach((place, i) => {
    (place < 0 ? free : held).push(i);
  });
  let sum = 0;
  for (const [at, i] of held.entries())
    for (const j of held.slice(at + 1))
      sum += (w[i * n + j] ?? 0) * (c[(fixed[i] ?? 0) * m + (fixed[j] ?? 0)] ?? 0);
  const taken = new Set(held.map((i) => fixed[i]));
  const places = Array.from({ length: m }, (_, s) => s).filter((s) => !taken.has(s));
  const byWeight = free.map((i) =>
    free
      .filter((j) => j !== i)
      .map((j) => w[i * n + j] ?? 0)
      .sort((a, b) => b - a),
  );
  const byCost = places.map((s) =>
    places
      .filter((t) => t !== s)
      .map((t) => c[s * m + t] ?? 0)
      .sort((a, b) => a - b),
  );
  const table = free.map((i, row) =>
    places.map((s, column) => {
      const costs = byCost[column] ?? [];
      let cost = 0;
      (byWeight[row] ?? []).forEach((weight, k) => {
        cost += (weight * (costs[k] ?? 0)) / 2;
      });
      for (const j of held) cost += (w[i * n + j] ?? 0) * (c[s * m + (fixed[j] ?? 0)] ?? 0);
      return cost;
    }),
  );
  return sum + (assign(table)?.value ?? 0);
}
