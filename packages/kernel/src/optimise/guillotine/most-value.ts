import { seededRandom } from "../../random.ts";
import { joinBlocks } from "./blocks.ts";
import { Box, type Depth, piecesIn, refresh } from "./boxes.ts";
import { partOf } from "./cutting-tree.ts";
import { priceCopies } from "./lagrange.ts";
import type { CutPart } from "./plan.ts";
import { type CutPiece, type Size, type StockSheet, unitsOf } from "./problem.ts";
import { Cutter } from "./search.ts";
import { type Lying, normalPoints, ValueTable } from "./value-table.ts";

/** Pieces with what one is worth, to be cut from one sheet; in any number of stages. */
export interface ValueProblem {
  readonly pieces: readonly (Omit<CutPiece, "count"> & {
    /** How many may be cut at most; null: no limit. */
    readonly count: number | null;
    readonly value: number;
  })[];
  readonly sheet: Omit<StockSheet, "count" | "cost">;
  readonly kerfMm: number;
}

/** How long is searched, in counted steps, not in seconds. */
export interface ValueEffort {
  /** Places for pieces looked at, for a first good cutting. */
  readonly placeSteps: number;
  /** Sums looked at in tables of values; the tables are left out when one alone would take more. */
  readonly tableSteps: number;
  /** Pairs of blocks looked at. */
  readonly joinSteps: number;
}

/** The best cutting found. */
export interface ValuePlan {
  readonly part: CutPart;
  readonly value: number;
  /** No cutting is worth more. */
  readonly upperBound: number;
  readonly steps: number;
}

const EFFORT: ValueEffort = { placeSteps: 3_000_000, tableSteps: 200_000_000, joinSteps: 100_000_000 };
const SEED = 1;
const ANY_STAGES: Depth = { stages: Number.POSITIVE_INFINITY, lastTrim: true };
/** Most tables of values for the prices of copies. */
const MOST_ROUNDS = 60;
const ROUNDING = 1e-6;

/** The problem in units, copies limited by what a sheet can hold. */
interface Task {
  readonly sheet: Size;
  readonly ways: readonly Lying[];
  readonly values: readonly number[];
  readonly copies: readonly number[];
}

interface Found {
  readonly root: Box;
  readonly value: number;
  readonly bound: number;
  readonly steps: number;
}

/**
 * Cuts pieces of most value from one sheet, edge to edge in any number of stages, with kerf and trim. Without binding
 * limits of copies an exact dynamic programme; with limits, prices of copies give a bound, and blocks are joined, the most
 * promising first, until nothing better is possible or the steps run out. The value is optimal when it equals the bound.
 * @throws RangeError as `unitsOf` does, and when a value is negative or not finite.
 */
export const mostValue = (problem: ValueProblem, effort: ValueEffort = EFFORT): ValuePlan => {
  for (const { value } of problem.pieces) {
    if (!(Number.isFinite(value) && value >= 0)) throw new RangeError(`value ${value}`);
  }
  const units = unitsOf({
    pieces: problem.pieces.map((piece) => ({ ...piece, count: piece.count ?? 0 })),
    sheets: [{ ...problem.sheet, count: 1, cost: 1 }],
    kerfMm: problem.kerfMm,
    stages: null,
    firstCut: "either",
    lastTrim: true,
  });
  const sheet = units.sheets[0] ?? { w: 0, h: 0 };
  const task = taskOf(problem, units.pieces, sheet);
  const { root, value, bound, steps } = solve(task, effort);
  refresh(root, sheet.w, sheet.h);
  return { part: partOf(root, sheet, units), value, upperBound: Math.max(bound, value), steps };
};

const taskOf = (problem: ValueProblem, sizes: readonly Size[], sheet: Size): Task => {
  const copies: number[] = [];
  const ways: Lying[] = [];
  problem.pieces.forEach(({ count, mayTurn }, piece) => {
    const { w, h } = sizes[piece] ?? { w: 0, h: 0 };
    const lying = [{ w, h, piece, turned: false }];
    if (mayTurn && w !== h) lying.push({ w: h, h: w, piece, turned: true });
    const fitting = lying.filter((way) => way.w <= sheet.w && way.h <= sheet.h);
    const most = fitting.length === 0 ? 0 : Math.floor((sheet.w * sheet.h) / (w * h));
    copies.push(Math.min(count ?? most, most));
    if ((copies[piece] ?? 0) > 0) ways.push(...fitting);
  });
  return { sheet, ways, copies, values: problem.pieces.map(({ value }) => value) };
};

const valueIn = (root: Box, values: readonly number[]): number =>
  piecesIn(root).reduce((sum, piece) => sum + (values[piece] ?? 0), 0);

const solve = (task: Task, effort: ValueEffort): Found => {
  const { ways, copies, values } = task;
  const nothing: Found = { root: new Box(1), value: 0, bound: 0, steps: 0 };
  if (ways.length === 0) return nothing;
  const table = affordableTable(task, effort.tableSteps);
  if (table !== null) {
    const unlimited = table.fill(values);
    const root = table.boxes() ?? new Box(1);
    if (withinCopies(root, copies)) return { root, value: unlimited, bound: unlimited, steps: table.steps };
  }
  const first = placed(task, effort.placeSteps);
  if (table === null) return { ...first, bound: densityBound(task) };
  const rounds = Math.min(MOST_ROUNDS, Math.floor(effort.tableSteps / table.effort));
  const priced = priceCopies(table, values, copies, first.value, rounds);
  const known = priced.kept === null || priced.kept.value <= first.value ? first : priced.kept;
  const whole = values.every((value) => Number.isInteger(value));
  const bound = whole ? Math.floor(priced.bound + ROUNDING) : priced.bound;
  const steps = first.steps + table.steps;
  if (bound <= known.value) return { ...known, bound: known.value, steps };
  table.fill(values.map((value, i) => value - (priced.ofPiece[i] ?? 0)));
  const joined = joinBlocks(
    { table, ways, values, prices: priced.ofPiece, copies, known: known.value },
    effort.joinSteps,
  );
  return {
    root: joined.root ?? known.root,
    value: joined.value,
    bound: Math.min(bound, joined.bound),
    steps: first.steps + table.steps + joined.steps,
  };
};

const withinCopies = (root: Box, copies: readonly number[]): boolean => {
  const used = copies.map(() => 0);
  for (const piece of piecesIn(root)) used[piece] = (used[piece] ?? 0) + 1;
  return used.every((n, i) => n <= (copies[i] ?? 0));
};

/** A table of values, unless it would take too many steps; lengths of a great many units are not tried. */
const affordableTable = ({ ways, copies, sheet }: Task, steps: number): ValueTable | null => {
  if (sheet.w > steps || sheet.h > steps) return null;
  const points = (length: (way: Lying) => number, total: number): number =>
    normalPoints(
      ways.map((way) => [length(way), copies[way.piece] ?? 0] as const),
      total,
    ).length;
  const nx = points(({ w }) => w, sheet.w);
  const ny = points(({ h }) => h, sheet.h);
  return (nx * ny * (nx + ny)) / 4 > steps ? null : new ValueTable(ways, copies, sheet);
};

/** A good cutting by ruin and recreate: pieces left outside are worth as little as can be found. */
const placed = ({ sheet, values, copies, ways }: Task, steps: number): Found => {
  const size = copies.map((_, piece) => ways.find((way) => way.piece === piece));
  const cutter = new Cutter(
    {
      pieces: copies.map((count, piece) => ({
        w: size[piece]?.turned === true ? size[piece].h : (size[piece]?.w ?? 0),
        h: size[piece]?.turned === true ? size[piece].w : (size[piece]?.h ?? 0),
        count,
        mayTurn: ways.some((way) => way.piece === piece && way.turned),
        value: values[piece] ?? 0,
      })),
      sheets: [{ ...sheet, count: 1, cost: 1 }],
      depth: ANY_STAGES,
      first: null,
    },
    seededRandom(SEED),
  );
  cutter.start();
  const root = cutter.search(1, steps).filled[0]?.root ?? new Box(1);
  return { root, value: valueIn(root, values), bound: Number.POSITIVE_INFINITY, steps: cutter.steps };
};

/** The densest pieces first until the sheet's area is full. */
const densityBound = ({ sheet, values, copies, ways }: Task): number => {
  const area = copies.map((_, piece) => {
    const way = ways.find((some) => some.piece === piece);
    return way === undefined ? 0 : way.w * way.h;
  });
  let free = sheet.w * sheet.h;
  let bound = 0;
  const density = (piece: number): number => (values[piece] ?? 0) / (area[piece] ?? 1);
  const order = copies
    .flatMap((count, piece) => (count > 0 ? [piece] : []))
    .sort((a, b) => density(b) - density(a));
  for (const piece of order) {
    const taken = Math.min(free, (area[piece] ?? 0) * (copies[piece] ?? 0));
    bound += taken * density(piece);
    free -= taken;
  }
  return bound;
};
