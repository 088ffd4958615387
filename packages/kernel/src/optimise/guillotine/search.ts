import {
  Box,
  copyBox,
  type Depth,
  type Direction,
  PlaceFinder,
  piecesIn,
  put,
  refresh,
  take,
} from "./boxes.ts";
import type { Size } from "./problem.ts";
import { settingsIn } from "./settings.ts";

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

/** Share of places passed over, so that the same pieces come to lie otherwise. */
const BLINK = 0.1;
/** Most sheets that one round ruins, and most boxes that it takes from each. */
const MOST_SHEETS = 3;
const MOST_BOXES = 3;
/** Share of rounds that empty their sheets. */
const EMPTYING = 0.3;
/** How often a box taken out is one within a box. */
const INWARD = 0.6;
/** Worsening accepted at first, as a share of the mean piece; it cools down over a round, each twice as long. */
const WARMTH = 0.1;
const FIRST_ROUND = 2_000_000;
const ORDERS = 5;
/** Parts equal keys of an order by chance. */
const JITTER = 0.001;

/** What a search goes for. */
interface Goal {
  readonly limit: number;
  readonly steps: number;
  readonly objective: () => number;
  /** Value that can't be bettered. */
  readonly least: number;
  readonly warm: number;
}

/**
 * Ruin and recreate (G. Schrimpf et al., Journal of Computational Physics 159 (2000) 139–171), driven by a goal as by
 * J. Gardeyn and T. Wauters (EJOR 301 (2022) 432–444): sheets may cost no more than a limit, pieces that find no place
 * stay outside, and their area is made small by taking some pieces out and putting them back in another order.
 */
export class Cutter {
  private readonly problem: SearchProblem;
  private readonly random: () => number;
  private readonly finder: PlaceFinder;
  private filled: { sheet: number; root: Box }[] = [];
  private left: number[] = [];
  private cost = 0;
  /** Copies of the sheets changed in this round, as they were. */
  private before: Map<number, Filled> = new Map();
  private readonly used: number[];

  constructor(problem: SearchProblem, random: () => number) {
    this.problem = problem;
    this.random = random;
    this.finder = new PlaceFinder(problem.depth, random);
    this.used = problem.sheets.map(() => 0);
  }

  get steps(): number {
    return this.finder.steps;
  }

  /** All pieces, large ones first, onto as many sheets as they take. */
  start(): Layout {
    this.left = this.problem.pieces.flatMap(({ count }, piece) => new Array<number>(count).fill(piece));
    this.recreate(Number.POSITIVE_INFINITY, 1);
    return this.layout();
  }

  /** Goes on from the present layout within a limit of cost; stops when all pieces have a place or steps run out. */
  search(limit: number, steps: number): Layout {
    while (this.cost > limit) this.drop();
    const objective = (): number => this.outside();
    return this.improve({ limit, steps, objective, least: 0, warm: this.meanValue() * WARMTH });
  }

  /** Goes on from a layout without pieces outside for one of the same cost with fewer settings of the fence. */
  fewerSettings(layout: Layout, steps: number): Layout {
    this.filled = layout.filled.map(({ sheet, root }) => ({ sheet, root: copyBox(root) }));
    this.used.fill(0);
    for (const { sheet } of this.filled) this.used[sheet] = (this.used[sheet] ?? 0) + 1;
    this.left = [];
    this.cost = layout.cost;
    const objective = (): number =>
      this.left.length > 0 ? Number.POSITIVE_INFINITY : settingsIn(this.filled, this.problem.sheets);
    return this.improve({ limit: layout.cost, steps, objective, least: 1, warm: 1 });
  }

  private improve({ limit, steps, objective, least, warm }: Goal): Layout {
    const end = this.steps + steps;
    this.before.clear();
    let value = objective();
    let best = this.layout();
    let bestValue = value;
    let round = FIRST_ROUND;
    let roundEnd = this.steps + round;
    while (bestValue > least && this.steps < end) {
      if (this.steps >= roundEnd) {
        round *= 2;
        roundEnd += round;
      }
      const heat = warm * ((roundEnd - this.steps) / round) ** 2;
      const { left, cost } = this;
      const sheets = this.filled.length;
      this.left = [...left];
      this.ruin();
      this.recreate(limit, this.below(ORDERS));
      const now = objective();
      if (now <= value - heat * Math.log(1 - this.random())) {
        value = now;
        this.before.clear();
        if (now < bestValue) {
          bestValue = now;
          best = this.layout();
        }
      } else {
        this.undo(sheets);
        this.left = left;
        this.cost = cost;
      }
    }
    return best;
  }

  private meanValue(): number {
    let value = 0;
    let n = 0;
    this.problem.pieces.forEach(({ count }, piece) => {
      value += this.valueOf(piece) * count;
      n += count;
    });
    return n === 0 ? 0 : value / n;
  }

  private outside(): number {
    return this.left.reduce((sum, piece) => sum + this.valueOf(piece), 0);
  }

  private valueOf(piece: number): number {
    return this.problem.pieces[piece]?.value ?? this.areaOf(piece);
  }

  private areaOf(piece: number): number {
    const size = this.problem.pieces[piece];
    return size === undefined ? 0 : size.w * size.h;
  }

  private layout(): Layout {
    const filled = this.filled.flatMap(({ sheet, root }) =>
      root.children.length === 0 ? [] : [{ sheet, root: copyBox(root) }],
    );
    const cost = filled.reduce((sum, { sheet }) => sum + (this.problem.sheets[sheet]?.cost ?? 0), 0);
    return { filled, cost, left: [...this.left] };
  }

  /** Takes the sheet with the least on it away. */
  private drop(): void {
    const content = this.filled.map(({ sheet, root }) => {
      const area = piecesIn(root).reduce((sum, piece) => sum + this.areaOf(piece), 0);
      return area / (this.problem.sheets[sheet]?.cost ?? 1);
    });
    const at = content.indexOf(Math.min(...content));
    const [gone] = this.filled.splice(at, 1);
    if (gone === undefined) return;
    this.left.push(...piecesIn(gone.root));
    this.close(gone.sheet);
  }

  private close(sheet: number): void {
    this.cost -= this.problem.sheets[sheet]?.cost ?? 0;
    this.used[sheet] = (this.used[sheet] ?? 0) - 1;
  }

  private undo(length: number): void {
    for (const { sheet } of this.filled) this.used[sheet] = (this.used[sheet] ?? 0) - 1;
    this.filled.length = length;
    for (const [i, { sheet, root }] of this.before) {
      if (i < length) this.filled[i] = { sheet, root };
    }
    for (const { sheet } of this.filled) this.used[sheet] = (this.used[sheet] ?? 0) + 1;
    this.before.clear();
  }

  private keep(i: number): void {
    const now = this.filled[i];
    if (now === undefined || this.before.has(i)) return;
    this.before.set(i, { sheet: now.sheet, root: copyBox(now.root) });
  }

  private refresh(i: number): void {
    const filled = this.filled[i];
    const size = filled === undefined ? undefined : this.problem.sheets[filled.sheet];
    if (filled !== undefined && size !== undefined) refresh(filled.root, size.w, size.h);
  }

  private below(n: number): number {
    return Math.floor(this.random() * n);
  }

  private ruin(): void {
    const n = this.filled.length;
    if (n === 0) return;
    const whole = this.random() < EMPTYING;
    const sheets = 1 + this.below(Math.min(MOST_SHEETS, n));
    for (let k = 0; k < sheets; k++) {
      const i = this.below(n);
      if (whole) this.empty(i);
      else this.thin(i);
    }
  }

  private empty(i: number): void {
    this.keep(i);
    const filled = this.filled[i];
    if (filled === undefined) return;
    this.left.push(...piecesIn(filled.root));
    const { first } = this.problem;
    filled.root = new Box(first ?? (this.random() < 0.5 ? 0 : 1));
    this.refresh(i);
  }

  /** Takes some boxes out of a sheet, whatever is in them. */
  private thin(i: number): void {
    this.keep(i);
    const filled = this.filled[i];
    if (filled === undefined) return;
    const times = 1 + this.below(MOST_BOXES);
    for (let k = 0; k < times; k++) {
      if (filled.root.children.length === 0) break;
      let box = filled.root;
      do {
        box = box.children[this.below(box.children.length)] ?? box;
      } while (box.piece < 0 && this.random() < INWARD);
      this.left.push(...piecesIn(box));
      take(box);
    }
    if (filled.root.children.length === 0) this.empty(i);
    else this.refresh(i);
  }

  /** Puts the pieces outside back where they fit best, in one of several orders; opens sheets within the limit. */
  private recreate(limit: number, order: number): void {
    const { pieces } = this.problem;
    const key = (piece: number): number => {
      const size = pieces[piece];
      if (size === undefined) return 0;
      if (order === 1) return size.w * size.h;
      if (order === 2) return Math.max(size.w, size.h) + this.random() * JITTER;
      if (order === 3) return size.h + this.random() * JITTER;
      if (order === 4) return size.w + this.random() * JITTER;
      return this.random();
    };
    const queue = this.left.map((piece) => ({ piece, key: key(piece) })).sort((a, b) => b.key - a.key);
    this.left = [];
    this.finder.blink = limit === Number.POSITIVE_INFINITY ? 0 : BLINK;
    for (const { piece } of queue) {
      if (!this.insert(piece, limit)) this.left.push(piece);
    }
  }

  private insert(piece: number, limit: number): boolean {
    const size = this.problem.pieces[piece];
    if (size === undefined) return false;
    const { finder } = this;
    finder.reset();
    for (let i = 0; i < this.filled.length; i++) this.look(i, size);
    if (finder.best.box === null) {
      const opened = this.open(size, limit);
      if (opened < 0) return false;
      this.look(opened, size);
    }
    const { box, sheet, turned } = finder.best;
    if (box === null) return false;
    this.keep(sheet);
    put(box, piece, turned, turned ? size.h : size.w, turned ? size.w : size.h);
    this.refresh(sheet);
    return true;
  }

  private look(i: number, size: Size & { readonly mayTurn: boolean }): void {
    const root = this.filled[i]?.root;
    if (root === undefined) return;
    this.finder.look(root, i, size.w, size.h, false);
    if (size.mayTurn && size.w !== size.h) this.finder.look(root, i, size.h, size.w, true);
  }

  private open(size: Size & { readonly mayTurn: boolean }, limit: number): number {
    const options = this.problem.sheets.flatMap(({ w, h, count, cost }, sheet) => {
      const fits = (size.w <= w && size.h <= h) || (size.mayTurn && size.h <= w && size.w <= h);
      const affordable = this.cost + cost <= limit && (this.used[sheet] ?? 0) < count;
      return fits && affordable ? [{ sheet, dear: cost / (w * h) }] : [];
    });
    options.sort((a, b) => a.dear - b.dear);
    const choice = options[this.random() < 0.5 ? 0 : this.below(options.length)];
    if (choice === undefined) return -1;
    const { first } = this.problem;
    this.filled.push({ sheet: choice.sheet, root: new Box(first ?? (this.random() < 0.5 ? 0 : 1)) });
    this.used[choice.sheet] = (this.used[choice.sheet] ?? 0) + 1;
    this.cost += this.problem.sheets[choice.sheet]?.cost ?? 0;
    this.refresh(this.filled.length - 1);
    return this.filled.length - 1;
  }
}
