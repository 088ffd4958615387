import { PlaceFinder, piecesIn, put, take } from "./boxes.ts";
import { type Layout, OpenSheets, type SearchProblem } from "./layout.ts";
import { settingsIn } from "./settings.ts";

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
  private readonly sheets: OpenSheets;
  private left: number[] = [];

  constructor(problem: SearchProblem, random: () => number) {
    this.problem = problem;
    this.random = random;
    this.finder = new PlaceFinder(problem.depth, random);
    this.sheets = new OpenSheets(problem, random);
  }

  get steps(): number {
    return this.finder.steps;
  }

  /** All pieces, large ones first, onto as many sheets as they take. */
  start(): Layout {
    this.left = this.problem.pieces.flatMap(({ count }, piece) => new Array<number>(count).fill(piece));
    this.finder.blink = 0;
    this.recreate(Number.POSITIVE_INFINITY, 1);
    this.finder.blink = BLINK;
    this.sheets.begin();
    return this.layout();
  }

  /** Goes on from the present layout within a limit of cost; stops when all pieces have a place or steps run out. */
  search(limit: number, steps: number): Layout {
    while (this.sheets.cost > limit) this.left.push(...this.sheets.drop((piece) => this.areaOf(piece)));
    const objective = (): number => this.outside();
    return this.improve({ limit, steps, objective, least: 0, warm: this.meanValue() * WARMTH });
  }

  /** Goes on from a layout without pieces outside for one of the same cost with fewer settings of the fence. */
  fewerSettings(layout: Layout, steps: number): Layout {
    this.sheets.load(layout);
    this.left = [];
    const objective = (): number =>
      this.left.length > 0 ? Number.POSITIVE_INFINITY : settingsIn(this.sheets.all, this.problem.sheets);
    return this.improve({ limit: layout.cost, steps, objective, least: 1, warm: 1 });
  }

  private improve({ limit, steps, objective, least, warm }: Goal): Layout {
    const end = this.steps + steps;
    this.sheets.begin();
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
      const { left } = this;
      this.left = [...left];
      this.ruin();
      this.recreate(limit, this.below(ORDERS));
      const now = objective();
      if (now <= value - heat * Math.log(1 - this.random())) {
        value = now;
        this.sheets.begin();
        if (now < bestValue) {
          bestValue = now;
          best = this.layout();
        }
      } else {
        this.sheets.undo();
        this.left = left;
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
    return this.sheets.layout(this.left);
  }

  private below(n: number): number {
    return Math.floor(this.random() * n);
  }

  private ruin(): void {
    const n = this.sheets.all.length;
    if (n === 0) return;
    const whole = this.random() < EMPTYING;
    const times = 1 + this.below(Math.min(MOST_SHEETS, n));
    for (let k = 0; k < times; k++) {
      const i = this.below(n);
      if (whole) this.left.push(...this.sheets.empty(i));
      else this.thin(i);
    }
  }

  /** Takes some boxes out of a sheet, whatever is in them. */
  private thin(i: number): void {
    this.sheets.keep(i);
    const root = this.sheets.rootOf(i);
    if (root === undefined) return;
    const times = 1 + this.below(MOST_BOXES);
    for (let k = 0; k < times && root.children.length > 0; k++) {
      let box = root;
      do {
        box = box.children[this.below(box.children.length)] ?? box;
      } while (box.piece < 0 && this.random() < INWARD);
      this.left.push(...piecesIn(box));
      take(box);
    }
    if (root.children.length === 0) this.sheets.empty(i);
    else this.sheets.refresh(i);
  }

  /** Puts the pieces outside back where they fit best, in one of several orders; opens sheets within the limit. */
  private recreate(limit: number, order: number): void {
    const queue = this.left
      .map((piece) => ({ piece, key: this.keyOf(piece, order) }))
      .sort((a, b) => b.key - a.key);
    this.left = [];
    for (const { piece } of queue) {
      if (!this.insert(piece, limit)) this.left.push(piece);
    }
  }

  private keyOf(piece: number, order: number): number {
    const size = this.problem.pieces[piece];
    if (size === undefined || order === 0) return this.random();
    if (order === 1) return size.w * size.h;
    const jitter = this.random() * JITTER;
    if (order === 2) return Math.max(size.w, size.h) + jitter;
    return (order === 3 ? size.h : size.w) + jitter;
  }

  private insert(piece: number, limit: number): boolean {
    const size = this.problem.pieces[piece];
    if (size === undefined) return false;
    const { finder, sheets } = this;
    // A piece without a place to look at is a step too, so that every search ends.
    finder.steps++;
    finder.reset();
    for (let i = 0; i < sheets.all.length; i++) this.look(i, size);
    if (finder.best.box === null) {
      const opened = sheets.open(size, limit);
      if (opened >= 0) this.look(opened, size);
    }
    const { box, sheet, turned } = finder.best;
    if (box === null) return false;
    sheets.keep(sheet);
    put(box, piece, turned, turned ? size.h : size.w, turned ? size.w : size.h);
    sheets.refresh(sheet);
    return true;
  }

  private look(i: number, size: SearchProblem["pieces"][number]): void {
    const root = this.sheets.rootOf(i);
    if (root === undefined) return;
    this.finder.look(root, i, size.w, size.h, false);
    if (size.mayTurn && size.w !== size.h) this.finder.look(root, i, size.h, size.w, true);
  }
}
