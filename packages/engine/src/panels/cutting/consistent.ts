import { type CuttingProblem, seededRandom } from "@pinwright/kernel";
import {
  type Covered,
  covered,
  type Pattern,
  patternOf,
  patternPart,
  wholesOf,
  withCounts,
} from "./covered.ts";
import { WHOLE_SHEET } from "./demand.ts";
import { fillOffcuts } from "./many.ts";
import { fenceKey, type PatternUse, together, wholeSheets } from "./pattern.ts";
import {
  bestStrips,
  inOrder,
  type LyingPiece,
  mayLie,
  type Strip,
  type StripPattern,
  stripOf,
} from "./strips.ts";
import { type Units, unitsOf } from "./units.ts";
import { wholeNumbers } from "./whole-numbers.ts";

/** Orders of the fence that are tried, as counted steps. */
const MOST_ORDERS = 90;
/** Orders for which whole numbers of sheets are searched. */
const MOST_ROUNDED = 8;
/** Prices at which further patterns are looked for, and how far they lie about those of the covering problem. */
const FURTHER = 120;
const NEAR = [0.03, 0.1, 0.3, 0.6];

/**
 * A plan of few whole sheets whose cuts all follow one order of the fence, so that every distance is set once for the whole
 * run: a distance waits until everything that it is cut out of has been cut. Orders are tried from some to begin with on,
 * then with one distance moved; the covering problem tells whether an order can do with so many sheets.
 * @param least whole sheets that it may take
 * @param seeds orders of all distances, in µm, to begin with
 */
export function cutConsistently(
  problem: CuttingProblem,
  least: number,
  seeds: readonly (readonly number[])[],
): readonly PatternUse[] | null {
  const search = new OrderSearch(problem, least);
  for (const seed of seeds) {
    const found = search.look(seed);
    if (found !== null) return found;
  }
  return search.climb();
}

class OrderSearch {
  private readonly problem: CuttingProblem;
  private readonly least: number;
  private readonly seen = new Set<string>();
  private rounded = 0;
  private best: { readonly order: readonly number[]; readonly total: number } | null = null;

  constructor(problem: CuttingProblem, least: number) {
    this.problem = problem;
    this.least = least;
  }

  /** A plan in this order within the sheets that it may take. */
  look(order: readonly number[]): readonly PatternUse[] | null {
    const key = order.join(" ");
    if (this.seen.has(key) || this.seen.size >= MOST_ORDERS) return null;
    this.seen.add(key);
    const units = unitsOf(this.problem, wholesOf(this.problem), order);
    const offcuts = fillOffcuts(this.problem, order);
    const found = this.within(offcuts, order, units);
    if (found !== null || offcuts.uses.length === 0) return found;
    // An offcut may hold other panels, and one that saves no sheet may be what stands in the way.
    const whole = { ...this.problem, pieces: withCounts(this.problem, this.nothing.left) };
    const { prices } = covered(whole, units, false);
    return (
      this.within(fillOffcuts(this.problem, order, prices), order, units) ??
      this.within(this.nothing, order, units)
    );
  }

  private get nothing(): ReturnType<typeof fillOffcuts> {
    return { uses: [], left: this.problem.pieces.map(({ count }) => count) };
  }

  private within(
    offcuts: ReturnType<typeof fillOffcuts>,
    order: readonly number[],
    units: Units,
  ): readonly PatternUse[] | null {
    const left = { ...this.problem, pieces: withCounts(this.problem, offcuts.left) };
    const cover = covered(left, units, false);
    const total = cover.patterns.reduce((sum, { amount }) => sum + amount, 0);
    if (this.best === null || total < this.best.total - 1e-9) this.best = { order, total };
    if (Math.ceil(total - 1e-9) > this.least || this.rounded >= MOST_ROUNDED) return null;
    this.rounded++;
    const whole =
      wholeNumbers(left, cover, this.least) ??
      wholeNumbers(
        left,
        { ...cover, seen: [...cover.seen, ...furtherPatterns(left, units, cover)] },
        this.least,
      );
    const uses = [...offcuts.uses, ...(whole ?? inStrips(left, cover, units))];
    return wholeSheets(uses, this.problem, WHOLE_SHEET) <= this.least ? together(uses) : null;
  }

  /** From the best order so far on, one distance moved at a time, while that gets better. */
  climb(): readonly PatternUse[] | null {
    for (;;) {
      const from = this.best;
      if (from === null) return null;
      for (const next of moves(from.order)) {
        const found = this.look(next);
        if (found !== null) return found;
        if (this.seen.size >= MOST_ORDERS || this.rounded >= MOST_ROUNDED) return null;
      }
      if (this.best === from) return null;
    }
  }
}

/** Patterns that are best at prices near those of the covering problem, each once. */
function furtherPatterns(
  problem: CuttingProblem,
  units: Units,
  { prices, seen }: Covered,
): readonly Pattern[] {
  const random = seededRandom(1);
  const known = new Set(seen.map(({ counts }) => counts.join(" ")));
  const found: Pattern[] = [];
  for (let i = 0; i < FURTHER; i++) {
    const far = NEAR[i % NEAR.length] ?? 0;
    const near = prices.map((price) => price * (1 + far * (random() - 0.5)));
    const pattern = patternOf(problem, units, near);
    if (pattern === null || known.has(pattern.counts.join(" "))) continue;
    known.add(pattern.counts.join(" "));
    found.push(pattern);
  }
  return found;
}

/** Every order that has one distance elsewhere. */
function* moves(order: readonly number[]): Generator<readonly number[]> {
  for (let from = 0; from < order.length; from++) {
    const rest = order.filter((_, i) => i !== from);
    for (let to = 0; to <= rest.length; to++) {
      if (to === from) continue;
      yield [...rest.slice(0, to), order[from] ?? 0, ...rest.slice(to)];
    }
  }
}

/** All different lengths of the pieces. */
export const lengthsOf = ({ pieces }: CuttingProblem): readonly number[] =>
  [...new Set(pieces.flatMap(({ widthMm, heightMm }) => [fenceKey(widthMm), fenceKey(heightMm)]))].sort(
    (a, b) => b - a,
  );

/** Whole numbers of the patterns, and for what is left strips filled one after another. */
function inStrips(
  problem: CuttingProblem,
  { patterns, prices }: Covered,
  units: Units,
): readonly PatternUse[] {
  const left = problem.pieces.map(({ count }) => count);
  const uses: PatternUse[] = [];
  const take = ({ sheet, part, counts }: Pattern, most: number): void => {
    const copies = Math.min(
      most,
      ...counts.flatMap((n, i) => (n > 0 ? [Math.floor((left[i] ?? 0) / n)] : [])),
    );
    if (copies <= 0) return;
    uses.push({ sheet, part, copies });
    counts.forEach((n, i) => {
      left[i] = (left[i] ?? 0) - n * copies;
    });
  };
  for (const { pattern, amount } of patterns) take(pattern, Math.floor(amount + 1e-9));
  const areas = problem.pieces.map(({ widthMm, heightMm }) => widthMm * heightMm);
  // A price of nothing must not leave a piece lying.
  const most = Math.max(...areas);
  const priced = prices.map((price, i) => price + (1e-6 * (areas[i] ?? 0)) / most);
  const tries = [priced, areas].map((values) => restInStrips(problem, units, left, values));
  const [first, second] = tries;
  const rest = first !== undefined && second !== undefined && second.length < first.length ? second : first;
  return [...uses, ...(rest ?? [])];
}

function restInStrips(
  problem: CuttingProblem,
  units: Units,
  wanted: readonly number[],
  values: readonly number[],
): readonly PatternUse[] {
  const left = [...wanted];
  const uses: PatternUse[] = [];
  while (left.some((n) => n > 0)) {
    const patterns = [bestWithin(units, left, values), ...greedyPatterns(units, left, values)];
    const best = patterns.reduce<StripPattern | null>(
      (kept, next) =>
        next !== null && next.strips.length > 0 && (kept === null || next.value > kept.value + 1e-9)
          ? next
          : kept,
      null,
    );
    if (best === null) break;
    uses.push({ sheet: best.sheet, part: patternPart(problem, best), copies: 1 });
    best.counts.forEach((n, i) => {
      left[i] = (left[i] ?? 0) - n;
    });
  }
  return uses;
}

/** The most value without limits of copies, if it keeps within what is left. */
function bestWithin(units: Units, left: readonly number[], values: readonly number[]): StripPattern | null {
  const best = bestStrips(
    units.ways.filter((way) => (left[way.piece] ?? 0) > 0),
    values,
    units,
  );
  return best?.counts.every((n, i) => n <= (left[i] ?? 0)) === true ? best : null;
}

/** Strips filled one after another with what is left: those worth most for their height first, and those worth most. */
function greedyPatterns(
  units: Units,
  left: readonly number[],
  values: readonly number[],
): readonly StripPattern[] {
  return units.sheets.flatMap((sheet) =>
    units.firstCuts.flatMap((firstCut) =>
      [1, 0].map((power) => greedy(units, sheet, firstCut, left, values, power)),
    ),
  );
}

function greedy(
  units: Units,
  sheet: Units["sheets"][number],
  firstCut: StripPattern["firstCut"],
  wanted: readonly number[],
  values: readonly number[],
  power: number,
): StripPattern {
  const rip = firstCut === "rip";
  const along = ({ w, h }: LyingPiece): number => (rip ? w : h);
  const across = ({ w, h }: LyingPiece): number => (rip ? h : w);
  const [length, width] = rip ? [sheet.w, sheet.h] : [sheet.h, sheet.w];
  const left = [...wanted];
  const strips: Strip[] = [];
  let room = width;
  let value = 0;
  for (;;) {
    const wantedWays = units.ways.filter((way) => (left[way.piece] ?? 0) > 0 && along(way) <= length);
    const heights = [...new Set(wantedWays.map(across))].filter((high) => high <= room);
    const options = heights.map((high) => {
      const own = wantedWays.filter((way) => mayLie(along(way), across(way), high, units));
      const row = fillRow(own, along, length, left, values);
      const worth = row.reduce((sum, way) => sum + (values[way.piece] ?? 0), 0);
      return { high, row, worth, score: worth / high ** power };
    });
    const best = options.filter(({ row }) => row.length > 0).sort((a, b) => b.score - a.score)[0];
    if (best === undefined) break;
    const made = wantedWays.find((way) => across(way) === best.high);
    if (made === undefined) break;
    const strip = stripOf(best.row, made, along, across, units);
    strips.push(strip);
    room -= across(strip.like);
    value += best.worth;
    for (const way of best.row) left[way.piece] = (left[way.piece] ?? 0) - 1;
  }
  const counts = wanted.map((n, i) => n - (left[i] ?? 0));
  return { sheet: sheet.sheet, firstCut, strips: inOrder(strips, along, across, units), counts, value };
}

/** Pieces of most value in a row, each no more often than it is left: dynamic programme over single pieces. */
function fillRow(
  ways: readonly LyingPiece[],
  along: (way: LyingPiece) => number,
  length: number,
  left: readonly number[],
  values: readonly number[],
): LyingPiece[] {
  let states = new Map<number, { readonly value: number; readonly row: readonly LyingPiece[] }>([
    [0, { value: 0, row: [] }],
  ]);
  for (const way of ways) {
    const most = Math.min(left[way.piece] ?? 0, Math.floor(length / along(way)));
    for (let copy = 0; copy < most; copy++) {
      const next = new Map(states);
      for (const [at, { value, row }] of states) {
        const to = at + along(way);
        if (to > length || row.filter(({ piece }) => piece === way.piece).length >= (left[way.piece] ?? 0))
          continue;
        const sum = value + (values[way.piece] ?? 0);
        if (sum > (next.get(to)?.value ?? -1) + 1e-12) next.set(to, { value: sum, row: [...row, way] });
      }
      states = next;
    }
  }
  let best: { readonly value: number; readonly row: readonly LyingPiece[] } = { value: 0, row: [] };
  for (const state of states.values()) if (state.value > best.value + 1e-12) best = state;
  return [...best.row];
}
