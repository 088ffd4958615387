import type { CuttingProblem } from "@pinwright/kernel";
import { fenceKey } from "./pattern.ts";
import type { LyingPiece, StripRules, StripSheet } from "./strips.ts";

/** The problem in whole units for strips, kerf added to all lengths. */
export interface Units extends StripRules {
  readonly ways: readonly LyingPiece[];
  readonly sheets: readonly StripSheet[];
}

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** Width and height of a sheet inside its trim, mm. */
export function insideOf({ sheets }: CuttingProblem, sheet: number): { widthMm: number; heightMm: number } {
  const stock = sheets[sheet];
  if (stock === undefined) return { widthMm: 0, heightMm: 0 };
  const { trim } = stock;
  const exact = (mm: number): number => Math.round(mm * 1000) / 1000;
  return {
    widthMm: exact(stock.widthMm - trim.leftMm - trim.rightMm),
    heightMm: exact(stock.heightMm - trim.bottomMm - trim.topMm),
  };
}

/**
 * Pieces as they may lie on some of the sheets, and those sheets.
 * @param order distances in the order in which the fence is set, in µm; null: any
 */
export function unitsOf(
  problem: CuttingProblem,
  sheets: readonly number[],
  order: readonly number[] | null = null,
): Units {
  const kerf = fenceKey(problem.kerfMm);
  const inside = sheets.map((sheet) => {
    const { widthMm, heightMm } = insideOf(problem, sheet);
    return { sheet, w: fenceKey(widthMm) + kerf, h: fenceKey(heightMm) + kerf };
  });
  const ways = problem.pieces.flatMap(({ widthMm, heightMm, mayTurn }, piece): LyingPiece[] => {
    const [w, h] = [fenceKey(widthMm) + kerf, fenceKey(heightMm) + kerf];
    const straight = { piece, turned: false, w, h };
    return mayTurn && w !== h ? [straight, { piece, turned: true, w: h, h: w }] : [straight];
  });
  const unit = [...ways, ...inside].reduce((d, { w, h }) => gcd(gcd(d, w), h), 0) || 1;
  const scale = <T extends { readonly w: number; readonly h: number }>(size: T): T => ({
    ...size,
    w: size.w / unit,
    h: size.h / unit,
  });
  const scaled = inside.map(scale);
  return {
    ways: ways.map(scale).filter((way) => scaled.some(({ w, h }) => way.w <= w && way.h <= h)),
    sheets: scaled,
    firstCuts: problem.firstCut === "either" ? ["rip", "cross"] : [problem.firstCut],
    ranks: order === null ? null : new Map(order.map((key, rank) => [(key + kerf) / unit, rank] as const)),
    trims: problem.stages === null || problem.stages >= 3,
  };
}
