import type { CutPart, SheetPlan } from "./plan.ts";
import { type CutKind, type CuttingProblem, insideTrim, micrometres, type Size } from "./problem.ts";

/** A rule that a plan breaks; `plan` is the place of the sheet among the plans, `sheet` its size's in the problem. */
export type CutFault =
  | { readonly kind: "count"; readonly piece: number; readonly cut: number; readonly wanted: number }
  | { readonly kind: "sheets"; readonly sheet: number; readonly used: number; readonly available: number }
  | { readonly kind: "unknown-sheet"; readonly plan: number; readonly sheet: number }
  | { readonly kind: "unknown-piece"; readonly plan: number; readonly piece: number }
  | { readonly kind: "size"; readonly plan: number; readonly piece: number; readonly partUm: Size }
  | { readonly kind: "turned"; readonly plan: number; readonly piece: number }
  | { readonly kind: "outside"; readonly plan: number; readonly cut: CutKind; readonly atMm: number }
  | { readonly kind: "stage"; readonly plan: number; readonly cut: CutKind; readonly stage: number };

/**
 * What cutting plans break of a problem; nothing when each piece comes out once for each copy wanted. Written apart
 * from the search, from the definition alone: it saws every sheet, takes the kerf off at every cut and measures what
 * is left, to 1 µm.
 *
 * A kerf that reaches past the far edge leaves no second part: such a cut only trims. Cuts of one direction that
 * follow each other within a part are one stage.
 */
export const cutFaults = (plans: readonly SheetPlan[], problem: CuttingProblem): CutFault[] => {
  const faults: CutFault[] = [];
  const cut = problem.pieces.map(() => 0);
  const used = problem.sheets.map(() => 0);
  plans.forEach(({ sheet, part }, plan) => {
    const stock = problem.sheets[sheet];
    if (stock === undefined) {
      faults.push({ kind: "unknown-sheet", plan, sheet });
      return;
    }
    used[sheet] = (used[sheet] ?? 0) + 1;
    const { w, h } = insideTrim(stock);
    new Saw(problem, plan, cut, faults).part(part, w, h, 0, null);
  });
  problem.pieces.forEach(({ count }, piece) => {
    const got = cut[piece] ?? 0;
    if (got !== count) faults.push({ kind: "count", piece, cut: got, wanted: count });
  });
  problem.sheets.forEach(({ count }, sheet) => {
    const n = used[sheet] ?? 0;
    if (count !== null && n > count) faults.push({ kind: "sheets", sheet, used: n, available: count });
  });
  return faults;
};

class Saw {
  private readonly problem: CuttingProblem;
  private readonly plan: number;
  private readonly cut: number[];
  private readonly faults: CutFault[];

  constructor(problem: CuttingProblem, plan: number, cut: number[], faults: CutFault[]) {
    this.problem = problem;
    this.plan = plan;
    this.cut = cut;
    this.faults = faults;
  }

  /** Takes a part of so many µm that came out of the given stage, whose cuts run in the given direction. */
  part(part: CutPart, w: number, h: number, stage: number, along: CutKind | null): void {
    if (part.kind === "piece") this.piece(part.piece, part.turned, w, h);
    if (part.kind !== "cut") return;
    const next = this.stageOf(part.cut, stage, along);
    if (!this.stageAllowed(part, next)) {
      this.faults.push({ kind: "stage", plan: this.plan, cut: part.cut, stage: next });
    }
    const length = part.cut === "rip" ? h : w;
    const at = micrometres(part.atMm);
    if (!(at > 0 && at < length)) {
      this.faults.push({ kind: "outside", plan: this.plan, cut: part.cut, atMm: part.atMm });
      return;
    }
    const rest = Math.max(0, length - at - micrometres(this.problem.kerfMm));
    if (part.cut === "rip") {
      this.part(part.first, w, at, next, part.cut);
      this.part(part.rest, w, rest, next, part.cut);
    } else {
      this.part(part.first, at, h, next, part.cut);
      this.part(part.rest, rest, h, next, part.cut);
    }
  }

  private stageOf(cut: CutKind, stage: number, along: CutKind | null): number {
    if (along !== null) return along === cut ? stage : stage + 1;
    const { firstCut } = this.problem;
    return firstCut === "either" || firstCut === cut ? 1 : 2;
  }

  private stageAllowed(part: CutPart & { readonly kind: "cut" }, stage: number): boolean {
    const { stages, lastTrim } = this.problem;
    if (stages === null || stage <= stages) return true;
    const kinds = [part.first.kind, part.rest.kind];
    return lastTrim && stage === stages + 1 && kinds.includes("waste") && !kinds.includes("cut");
  }

  private piece(piece: number, turned: boolean, w: number, h: number): void {
    const wanted = this.problem.pieces[piece];
    if (wanted === undefined) {
      this.faults.push({ kind: "unknown-piece", plan: this.plan, piece });
      return;
    }
    this.cut[piece] = (this.cut[piece] ?? 0) + 1;
    if (turned && !wanted.mayTurn) this.faults.push({ kind: "turned", plan: this.plan, piece });
    const [width, height] = turned ? [wanted.heightMm, wanted.widthMm] : [wanted.widthMm, wanted.heightMm];
    if (micrometres(width) !== w || micrometres(height) !== h) {
      this.faults.push({ kind: "size", plan: this.plan, piece, partUm: { w, h } });
    }
  }
}
