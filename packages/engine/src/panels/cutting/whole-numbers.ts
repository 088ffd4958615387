import type { CutPart, CuttingProblem } from "@pinwright/kernel";
import type { Covered, Pattern } from "./covered.ts";
import { countsOf, type PatternUse } from "./pattern.ts";

/** So many sheets fewer of each pattern than the covering problem takes are fixed; the others are searched. */
const FEWER = [0, 1, 2, 3];
/** Sheets that are looked at, as counted steps. */
const MOST_STEPS = 3_000;
const EPSILON = 1e-7;

/**
 * How often each pattern is cut so that all that is wanted comes out of at most so many sheets; null when none is found.
 * Most sheets are those of the covering problem, rounded down; the others are searched among all patterns that it has seen:
 * no sheet is worth more than 1 at its prices, so that what is worth too little is left out. A piece too many is not cut out.
 */
export function wholeNumbers(
  problem: CuttingProblem,
  cover: Covered,
  mostSheets: number,
): readonly PatternUse[] | null {
  for (const fewer of FEWER) {
    const left = problem.pieces.map(({ count }) => count);
    const uses: PatternUse[] = [];
    for (const { pattern, amount } of cover.patterns) {
      const within = pattern.counts.flatMap((n, i) => (n > 0 ? [Math.floor((left[i] ?? 0) / n)] : []));
      const copies = Math.min(Math.floor(amount + 1e-9) - fewer, ...within);
      if (copies <= 0) continue;
      uses.push({ sheet: pattern.sheet, part: pattern.part, copies });
      pattern.counts.forEach((n, i) => {
        left[i] = (left[i] ?? 0) - n * copies;
      });
    }
    const sheets = mostSheets - uses.reduce((sum, { copies }) => sum + copies, 0);
    const rest = new Rest(cover).find(left, sheets);
    if (rest !== null) return [...uses, ...trimmed(rest, left)];
  }
  return null;
}

/** Depth first: the piece that fewest patterns give is covered first. */
class Rest {
  readonly #cover: Covered;
  #steps = 0;

  constructor(cover: Covered) {
    this.#cover = cover;
  }

  find(left: readonly number[], sheets: number): readonly Pattern[] | null {
    if (left.every((n) => n <= 0)) return [];
    const { prices, seen } = this.#cover;
    const worth = left.reduce((sum, n, i) => sum + Math.max(0, n) * (prices[i] ?? 0), 0);
    if (sheets <= 0 || worth > sheets + EPSILON) return null;
    const least = worth - (sheets - 1) - EPSILON;
    const given = (pattern: Pattern): number =>
      pattern.counts.reduce(
        (sum, n, i) => sum + Math.min(n, Math.max(0, left[i] ?? 0)) * (prices[i] ?? 0),
        0,
      );
    const usable = seen
      .map((pattern) => ({ pattern, value: given(pattern) }))
      .filter(({ value }) => value >= least)
      .sort((a, b) => b.value - a.value);
    const rare = this.#rarest(left, usable);
    for (const { pattern } of usable) {
      if ((pattern.counts[rare] ?? 0) === 0) continue;
      if (this.#steps++ > MOST_STEPS) return null;
      const next = left.map((n, i) => n - (pattern.counts[i] ?? 0));
      const rest = this.find(next, sheets - 1);
      if (rest !== null) return [pattern, ...rest];
    }
    return null;
  }

  #rarest(left: readonly number[], usable: readonly { readonly pattern: Pattern }[]): number {
    let rare = 0;
    let fewest = Number.POSITIVE_INFINITY;
    left.forEach((n, i) => {
      if (n <= 0) return;
      const giving = usable.filter(({ pattern }) => (pattern.counts[i] ?? 0) > 0).length;
      if (giving >= fewest) return;
      fewest = giving;
      rare = i;
    });
    return rare;
  }
}

/** The patterns with no more pieces than are wanted. */
function trimmed(patterns: readonly Pattern[], wanted: readonly number[]): readonly PatternUse[] {
  const left = [...wanted];
  return patterns.map(({ sheet, part }) => {
    const own = without(part, left);
    countsOf(own, left.length).forEach((n, i) => {
      left[i] = (left[i] ?? 0) - n;
    });
    return { sheet, part: own, copies: 1 };
  });
}

/** A part without the pieces that are not wanted; a cut between waste and waste is none. */
function without(part: CutPart, wanted: readonly number[]): CutPart {
  const left = [...wanted];
  const visit = (at: CutPart): CutPart => {
    if (at.kind === "waste") return at;
    if (at.kind === "piece") {
      if ((left[at.piece] ?? 0) <= 0) return { kind: "waste" };
      left[at.piece] = (left[at.piece] ?? 0) - 1;
      return at;
    }
    const first = visit(at.first);
    const rest = visit(at.rest);
    return first.kind === "waste" && rest.kind === "waste" ? first : { ...at, first, rest };
  };
  return visit(part);
}
