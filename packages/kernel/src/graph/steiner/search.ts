import { seededRandom } from "../../random.ts";
import type { Graph } from "../graph.ts";
import { exactSteps, exactTree } from "./exact.ts";
import { exchangePaths } from "./exchange-path.ts";
import { growTree } from "./grow.ts";
import { insertNodes } from "./insert-node.ts";
import { fixByReducedCost, type Remainder, remainder } from "./reduce.ts";
import { removeNodes } from "./remove-node.ts";
import { SteinerProblem } from "./tree.ts";

/** A tree that joins all terminals. */
export interface SteinerTree {
  /** Its edges in ascending order. */
  readonly edges: readonly number[];
  readonly value: number;
  /** No tree that joins the terminals costs less; equal to `value` when the tree is proved to be best. */
  readonly lowerBound: number;
}

/** Starts of the search: 1 for a first answer, 8 to 64 for a good one. */
export type SteinerEffort = number;

const USUAL_EFFORT = 32;

/**
 * A cheap tree that joins the terminals of a graph (the Steiner problem in graphs), or null when they cannot be
 * joined. A search of `effort` starts: shortest-path heuristic from changing roots over changed costs, node
 * insertion, key-path exchange and key-node elimination until none helps, and combination with earlier trees
 * (after T. Pajor, E. Uchoa, R. F. Werneck, Math. Prog. Computation 10 (2018) 69–118). Between starts, dual ascent
 * gives the bound and takes away edges that no better tree can use. Deterministic.
 * @throws RangeError for a terminal that is no node of the graph.
 */
export const steinerTree = (
  graph: Graph,
  terminals: readonly number[],
  effort: SteinerEffort = USUAL_EFFORT,
): SteinerTree | null => {
  const distinct = [...new Set(terminals)].sort((x, y) => x - y);
  for (const t of distinct) {
    if (!Number.isInteger(t) || t < 0 || t >= graph.nodes) {
      throw new RangeError(`terminal is node ${t}, expected 0 to ${graph.nodes - 1}`);
    }
  }
  if (distinct.length < 2) return { edges: [], value: 0, lowerBound: 0 };
  const search = new SteinerSearch(graph, distinct);
  return search.run(effort);
};

/** Trees kept to combine with. */
const ELITE = 6;

/** Steps of the exact dynamic programme that one start is worth. */
const EXACT_STEPS = 3_000_000;

class SteinerSearch {
  private readonly graph: Graph;
  private readonly terminals: readonly number[];
  /** 1 when all costs are whole numbers, so that a better tree is better by 1. */
  private readonly grain: number;
  private rest: Remainder;
  private best: readonly number[] = [];
  private value = Number.POSITIVE_INFINITY;
  private lowerBound = 0;
  /** Good trees, cheapest first, as edges of the whole graph. */
  private readonly elite: { readonly cost: number; readonly edges: readonly number[] }[] = [];

  constructor(graph: Graph, terminals: readonly number[]) {
    this.graph = graph;
    this.terminals = terminals;
    this.grain = graph.cost.every((c) => Number.isInteger(c)) ? 1 : 0;
    this.rest = remainder(graph, terminals, new Uint8Array(graph.edges).fill(1));
  }

  run(effort: number): SteinerTree | null {
    const random = seededRandom(1);
    let done = 0;
    while (done < effort && !this.proved()) {
      const batch = Math.min(done === 0 ? 1 : 4, effort - done);
      const problem = new SteinerProblem(this.rest.graph, this.rest.terminals);
      if (!this.searchIn(problem, done, batch, random)) break;
      done += batch;
      if (!this.proved()) this.reduce(done);
      if (!this.proved()) this.solveExactly(effort);
    }
    if (this.value === Number.POSITIVE_INFINITY) return null;
    const edges = [...this.best].sort((x, y) => x - y);
    return { edges, value: this.value, lowerBound: Math.min(this.lowerBound, this.value) };
  }

  /** Settles what is left exactly when that takes few enough steps. */
  private solveExactly(effort: number): void {
    const { graph, terminals, edgeOf } = this.rest;
    if (exactSteps(graph, terminals.length) > effort * EXACT_STEPS) return;
    const tree = exactTree(graph, terminals, this.target());
    if (tree !== null) {
      this.best = tree.map((e) => edgeOf[e] ?? 0);
      this.value = tree.reduce((sum, e) => sum + (graph.cost[e] ?? 0), 0);
    }
    this.lowerBound = this.value;
  }

  /** Value that a better tree stays under. */
  private target(): number {
    return this.grain === 1 ? this.value - 0.5 : this.value * (1 - 1e-9);
  }

  private proved(): boolean {
    return this.lowerBound >= this.target();
  }

  /** Some starts within what is left of the graph; false when its terminals hang together no more. */
  private searchIn(problem: SteinerProblem, done: number, batch: number, random: () => number): boolean {
    const { graph, terminals } = problem;
    const admit = (tree: readonly number[]): void => {
      const cost = problem.costOf(tree);
      const edges = tree.map((e) => this.rest.edgeOf[e] ?? 0);
      if (cost < this.value * (1 - 1e-12)) {
        this.value = cost;
        this.best = edges;
      }
      if (this.elite.some((e) => Math.abs(e.cost - cost) <= 1e-9 * cost)) return;
      this.elite.push({ cost, edges });
      this.elite.sort((x, y) => x.cost - y.cost);
      if (this.elite.length > ELITE) this.elite.pop();
    };
    for (let start = done; start < done + batch; start++) {
      const root = terminals[Math.floor(random() * terminals.length)] ?? 0;
      const costs = start === 0 ? graph.cost : changedCosts(graph, random);
      const grown = growTree(problem, root, costs);
      if (!joins(problem, grown)) {
        this.lowerBound = this.value;
        return false;
      }
      const tree = improved(problem, grown);
      const mate = this.elite[Math.floor(random() * this.elite.length)];
      admit(tree);
      if (mate === undefined) continue;
      const costs2 = combinedCosts(this.rest, tree, new Set(mate.edges), random);
      admit(improved(problem, growTree(problem, root, costs2)));
    }
    return true;
  }

  /** Takes away edges that no better tree uses, going by the bounds from a few roots. */
  private reduce(done: number): void {
    const { terminals } = this.rest;
    for (let i = 0; i < 3 && !this.proved(); i++) {
      const root = this.rest.terminals[((done + i) * 7) % terminals.length] ?? 0;
      const { graph } = this.rest;
      const alive = new Uint8Array(graph.edges).fill(1);
      const bound = fixByReducedCost(graph, this.rest.terminals, root, this.target(), alive);
      this.lowerBound = Math.max(this.lowerBound, Math.min(bound, this.value));
      const before = this.rest.edgeOf;
      const next = remainder(graph, this.rest.terminals, alive);
      this.rest = { ...next, edgeOf: next.edgeOf.map((e) => before[e] ?? 0) };
    }
    if (this.grain === 1) this.lowerBound = Math.ceil(this.lowerBound - 1e-6);
  }
}

/** Local search until none of its moves helps; the dearest move comes when the others have nothing left. */
const improved = (problem: SteinerProblem, start: number[]): number[] => {
  let tree = start;
  for (let cost = problem.costOf(tree); ; ) {
    tree = exchangePaths(problem, insertNodes(problem, tree));
    let next = problem.costOf(tree);
    if (next >= cost * (1 - 1e-9)) {
      tree = removeNodes(problem, tree);
      next = problem.costOf(tree);
      if (next >= cost * (1 - 1e-9)) return tree;
    }
    cost = next;
  }
};

/** A tree that misses a terminal has an edge too few, or a terminal outside. */
const joins = (problem: SteinerProblem, tree: readonly number[]): boolean => {
  const inside = new Set<number>();
  for (const e of tree) {
    inside.add(problem.graph.a[e] ?? 0);
    inside.add(problem.graph.b[e] ?? 0);
  }
  return problem.terminals.every((t) => inside.has(t)) && inside.size === tree.length + 1;
};

const changedCosts = (graph: Graph, random: () => number): Float64Array =>
  graph.cost.map((c) => c * (1 + 0.4 * random()));

/** Edges of both trees are cheap, of one dear, of none dearest. */
const combinedCosts = (
  { graph, edgeOf }: Remainder,
  tree: readonly number[],
  mate: ReadonlySet<number>,
  random: () => number,
): Float64Array => {
  const inTree = new Uint8Array(graph.edges);
  for (const e of tree) inTree[e] = 1;
  return graph.cost.map((c, e) => {
    const count = (inTree[e] ?? 0) + (mate.has(edgeOf[e] ?? 0) ? 1 : 0);
    return count === 2 ? c : c * (count === 1 ? 100 + 400 * random() : 1000);
  });
};
