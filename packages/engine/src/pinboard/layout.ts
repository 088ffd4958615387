import { type BoxMm, joinBoxes, type PointMm, turnDeg } from "@pinwright/kernel";
import { boxesNear, pairPrice, reachMm } from "./crowding.ts";
import type { Item } from "./item.ts";
import type { Limb } from "./limb.ts";
import { type Leg, type PlacedLimb, placeLimb } from "./placing.ts";
import type { BoardTree } from "./tree.ts";

/** What is laid first and never moved by the search: a trunk, the root alone, or pegs that are held. */
export interface Base {
  readonly nodeAt: ReadonlyMap<number, PointMm>;
  /** Direction in which the base runs at each of its nodes. */
  readonly directionAt: ReadonlyMap<number, number>;
  readonly lineOf: ReadonlyMap<number, readonly PointMm[]>;
  readonly items: readonly Item[];
  readonly box: BoxMm;
}

/** One way of laying a limb, with what a builder would give not to have it that way. */
export interface Candidate {
  readonly legs: readonly Leg[];
  readonly dislike: number;
  /** Direction on the board that a person chose for its start, in place of the first turn. */
  readonly fixedDeg?: number;
}

/** The room that there is: fixed in place when the base holds pegs, else only as large as this. */
export interface Bench {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Lower left corner when the base is fixed to the board; null when the layout may still be moved. */
  readonly origin: PointMm | null;
}

export interface LayoutTask {
  readonly tree: BoardTree;
  readonly base: Base;
  readonly limbs: readonly Limb[];
  readonly candidates: (limb: number) => readonly Candidate[];
  readonly bench: Bench;
  readonly handRoomMm: number;
}

const PRICE_OFF_BENCH_MM = 12;
const PRICE_OFF_BENCH = 600;
const PRICE_AREA_M2 = 40;
/** A limb whose own items cost more than this is tried elsewhere. */
const TROUBLE = 0.5;

interface Chosen {
  readonly candidate: Candidate;
  readonly placed: PlacedLimb;
}

/** A layout in work: limbs are laid one after the other, and then moved where that is cheaper. */
export class Layout {
  readonly #task: LayoutTask;
  readonly #reach: number;
  readonly #chosen: (Chosen | null)[];
  #steps = 0;

  constructor(task: LayoutTask) {
    this.#task = task;
    this.#reach = reachMm(task.handRoomMm);
    this.#chosen = task.limbs.map(() => null);
  }

  /** Candidates that have been weighed: the measure of work. */
  get steps(): number {
    return this.#steps;
  }

  get limbs(): readonly Limb[] {
    return this.#task.limbs;
  }

  get base(): Base {
    return this.#task.base;
  }

  placedLimb(limb: number): PlacedLimb | null {
    return this.#chosen[limb]?.placed ?? null;
  }

  /** Lays every limb in turn, the one with most hanging on it first, each where it costs least. */
  layAll(): void {
    const { limbs } = this.#task;
    const order = limbs
      .map((_, i) => i)
      .sort((p, q) => (limbs[q]?.massMm ?? 0) - (limbs[p]?.massMm ?? 0) || p - q);
    for (const limb of order) this.#choose(limb, Number.POSITIVE_INFINITY);
  }

  /** Lays limbs again that are in trouble, until none gains or `steps` candidates have been weighed in all. */
  improve(steps: number): void {
    let gained = true;
    while (gained && this.#steps < steps) {
      gained = false;
      for (const limb of this.#troubled()) {
        if (this.#steps >= steps) return;
        const now = this.#priceOf(this.#subtree(limb), Number.POSITIVE_INFINITY);
        if (this.#choose(limb, now - 1e-6)) gained = true;
      }
    }
  }

  /** Price of the whole layout. */
  total(): number {
    const all = new Map<number, Chosen>();
    this.#chosen.forEach((c, i) => {
      if (c !== null) all.set(i, c);
    });
    return this.#priceOf(all, Number.POSITIVE_INFINITY);
  }

  box(): BoxMm {
    return this.#boxWithout(new Map());
  }

  #troubled(): number[] {
    const trouble: { limb: number; price: number }[] = [];
    this.#chosen.forEach((chosen, limb) => {
      if (chosen === null) return;
      const price = this.#priceOf(new Map([[limb, chosen]]), Number.POSITIVE_INFINITY, false);
      if (price > TROUBLE) trouble.push({ limb, price });
    });
    return trouble.sort((p, q) => q.price - p.price || p.limb - q.limb).map((t) => t.limb);
  }

  /** Takes the cheapest way of laying a limb and what hangs on it, if one costs less than `under`. */
  #choose(limb: number, under: number): boolean {
    let best: Map<number, Chosen> | null = null;
    let least = under;
    const bends = (this.#task.limbs[limb]?.children ?? []).some((c) => this.#chosen[c] !== null);
    for (const candidate of this.#task.candidates(limb)) {
      for (const mirrored of bends ? [false, true] : [false]) {
        this.#steps++;
        const tried = new Map<number, Chosen>();
        this.#lay(limb, candidate, mirrored, tried);
        const price = this.#priceOf(tried, least);
        if (price >= least) continue;
        least = price;
        best = tried;
      }
    }
    if (best === null) return false;
    for (const [i, chosen] of best) this.#chosen[i] = chosen;
    return true;
  }

  #subtree(limb: number, found = new Map<number, Chosen>()): Map<number, Chosen> {
    const chosen = this.#chosen[limb] ?? null;
    if (chosen === null) return found;
    found.set(limb, chosen);
    for (const child of this.#task.limbs[limb]?.children ?? []) this.#subtree(child, found);
    return found;
  }

  /** Lays a limb, and again all that hangs on it, each turned and mirrored as the limb is. */
  #lay(limb: number, candidate: Candidate, flip: boolean, into: Map<number, Chosen>): void {
    const { tree, limbs, base } = this.#task;
    const own = limbs[limb];
    if (own === undefined) return;
    const hung = own.parent === null ? null : (into.get(own.parent) ?? this.#chosen[own.parent] ?? null);
    const at = hung === null ? base.nodeAt.get(own.start) : hung.placed.ends[own.parentStep];
    const direction =
      hung === null ? base.directionAt.get(own.start) : hung.placed.directions[own.parentStep];
    if (at === undefined) return;
    const placed = placeLimb(tree, own.steps, legsFrom(candidate, direction ?? 0), at, direction ?? 0);
    into.set(limb, { candidate, placed });
    for (const child of own.children) {
      const chosen = this.#chosen[child] ?? null;
      if (chosen === null) continue;
      this.#lay(child, flip ? mirrored(chosen.candidate) : chosen.candidate, flip, into);
    }
  }

  /** Price of some limbs among everything else that is laid; gives up when it exceeds `limit`. */
  #priceOf(part: ReadonlyMap<number, Chosen>, limit: number, withBox = true): number {
    const { base, handRoomMm } = this.#task;
    let price = 0;
    let box = base.box;
    for (const [, chosen] of part) {
      price += chosen.candidate.dislike;
      box = joinBoxes(box, chosen.placed.box);
    }
    if (withBox) {
      price += this.#boxPrice(joinBoxes(box, this.#boxWithout(part)));
      if (price >= limit) return price;
    }
    const done: Chosen[] = [];
    for (const [limb, chosen] of part) {
      const { items } = chosen.placed;
      price += this.#between(items, base.items, base.box, handRoomMm);
      for (const [i, other] of this.#chosen.entries()) {
        if (other === null || i === limb || part.has(i)) continue;
        if (!boxesNear(chosen.placed.box, other.placed.box, this.#reach)) continue;
        price += this.#between(items, other.placed.items, other.placed.box, handRoomMm);
        if (price >= limit) return price;
      }
      for (const other of done) {
        if (!boxesNear(chosen.placed.box, other.placed.box, this.#reach)) continue;
        price += this.#between(items, other.placed.items, other.placed.box, handRoomMm);
      }
      price += this.#within(items, handRoomMm);
      if (price >= limit) return price;
      done.push(chosen);
    }
    return price;
  }

  #between(items: readonly Item[], others: readonly Item[], box: BoxMm, handRoomMm: number): number {
    let price = 0;
    for (const p of items) {
      if (!boxesNear(p.box, box, this.#reach)) continue;
      for (const q of others) {
        if (boxesNear(p.box, q.box, this.#reach)) price += pairPrice(p, q, handRoomMm);
      }
    }
    return price;
  }

  #within(items: readonly Item[], handRoomMm: number): number {
    let price = 0;
    items.forEach((p, i) => {
      for (let j = 0; j < i; j++) {
        const q = items[j];
        if (q !== undefined && boxesNear(p.box, q.box, this.#reach)) price += pairPrice(p, q, handRoomMm);
      }
    });
    return price;
  }

  #boxWithout(part: ReadonlyMap<number, Chosen>): BoxMm {
    let box = this.#task.base.box;
    this.#chosen.forEach((chosen, limb) => {
      if (chosen !== null && !part.has(limb)) box = joinBoxes(box, chosen.placed.box);
    });
    return box;
  }

  #boxPrice(box: BoxMm): number {
    const { bench } = this.#task;
    const width = box.maxXMm - box.minXMm;
    const height = box.maxYMm - box.minYMm;
    const area = (width * height * PRICE_AREA_M2) / 1e6;
    const off =
      bench.origin === null
        ? Math.max(0, width - bench.widthMm) + Math.max(0, height - bench.heightMm)
        : Math.max(0, bench.origin.xMm - box.minXMm) +
          Math.max(0, bench.origin.yMm - box.minYMm) +
          Math.max(0, box.maxXMm - bench.origin.xMm - bench.widthMm) +
          Math.max(0, box.maxYMm - bench.origin.yMm - bench.heightMm);
    return area + (off > 0 ? PRICE_OFF_BENCH + PRICE_OFF_BENCH_MM * off : 0);
  }
}

const mirrored = (c: Candidate): Candidate => ({
  ...c,
  legs: c.legs.map((leg) => ({ ...leg, turnDeg: -leg.turnDeg })),
});

function legsFrom(c: Candidate, directionDeg: number): readonly Leg[] {
  const first = c.legs[0];
  if (c.fixedDeg === undefined || first === undefined) return c.legs;
  return [{ ...first, turnDeg: turnDeg(directionDeg, c.fixedDeg) }, ...c.legs.slice(1)];
}
