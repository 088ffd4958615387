import { Box, copyBox, type Depth, type Direction, piecesIn, refresh } from "./boxes.ts";
import type { Size } from "./problem.ts";

/** What the search for few sheets is given. */
export interface SearchProblem {
  readonly pieces: readonly (Size & {
    readonly count: number;
    readonly mayTurn: boolean;
    /** What leaving one outside costs; its area, unless given. */
    readonly value?: number;
  })[];
  readonly sheets: readonly (Size & { readonly count: number; readonly cost: number })[];
  readonly depth: Depth;
  /** Direction in which the first stage divides a sheet; null: either. */
  readonly first: Direction | null;
}

/** A sheet and what is cut from it. */
export interface Filled {
  readonly sheet: number;
  readonly root: Box;
}

/** Sheets with what is cut from them, and the types of the pieces that found no place. */
export interface Layout {
  readonly filled: readonly Filled[];
  readonly cost: number;
  readonly left: readonly number[];
}

/** Stands for a sheet given up within a round: nothing fits on it. */
const GIVEN_UP = -1;

/** The sheets in use, changed in rounds that can be taken back. */
export class OpenSheets {
  cost = 0;
  private readonly problem: SearchProblem;
  private readonly random: () => number;
  private filled: Filled[] = [];
  private readonly used: number[];
  private readonly several: boolean;
  /** Sheets changed in this round, as they were. */
  private readonly before = new Map<number, Filled>();
  private lengthBefore = 0;
  private costBefore = 0;

  constructor(problem: SearchProblem, random: () => number) {
    this.problem = problem;
    this.random = random;
    this.used = problem.sheets.map(() => 0);
    this.several = problem.sheets.length > 1;
  }

  get all(): readonly Filled[] {
    return this.filled;
  }

  rootOf(i: number): Box | undefined {
    return this.filled[i]?.root;
  }

  /** Takes over the sheets of a layout. */
  load(layout: Layout): void {
    this.filled = layout.filled.map(({ sheet, root }) => ({ sheet, root: copyBox(root) }));
    this.cost = layout.cost;
    this.recount();
    this.begin();
  }

  /** The sheets that hold pieces. */
  layout(left: readonly number[]): Layout {
    const filled = this.filled.flatMap(({ sheet, root }) =>
      root.children.length === 0 ? [] : [{ sheet, root: copyBox(root) }],
    );
    const cost = filled.reduce((sum, { sheet }) => sum + this.costOf(sheet), 0);
    return { filled, cost, left: [...left] };
  }

  /** Begins a round: what was changed before stays. */
  begin(): void {
    this.before.clear();
    if (this.several) {
      this.filled = this.filled.filter(({ sheet }) => sheet !== GIVEN_UP);
      // Anew, so that roundings of many sums don't pile up.
      this.cost = this.filled.reduce((sum, { sheet }) => sum + this.costOf(sheet), 0);
    }
    this.lengthBefore = this.filled.length;
    this.costBefore = this.cost;
  }

  /** Takes back what was changed since the round began. */
  undo(): void {
    this.filled.length = this.lengthBefore;
    for (const [i, was] of this.before) if (i < this.lengthBefore) this.filled[i] = was;
    this.cost = this.costBefore;
    this.before.clear();
    this.recount();
  }

  /** To be called before a sheet's boxes are changed. */
  keep(i: number): void {
    const now = this.filled[i];
    if (now === undefined || this.before.has(i)) return;
    this.before.set(i, { sheet: now.sheet, root: copyBox(now.root) });
  }

  /** To be called after a sheet's boxes were changed. */
  refresh(i: number): void {
    const filled = this.filled[i];
    const size = filled === undefined ? undefined : this.problem.sheets[filled.sheet];
    if (filled !== undefined && size !== undefined) refresh(filled.root, size.w, size.h);
  }

  /** Clears a sheet, or gives it up for now when there are several sizes; the pieces that were on it. */
  empty(i: number): number[] {
    this.keep(i);
    const filled = this.filled[i];
    if (filled === undefined) return [];
    const givenUp = this.several && filled.sheet !== GIVEN_UP && this.random() < 0.5;
    if (givenUp) {
      this.count(filled.sheet, -1);
      this.cost -= this.costOf(filled.sheet);
    }
    this.filled[i] = { sheet: givenUp ? GIVEN_UP : filled.sheet, root: this.emptyRoot() };
    this.refresh(i);
    return piecesIn(filled.root);
  }

  /** Gives up the sheet on which least lies for its cost, for good; the pieces that were on it. */
  drop(worthOf: (piece: number) => number): number[] {
    const worth = this.filled.map(
      ({ sheet, root }) =>
        piecesIn(root).reduce((sum, piece) => sum + worthOf(piece), 0) / this.costOf(sheet),
    );
    const [gone] = this.filled.splice(worth.indexOf(Math.min(...worth)), 1);
    if (gone === undefined) return [];
    this.count(gone.sheet, -1);
    this.cost -= this.costOf(gone.sheet);
    this.begin();
    return piecesIn(gone.root);
  }

  /** Opens a sheet that a piece fits on within a limit of cost: cheap for its area, or any. Its place, or −1. */
  open(piece: Size & { readonly mayTurn: boolean }, limit: number): number {
    const options = this.problem.sheets.flatMap(({ w, h, count, cost }, sheet) => {
      const fits = (piece.w <= w && piece.h <= h) || (piece.mayTurn && piece.h <= w && piece.w <= h);
      const allowed = this.cost + cost <= limit && (this.used[sheet] ?? 0) < count;
      return fits && allowed ? [{ sheet, dear: cost / (w * h) }] : [];
    });
    options.sort((a, b) => a.dear - b.dear || a.sheet - b.sheet);
    const chosen = options[this.random() < 0.5 ? 0 : Math.floor(this.random() * options.length)];
    if (chosen === undefined) return -1;
    this.filled.push({ sheet: chosen.sheet, root: this.emptyRoot() });
    this.count(chosen.sheet, 1);
    this.cost += this.costOf(chosen.sheet);
    this.refresh(this.filled.length - 1);
    return this.filled.length - 1;
  }

  private recount(): void {
    this.used.fill(0);
    for (const { sheet } of this.filled) this.count(sheet, 1);
  }

  private emptyRoot(): Box {
    return new Box(this.problem.first ?? (this.random() < 0.5 ? 0 : 1));
  }

  private costOf(sheet: number): number {
    return this.problem.sheets[sheet]?.cost ?? 0;
  }

  private count(sheet: number, by: number): void {
    if (sheet !== GIVEN_UP) this.used[sheet] = (this.used[sheet] ?? 0) + by;
  }
}
