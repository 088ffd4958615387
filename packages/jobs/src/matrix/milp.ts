import { type Assigned, type AssignProblem, assignedMm } from "@pinwright/engine";
import loadHighs from "highs";
import { kindRow, type LineSet, type MasterRows, masterModel, pairRow, siteRow, sitesOf } from "./master.ts";
import { kindsOf, type Side, type SubsetLengths, subsetLengths } from "./subsets.ts";

/** What the solver proved of an assignment problem. */
export interface AssignProof {
  /** `optimal`: proven within the tolerance; `limit`: too many sets are left, or time ran out. */
  readonly status: "optimal" | "limit";
  /** Mm of the best assignment found; that of `start` when nothing better was. */
  readonly valueMm: number;
  /** No assignment has fewer mm. */
  readonly boundMm: number;
  readonly assigned: Assigned;
  /** Sets that the reduced costs left for the integer program. */
  readonly sets: number;
}

export interface AssignMilpOptions {
  /** Most seconds of the integer program. */
  readonly seconds?: number;
}

/** Most sites: every subset of them is looked at. */
export const MOST_SITES = 16;

/** Most sets that are handed to the integer program. */
const MOST_SETS = 30_000;

/** Sets that one round of pricing adds for each kind of line. */
const SETS_A_ROUND = 100;

const RELATIVE_GAP = 1e-7;
const TOLERANCE_MM = 1e-4;

type Highs = Awaited<ReturnType<typeof loadHighs>>;
let loaded: Promise<Highs> | null = null;

/**
 * Proves the cheapest assignment of up to 16 sites exactly. The linear relaxation of the set-partitioning program is
 * solved over all sets by adding those with a negative reduced cost until there is none; with the length of a known
 * assignment only sets whose reduced cost is within its distance from the relaxation can be in a better one, and the
 * integer program over those gives the optimum (reduced-cost fixing).
 * @param start an assignment that is possible
 * @throws RangeError for more than 16 sites.
 */
export async function assignMilp(
  problem: AssignProblem,
  start: Assigned,
  { seconds = 60 }: AssignMilpOptions = {},
): Promise<AssignProof> {
  const n = problem.sites.length;
  if (n < 2 || n > MOST_SITES) throw new RangeError(`there are ${n} sites, expected 2 to ${MOST_SITES}`);
  loaded ??= loadHighs();
  const highs = await loaded;
  const sides = sidesOf(problem);
  const [columns, ofRows] = sides.map(({ kinds }) => kinds.map(({ lines }) => lines.length));
  const rows: MasterRows = { sites: n, columns: columns ?? [], rows: ofRows ?? [] };
  const lengths = sides.map(subsetLengths);
  const valueMm = assignedMm(problem, start);
  const relaxed = await relax(highs, rows, lengths, startSets(sides, lengths, start));
  const kept = setsWithin(
    rows,
    lengths,
    relaxed.duals,
    Math.max(0, valueMm - relaxed.valueMm) + TOLERANCE_MM,
  );
  const known = { valueMm, assigned: start, sets: kept.length };
  if (kept.length > MOST_SETS) return { ...known, status: "limit", boundMm: relaxed.valueMm };
  return highs.withModel({ format: "lp", data: masterModel(rows, kept, true) }, (model): AssignProof => {
    model.options.set({
      output_flag: false,
      mip_rel_gap: RELATIVE_GAP,
      mip_abs_gap: TOLERANCE_MM,
      random_seed: 1,
      time_limit: seconds,
    });
    // The solver starts from the assignment that is known.
    const first = new Set(startSets(sides, lengths, start).map(keyOf));
    const indices = kept.flatMap((set, k) => (first.has(keyOf(set)) ? [model.getColByName(`z${k}`)] : []));
    const values = new Array<number>(kept.length + 1).fill(0);
    for (const i of indices) values[i] = 1;
    model.setSolution({ indices: values.map((_, i) => i), values });
    const { modelStatus } = model.run();
    const codes = highs.constants.modelStatus;
    if (modelStatus !== codes.optimal && modelStatus !== codes.timeLimit)
      throw new Error(`matrix model: the solver ended with status ${modelStatus}`);
    const boundMm = Math.max(relaxed.valueMm, Math.min(valueMm, Number(model.info.get("mip_dual_bound"))));
    const { colValue } = model.getSolution();
    const status = modelStatus === codes.optimal ? "optimal" : "limit";
    if (colValue.length === 0) return { ...known, status, boundMm };
    const found = readSets(
      sides,
      kept.filter((_, k) => (colValue[model.getColByName(`z${k}`)] ?? 0) > 0.5),
    );
    return { status, valueMm: assignedMm(problem, found), boundMm, assigned: found, sets: kept.length };
  });
}

const sidesOf = ({ columns, rows, sites, columnMm, rowMm }: AssignProblem): readonly [Side, Side] => [
  {
    kinds: kindsOf(
      columns,
      sites.map((s) => s.column),
    ),
    mm: columnMm,
    groupOf: sites.map((s) => s.columnGroup),
    pinned: sites.map((s) => s.column),
    most: rows.length,
  },
  {
    kinds: kindsOf(
      rows,
      sites.map((s) => s.row),
    ),
    mm: rowMm,
    groupOf: sites.map((s) => s.rowGroup),
    pinned: sites.map((s) => s.row),
    most: columns.length,
  },
];

function startSets(
  sides: readonly Side[],
  lengths: readonly SubsetLengths[],
  { columnOf, rowOf }: Assigned,
): LineSet[] {
  return ([columnOf, rowOf] as const).flatMap((lineOf, k) =>
    (sides[k]?.kinds ?? []).flatMap(({ lines }, kind) =>
      lines.flatMap((line): LineSet[] => {
        const mask = lineOf.reduce((bits, own, i) => (own === line ? bits | (1 << i) : bits), 0);
        const lengthMm = lengths[k]?.[kind]?.[mask] ?? 0;
        return mask === 0 ? [] : [{ direction: k === 0 ? 0 : 1, kind, mask, lengthMm }];
      }),
    ),
  );
}

interface Relaxed {
  readonly valueMm: number;
  readonly duals: Float64Array;
}

/** The relaxation over all sets: value and prices of its rows. */
async function relax(
  highs: Highs,
  rows: MasterRows,
  lengths: readonly SubsetLengths[],
  sets: LineSet[],
): Promise<Relaxed> {
  const seen = new Set(sets.map(keyOf));
  for (;;) {
    const solved = await highs.withModel(
      { format: "lp", data: masterModel(rows, sets, false) },
      (model): Relaxed => {
        model.options.set({ output_flag: false, random_seed: 1 });
        model.run();
        const { rowDual } = model.getSolution();
        const duals = new Float64Array(rowDual.length);
        for (let i = 0; i < duals.length; i++) duals[i] = rowDual[model.getRowByName(`r${i}`)] ?? 0;
        return { valueMm: Number(model.info.get("objective_function_value")), duals };
      },
    );
    const better = pricedSets(rows, lengths, solved.duals, -TOLERANCE_MM, SETS_A_ROUND).filter(
      (set) => !seen.has(keyOf(set)),
    );
    if (better.length === 0)
      return { ...solved, valueMm: solved.valueMm - slack(rows, lengths, solved.duals) };
    for (const set of better) {
      seen.add(keyOf(set));
      sets.push(set);
    }
  }
}

const keyOf = ({ direction, kind, mask }: LineSet): string => `${direction} ${kind} ${mask}`;

/** What the last tolerance of pricing can hide: each line has at most one set. */
const slack = (rows: MasterRows, lengths: readonly SubsetLengths[], duals: Float64Array): number =>
  lengths.reduce(
    (sum, ofDirection, k) =>
      sum +
      ofDirection.reduce(
        (all, ofKind, kind) =>
          all +
          ((k === 0 ? rows.columns : rows.rows)[kind] ?? 0) *
            Math.max(0, -leastReduced(rows, ofKind, duals, k === 0 ? 0 : 1, kind)),
        0,
      ),
    0,
  );

function leastReduced(
  rows: MasterRows,
  ofKind: Float64Array,
  duals: Float64Array,
  direction: 0 | 1,
  kind: number,
): number {
  const prices = maskPrices(rows, duals, direction);
  const own = duals[kindRow(rows, direction, kind)] ?? 0;
  let least = 0;
  for (let mask = 1; mask < ofKind.length; mask++)
    least = Math.min(least, (ofKind[mask] ?? 0) - (prices[mask] ?? 0) - own);
  return least;
}

/** Sum of the prices of a set's rows, its kind's left out, for every set. */
function maskPrices(rows: MasterRows, duals: Float64Array, direction: 0 | 1): Float64Array {
  const prices = new Float64Array(1 << rows.sites);
  for (let mask = 1; mask < prices.length; mask++) {
    const i = 31 - Math.clz32(mask);
    const rest = mask & ~(1 << i);
    let price = (prices[rest] ?? 0) + (duals[siteRow(rows, direction, i)] ?? 0);
    for (let bits = rest; bits !== 0; bits &= bits - 1)
      price += duals[pairRow(rows, i, 31 - Math.clz32(bits & -bits))] ?? 0;
    prices[mask] = price;
  }
  return prices;
}

/** Sets whose reduced cost is below a limit, the lowest first for each kind of line, at most so many. */
function pricedSets(
  rows: MasterRows,
  lengths: readonly SubsetLengths[],
  duals: Float64Array,
  belowMm: number,
  most: number,
): readonly LineSet[] {
  return lengths.flatMap((ofDirection, k) => {
    const direction = k === 0 ? 0 : 1;
    const prices = maskPrices(rows, duals, direction);
    return ofDirection.flatMap((ofKind, kind) => {
      const own = duals[kindRow(rows, direction, kind)] ?? 0;
      const found: { readonly set: LineSet; readonly cost: number }[] = [];
      for (let mask = 1; mask < ofKind.length; mask++) {
        const cost = (ofKind[mask] ?? 0) - (prices[mask] ?? 0) - own;
        if (cost < belowMm) found.push({ set: { direction, kind, mask, lengthMm: ofKind[mask] ?? 0 }, cost });
      }
      found.sort((a, b) => a.cost - b.cost || a.set.mask - b.set.mask);
      return found.slice(0, most).map(({ set }) => set);
    });
  });
}

const setsWithin = (
  rows: MasterRows,
  lengths: readonly SubsetLengths[],
  duals: Float64Array,
  mm: number,
): readonly LineSet[] => pricedSets(rows, lengths, duals, mm, Number.POSITIVE_INFINITY);

function readSets(sides: readonly Side[], sets: readonly LineSet[]): Assigned {
  const [columnOf = [], rowOf = []] = sides.map(({ kinds, pinned }, direction) => {
    const free = kinds.map(({ lines }) => [...lines]);
    const lineOf = new Array<number>(pinned.length).fill(-1);
    for (const set of sets) {
      if (set.direction !== direction) continue;
      const line = free[set.kind]?.shift() ?? -1;
      for (const site of sitesOf(set)) lineOf[site] = line;
    }
    return lineOf;
  });
  return { columnOf, rowOf };
}
