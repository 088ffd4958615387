import type { CutPart, CuttingProblem } from "@pinwright/kernel";

/** A way of cutting one sheet, and how many sheets are cut so. */
export interface PatternUse {
  /** Which of the problem's sheets. */
  readonly sheet: number;
  readonly part: CutPart;
  readonly copies: number;
}

/** How many of each piece come out of a part. */
export function countsOf(part: CutPart, pieces: number): readonly number[] {
  const counts = new Array<number>(pieces).fill(0);
  const visit = (at: CutPart): void => {
    if (at.kind === "piece") counts[at.piece] = (counts[at.piece] ?? 0) + 1;
    if (at.kind !== "cut") return;
    visit(at.first);
    visit(at.rest);
  };
  visit(part);
  return counts;
}

/** Distances of the fence that parts of a plan need, in µm. */
export function distancesOf(uses: readonly Pick<PatternUse, "part">[]): ReadonlySet<number> {
  const found = new Set<number>();
  const visit = (at: CutPart): void => {
    if (at.kind !== "cut") return;
    found.add(fenceKey(at.atMm));
    visit(at.first);
    visit(at.rest);
  };
  for (const { part } of uses) visit(part);
  return found;
}

/** A distance of the fence as a whole number of µm. */
export const fenceKey = (mm: number): number => Math.round(mm * 1000);

/** Uses of the same pattern together, in the order of sheets and of their first appearance. */
export function together(uses: readonly PatternUse[]): readonly PatternUse[] {
  const byPattern = new Map<string, PatternUse>();
  for (const use of uses) {
    if (use.copies === 0) continue;
    const key = JSON.stringify([use.sheet, use.part]);
    const known = byPattern.get(key);
    byPattern.set(key, { ...use, copies: use.copies + (known?.copies ?? 0) });
  }
  return [...byPattern.values()].sort((a, b) => a.sheet - b.sheet || b.copies - a.copies);
}

/** How many whole sheets, which cost more than any offcut, are used. */
export const wholeSheets = (uses: readonly PatternUse[], { sheets }: CuttingProblem, whole: number): number =>
  uses.reduce((sum, { sheet, copies }) => sum + ((sheets[sheet]?.cost ?? 0) >= whole ? copies : 0), 0);
