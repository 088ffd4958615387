import { assign, seededRandom } from "@pinwright/kernel";
import { Chains } from "./chains.ts";
import {
  type Assigned,
  type AssignProblem,
  assignedMm,
  chainOf,
  directionsOf,
  isPossible,
} from "./problem.ts";

export interface AssignEffort {
  /** Trials of the search. */
  readonly steps: number;
  readonly seed: number;
}

/** Trials for each site, and at least: some seconds for 64 switches. */
const STEPS_PER_SITE = 50_000;
const LEAST_STEPS = 1_000_000;

export const usualAssignSteps = (problem: AssignProblem): number =>
  Math.max(LEAST_STEPS, STEPS_PER_SITE * problem.sites.length);

/** Steps of one run, for each site and at least. Several short runs find more than a long one, down to these. */
const RUN_STEPS_PER_SITE = 4_000;
const LEAST_RUN_STEPS = 20_000;

/** Temperatures of the search as parts of the mean distance of two sites. */
const HOT = 0.4;
const COLD = 0.004;

/**
 * A cheap assignment of sites to crossings: simulated annealing (S. Kirkpatrick, C. Gelatt, M. Vecchi, Science 220
 * (1983) 671–680) over moves to a free crossing, exchanges of two sites, and turns of a part of a chain, from the
 * given assignment; then a descent in which every chain is as short as it can be. Counted steps, seeded; never worse
 * than `start`. Null when the pinned sites leave no assignment.
 * @param start an assignment that is there already; taken when it is possible
 */
export function searchAssignment(
  problem: AssignProblem,
  start: Assigned | null,
  effort: AssignEffort = { steps: usualAssignSteps(problem), seed: 1 },
): Assigned | null {
  const given = start !== null && isPossible(problem, start) ? start : firstAssignment(problem);
  if (given === null || problem.sites.length === 0) return given;
  const random = seededRandom(effort.seed);
  let best = given;
  let bestMm = assignedMm(problem, given);
  const ofRun = Math.max(LEAST_RUN_STEPS, RUN_STEPS_PER_SITE * problem.sites.length);
  const runs = Math.max(1, Math.round(effort.steps / ofRun));
  for (let run = 0; run < runs; run++) {
    // Every other run begins hot, the others go on from the best so far.
    const hot = run % 2 === 0 ? HOT : HOT / 6;
    const annealed = anneal(problem, best, Math.floor(effort.steps / runs), random, hot);
    const found = descend(problem, annealed);
    const mm = assignedMm(problem, found);
    if (mm < bestMm - 1e-9) {
      best = found;
      bestMm = mm;
    }
  }
  return best;
}

/** An assignment that obeys all pins, found as a matching of sites and crossings. */
function firstAssignment({ columns, rows, sites }: AssignProblem): Assigned | null {
  const costs = sites.map((site, i) =>
    columns.flatMap(({ feedMm }, column) =>
      rows.map((row, r) =>
        (site.column ?? column) === column && (site.row ?? r) === r
          ? (feedMm[i] ?? Number.POSITIVE_INFINITY) + (row.feedMm[i] ?? Number.POSITIVE_INFINITY)
          : Number.POSITIVE_INFINITY,
      ),
    ),
  );
  const matched = sites.length === 0 ? { columnOf: [] } : assign(costs);
  if (matched === null) return null;
  return {
    columnOf: matched.columnOf.map((cell) => Math.floor(cell / rows.length)),
    rowOf: matched.columnOf.map((cell) => cell % rows.length),
  };
}

/** Crossings with the sites at them, and the chains of both directions. */
class State {
  readonly columns: Chains;
  readonly rows: Chains;
  readonly #problem: AssignProblem;
  readonly #at: Int32Array;

  constructor(problem: AssignProblem, assigned: Assigned) {
    const [columns, rows] = directionsOf(problem);
    this.#problem = problem;
    this.columns = new Chains(columns, assigned.columnOf);
    this.rows = new Chains(rows, assigned.rowOf);
    this.#at = new Int32Array(problem.columns.length * problem.rows.length).fill(-1);
    for (const [i, column] of assigned.columnOf.entries()) this.#set(column, assigned.rowOf[i] ?? 0, i);
  }

  get assigned(): Assigned {
    return { columnOf: [...this.columns.lineOf], rowOf: [...this.rows.lineOf] };
  }

  /** The site at a crossing, or null. */
  siteAt(column: number, row: number): number | null {
    const site = this.#at[column * this.#problem.rows.length + row] ?? -1;
    return site < 0 ? null : site;
  }

  /** Mm that the move of a site to a crossing adds, with whoever is there coming to its own; Infinity if not allowed. */
  delta(site: number, column: number, row: number): number {
    const other = this.siteAt(column, row);
    const [ownColumn, ownRow] = [this.columns.lineOf[site] ?? 0, this.rows.lineOf[site] ?? 0];
    if (!this.#may(site, column, row)) return Number.POSITIVE_INFINITY;
    if (other !== null && !this.#may(other, ownColumn, ownRow)) return Number.POSITIVE_INFINITY;
    return this.columns.delta(site, column, other) + this.rows.delta(site, row, other);
  }

  move(site: number, column: number, row: number): void {
    const other = this.siteAt(column, row);
    this.#set(this.columns.lineOf[site] ?? 0, this.rows.lineOf[site] ?? 0, other ?? -1);
    this.columns.move(site, column, other);
    this.rows.move(site, row, other);
    this.#set(column, row, site);
  }

  #may(i: number, column: number, row: number): boolean {
    const { columns, rows, sites } = this.#problem;
    const site = sites[i];
    return (
      (site?.column ?? column) === column &&
      (site?.row ?? row) === row &&
      Number.isFinite(columns[column]?.feedMm[i]) &&
      Number.isFinite(rows[row]?.feedMm[i])
    );
  }

  #set(column: number, row: number, site: number): void {
    this.#at[column * this.#problem.rows.length + row] = site;
  }
}

function meanMm({ columnMm }: AssignProblem): number {
  const finite = columnMm.flatMap((row, i) => row.filter((mm, j) => j < i && Number.isFinite(mm)));
  return finite.length === 0 ? 1 : finite.reduce((sum, mm) => sum + mm, 0) / finite.length;
}

function anneal(
  problem: AssignProblem,
  start: Assigned,
  steps: number,
  random: () => number,
  hot: number,
): Assigned {
  const state = new State(problem, start);
  const mean = meanMm(problem);
  const pick = (n: number): number => Math.floor(random() * n);
  const cooling = (COLD / hot) ** (1 / Math.max(1, steps));
  let temperature = hot * mean;
  for (let step = 0; step < steps; step++, temperature *= cooling) {
    const accepts = (delta: number): boolean => delta <= 0 || random() < Math.exp(-delta / temperature);
    const kind = random();
    if (kind < 0.2) {
      const chains = kind < 0.1 ? state.columns : state.rows;
      const chain = pick(chains.orders.length);
      const length = chains.orders[chain]?.length ?? 0;
      if (length < 2) continue;
      const [i, j] = [pick(length), pick(length)];
      const [first, last] = i < j ? [i, j] : [j, i];
      if (first !== last && accepts(chains.turnDelta(chain, first, last))) chains.turn(chain, first, last);
      continue;
    }
    const site = pick(problem.sites.length);
    // A step along one line leaves the other direction as it is; it is what succeeds most often.
    const column =
      kind < 0.55 || kind > 0.9 ? pick(problem.columns.length) : (state.columns.lineOf[site] ?? 0);
    const row = kind >= 0.55 ? pick(problem.rows.length) : (state.rows.lineOf[site] ?? 0);
    if (state.siteAt(column, row) !== site && accepts(state.delta(site, column, row)))
      state.move(site, column, row);
  }
  return state.assigned;
}

/** Makes every chain as short as it can be, then takes whatever move or exchange helps, until none does. */
function descend(problem: AssignProblem, start: Assigned): Assigned {
  const state = new State(problem, start);
  const [columns, rows] = directionsOf(problem);
  const tidy = (): void => {
    for (const [chains, direction] of [
      [state.columns, columns],
      [state.rows, rows],
    ] as const)
      chains.orders.forEach((order, chain) => {
        if (order.length < 2) return;
        const short = chainOf(
          direction,
          chains.line(chain),
          [...order].sort((a, b) => a - b),
        );
        if (short.lengthMm < chains.lengthMm(chain) - 1e-9) chains.reorder(chain, short.order);
      });
  };
  tidy();
  for (let isBetter = true; isBetter; ) {
    isBetter = false;
    for (const site of problem.sites.keys())
      for (const column of problem.columns.keys())
        for (const row of problem.rows.keys()) {
          if (state.siteAt(column, row) === site || state.delta(site, column, row) >= -1e-6) continue;
          state.move(site, column, row);
          isBetter = true;
        }
    if (isBetter) tidy();
  }
  return state.assigned;
}
