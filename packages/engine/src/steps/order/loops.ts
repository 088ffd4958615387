import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding, type Precedence } from "../../model/index.ts";
import { type Arc, PathFinder } from "./digraph.ts";
import { leastFeedback } from "./feedback.ts";
import { sparseArcs } from "./sparse.ts";
import { severityOf, weightOf } from "./weights.ts";

/** An order without loops. */
export interface Ordered {
  /** What is left, sorted by ids: free of loops, and without rows that follow from others. */
  readonly edges: readonly Precedence[];
  /** What was given up so that no loop is left, at the least weight that was found. */
  readonly givenUp: readonly Precedence[];
  /** Total weight of what was given up, and a bound that nothing can beat. */
  readonly weight: number;
  readonly lowerBound: number;
  /** One `order-loop` for each row that was given up, but for bundles that are threaded in later. */
  readonly findings: readonly Finding[];
}

/**
 * Gives up the cheapest rules that leave no loop. Works on edges between items and on edges between steps alike.
 * Weights: the designer's rule 1, `wired` 4 (2 when a bundle only runs beneath), `covers` 16, `hides-nut` 32, `hides` 64; `stands` and `built` are never
 * given up unless a loop consists of nothing else. What comes before itself is passed over.
 */
export function breakLoops(edges: readonly Precedence[]): Ordered {
  const rows = onePerPair(edges);
  const ids = [...new Set(rows.flatMap((row) => [row.beforeId, row.afterId]))].sort(compareText);
  const nodes = new Map(ids.map((id, i) => [id, i]));
  const arcs = rows.map(
    (row): Arc => ({
      from: nodes.get(row.beforeId) ?? 0,
      to: nodes.get(row.afterId) ?? 0,
      weight: weightOf(row),
    }),
  );
  const { arcs: gone, weight, lowerBound } = leastFeedback(ids.length, arcs);
  const givenUp = new Set(gone);
  const left = [...rows.keys()].filter((index) => !givenUp.has(index));
  const leftArcs = left.flatMap((index) => arcs[index] ?? []);
  const paths = new PathFinder(ids.length, leftArcs);
  return {
    edges: sparseArcs(ids.length, leftArcs).flatMap((at) => rows[left[at] ?? -1] ?? []),
    givenUp: gone.flatMap((index) => rows[index] ?? []),
    weight,
    lowerBound,
    findings: gone.flatMap((index) => {
      const row = rows[index];
      const arc = arcs[index];
      const severity = row === undefined ? null : severityOf(row);
      if (row === undefined || arc === undefined || severity === null) return [];
      const back = paths.path(arc.to, arc.from, () => true) ?? [];
      const between = back.slice(1).flatMap((at) => ids[leftArcs[at]?.from ?? -1] ?? []);
      return [
        makeFinding("order-loop", severity, [row.beforeId, row.afterId, ...between], {
          why: row.why,
          at: row.at,
          weight: arc.weight,
        }),
      ];
    }),
  };
}

/** The weightiest row of each pair, of rows as weighty the first by what shows it; sorted by ids. */
export function onePerPair(edges: Iterable<Precedence>): readonly Precedence[] {
  const pairs = new Map<string, Map<string, Precedence>>();
  for (const edge of edges) {
    if (edge.beforeId === edge.afterId) continue;
    const own = pairs.get(edge.beforeId) ?? new Map<string, Precedence>();
    pairs.set(edge.beforeId, own);
    const known = own.get(edge.afterId);
    if (known === undefined || isWeightier(edge, known)) own.set(edge.afterId, edge);
  }
  return [...pairs.values()]
    .flatMap((own) => [...own.values()])
    .sort((a, b) => compareText(a.beforeId, b.beforeId) || compareText(a.afterId, b.afterId));
}

function isWeightier(edge: Precedence, known: Precedence): boolean {
  const more = weightOf(edge) - weightOf(known);
  return more > 0 || (more === 0 && compareText(edge.at, known.at) < 0);
}
