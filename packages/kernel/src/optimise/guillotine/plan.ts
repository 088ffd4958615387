import type { CutKind } from "./problem.ts";

/** What becomes of a part: waste, a piece of exactly its size, or a cut from edge to edge. */
export type CutPart =
  | { readonly kind: "waste" }
  | { readonly kind: "piece"; readonly piece: number; readonly turned: boolean }
  | {
      readonly kind: "cut";
      readonly cut: CutKind;
      /** Length of the first part across the cut: the fence setting. The rest begins one kerf further on. */
      readonly atMm: number;
      readonly first: CutPart;
      readonly rest: CutPart;
    };

/** How one sheet is cut, from its lower left corner inside the trim. */
export interface SheetPlan {
  /** Which of the problem's sheets. */
  readonly sheet: number;
  readonly part: CutPart;
}

/** A setting of the fence: the distance that it stands from the blade, for a kind of cut. */
export interface FenceSetting {
  readonly cut: CutKind;
  readonly atMm: number;
}

/** The different settings of the fence that the plans need: rips before cross cuts, each from short to long. */
export const fenceSettings = (plans: readonly SheetPlan[]): FenceSetting[] => {
  const found = new Map<string, FenceSetting>();
  const visit = (part: CutPart): void => {
    if (part.kind !== "cut") return;
    found.set(`${part.cut} ${part.atMm}`, { cut: part.cut, atMm: part.atMm });
    visit(part.first);
    visit(part.rest);
  };
  for (const { part } of plans) visit(part);
  const rank = (cut: CutKind): number => (cut === "rip" ? 0 : 1);
  return [...found.values()].sort((a, b) => rank(a.cut) - rank(b.cut) || a.atMm - b.atMm);
};
