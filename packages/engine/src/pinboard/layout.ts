import { type BoxMm, growBox, joinBoxes, type PointMm, turnDeg } from "@pinwright/kernel";
import { boxesNear, PRICE } from "./crowding.ts";
import type { Item } from "./item.ts";
import type { Limb } from "./limb.ts";
import { type Leg, type PlacedLimb, placeLimb } from "./placing.ts";
import { benchPrice, Pricing, type Still } from "./pricing.ts";
import type { Base, Candidate, LayoutTask } from "./task.ts";

/** A limb whose own items cost more than this is tried elsewhere. */
const TROUBLE = 0.5;
/** How many ways of laying a limb are tried by taking others up for it, and how many at a time. */
const EJECT_CANDIDATES = 14;
const EJECT_LIMBS = 4;
/** A change has to gain this much to be worth the work of looking for the next. */
const GAIN = 1;

interface Chosen {
  readonly limb: number;
  readonly candidate: Candidate;
  readonly placed: PlacedLimb;
}

/** One way of laying a limb, while it is being weighed. */
interface Trial {
  readonly still: Still;
  readonly limit: number;
  price: number;
  box: BoxMm;
  readonly laid: Chosen[];
}

/** A layout in work: limbs are laid one after the other, and then moved where that is cheaper. */
export class Layout {
  readonly #task: LayoutTask;
  readonly #pricing: Pricing;
  readonly #chosen: (Chosen | null)[];
  /** Boxes that were given up or taken, in order: what a limb was tried against is known by their count. */
  readonly #moves: BoxMm[] = [];
  readonly #triedAt: number[];
  #steps = 0;

  constructor(task: LayoutTask) {
    this.#task = task;
    this.#pricing = new Pricing(task.handRoomMm);
    this.#chosen = task.limbs.map(() => null);
    this.#triedAt = task.limbs.map(() => 0);
  }

  /** Limbs that have been laid to weigh them: the measure of work. */
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
    this.#layMissing();
  }

  /** Lays limbs again that are in trouble, until none gains or `steps` are spent. */
  improve(steps: number): void {
    const end = this.#steps + steps;
    let gained = true;
    while (gained && this.#steps < end) {
      gained = false;
      for (const limb of this.#troubled()) {
        if (this.#steps >= end) return;
        if (this.#choose(limb, this.#subtree(limb, []))) gained = true;
      }
    }
  }

  /**
   * Makes room for limbs whose trouble costs at least `price`: each is laid as it would best like, limbs that are
   * then in its way are taken up and laid again, and that is kept if the whole gains. Ends when none gains or
   * `steps` are spent.
   */
  makeRoom(price: number, steps: number): void {
    const end = this.#steps + steps;
    let gained = true;
    while (gained && this.#steps < end) {
      gained = false;
      this.#triedAt.fill(0);
      for (const limb of this.#troubled(price)) {
        if (this.#steps >= end) return;
        if (this.#makeRoomFor(limb, end)) gained = true;
      }
    }
  }

  #makeRoomFor(limb: number, end: number): boolean {
    const before = this.#chosen.slice();
    const least = this.total() - GAIN;
    for (const candidate of this.#task.candidates(limb).slice(0, EJECT_CANDIDATES)) {
      if (this.#steps >= end) return false;
      const own = this.#subtree(limb, []);
      const bare = this.#pricing.still(this.#task.base.items, this.#task.base.box);
      const trial: Trial = {
        still: bare,
        limit: Number.POSITIVE_INFINITY,
        price: 0,
        box: bare.box,
        laid: [],
      };
      this.#lay(limb, candidate, false, trial);
      const blockers = this.#blockers(limb, own, trial.laid);
      if (blockers === null) continue;
      for (const c of blockers.flatMap((b) => this.#subtree(b, []))) this.#chosen[c.limb] = null;
      for (const c of trial.laid) this.#chosen[c.limb] = c;
      this.#layMissing();
      if (this.total() < least) {
        this.#triedAt.fill(0);
        return true;
      }
      before.forEach((c, i) => {
        this.#chosen[i] = c;
      });
    }
    return false;
  }

  /** Limbs that a trial crosses or overlaps; null when it is in the way of what cannot be taken up for it. */
  #blockers(limb: number, own: readonly Chosen[], laid: readonly Chosen[]): number[] | null {
    const fixed = new Set<number | null>(own.map((c) => c.limb));
    for (
      let up = this.#task.limbs[limb]?.parent ?? null;
      up !== null;
      up = this.#task.limbs[up]?.parent ?? null
    ) {
      fixed.add(up);
    }
    const found: number[] = [];
    for (const other of this.#chosen) {
      if (other === null || (fixed.has(other.limb) && own.some((c) => c.limb === other.limb))) continue;
      const price = laid.reduce(
        (sum, c) => sum + this.#pricing.between(c.placed.items, other.placed.items),
        0,
      );
      if (price < PRICE.room) continue;
      if (fixed.has(other.limb)) {
        if (price >= PRICE.overlap) return null;
        continue;
      }
      found.push(other.limb);
      if (found.length > EJECT_LIMBS) return null;
    }
    return found;
  }

  /** Lays every limb that is not laid and whose parent is, the one with most hanging on it first. */
  #layMissing(): void {
    const { limbs } = this.#task;
    const mass = (limb: number): number => limbs[limb]?.massMm ?? 0;
    const missing = limbs.map((_, i) => i).filter((i) => this.#chosen[i] === null);
    for (const limb of missing.sort((p, q) => mass(q) - mass(p) || p - q)) this.#choose(limb, null);
  }

  /** Price of the whole layout. */
  total(): number {
    const all = this.#chosen.flatMap((c) => (c === null ? [] : [c]));
    const { base } = this.#task;
    return this.#priceOf(all, this.#pricing.still(base.items, base.box));
  }

  /** Limbs that cost something where they are, the dearest first, unless nothing near them moved since. */
  #troubled(least = TROUBLE): number[] {
    const trouble: { limb: number; price: number }[] = [];
    for (const chosen of this.#chosen) {
      if (chosen === null || !this.#worthTrying(chosen)) continue;
      const still = this.#still([chosen], chosen.placed.box);
      const price =
        chosen.candidate.dislike + this.#pricing.beside(still, chosen.placed.items, Number.POSITIVE_INFINITY);
      if (price >= least) trouble.push({ limb: chosen.limb, price });
    }
    return trouble.sort((p, q) => q.price - p.price || p.limb - q.limb).map((t) => t.limb);
  }

  #worthTrying(chosen: Chosen): boolean {
    const tried = this.#triedAt[chosen.limb] ?? 0;
    if (tried === 0) return true;
    const box = this.#within(chosen.limb);
    for (let i = tried - 1; i < this.#moves.length; i++) {
      const moved = this.#moves[i];
      if (moved !== undefined && boxesNear(box, moved, this.#pricing.reachMm)) return true;
    }
    return false;
  }

  /**
   * Takes the cheapest way of laying a limb and what hangs on it. `now` is how they lie, or null when the limb
   * is not laid yet; nothing is changed unless something is gained.
   */
  #choose(limb: number, now: readonly Chosen[] | null): boolean {
    const still = this.#still(now ?? [], this.#within(limb));
    let least = now === null ? Number.POSITIVE_INFINITY : this.#priceOf(now, still) - GAIN;
    let best: readonly Chosen[] | null = null;
    const flips = (now?.length ?? 0) > 1 ? [false, true] : [false];
    const floor = benchPrice(this.#task.bench, still.box);
    for (const candidate of this.#task.candidates(limb)) {
      // Candidates come cheapest first, and no price is below its dislike and that of the bench as it is.
      if (candidate.dislike + floor >= least) break;
      for (const flip of flips) {
        const trial: Trial = { still, limit: least, price: 0, box: still.box, laid: [] };
        if (!this.#lay(limb, candidate, flip, trial)) continue;
        least = trial.price + benchPrice(this.#task.bench, trial.box);
        best = trial.laid;
      }
    }
    if (now !== null) this.#triedAt[limb] = this.#moves.length + 1;
    if (best === null) return false;
    for (const chosen of now ?? []) this.#moves.push(chosen.placed.box);
    for (const chosen of best) {
      this.#chosen[chosen.limb] = chosen;
      if (now !== null) this.#moves.push(chosen.placed.box);
    }
    return true;
  }

  #subtree(limb: number, found: Chosen[]): Chosen[] {
    const chosen = this.#chosen[limb] ?? null;
    if (chosen === null) return found;
    found.push(chosen);
    for (const child of this.#task.limbs[limb]?.children ?? []) this.#subtree(child, found);
    return found;
  }

  /** Where a limb starts, and how the line that it hangs on runs there. */
  #hook(limb: Limb, laid: readonly Chosen[]): { at: PointMm; directionDeg: number } {
    if (limb.parent === null) {
      const { nodeAt, directionAt } = this.#task.base;
      return { at: nodeAt.get(limb.start) ?? NOWHERE, directionDeg: directionAt.get(limb.start) ?? 0 };
    }
    const own = laid.find((c) => c.limb === limb.parent) ?? this.#chosen[limb.parent];
    const at = own?.placed.ends[limb.parentStep];
    return { at: at ?? NOWHERE, directionDeg: own?.placed.directions[limb.parentStep] ?? 0 };
  }

  /**
   * Lays a limb, and again all that hangs on it, each turned and mirrored as the limb is, adding up what they
   * cost. False as soon as the trial's limit is reached.
   */
  #lay(number: number, candidate: Candidate, flip: boolean, trial: Trial): boolean {
    const { tree, limbs } = this.#task;
    const limb = limbs[number];
    if (limb === undefined) return true;
    this.#steps++;
    const { at, directionDeg } = this.#hook(limb, trial.laid);
    const placed = placeLimb(tree, limb.steps, legsFrom(candidate, directionDeg), at, directionDeg);
    trial.box = joinBoxes(trial.box, placed.box);
    trial.price += candidate.dislike;
    const left = trial.limit - trial.price - benchPrice(this.#task.bench, trial.box);
    if (left <= 0) return false;
    const among = this.#priceAmong(placed, trial.still, trial.laid, left);
    if (among >= left) return false;
    trial.price += among;
    trial.laid.push({ limb: number, candidate, placed });
    for (const child of limb.children) {
      const chosen = this.#chosen[child] ?? null;
      if (chosen === null) continue;
      if (!this.#lay(child, flip ? mirrored(chosen.candidate) : chosen.candidate, flip, trial)) return false;
    }
    return true;
  }

  /** The box that a limb and all that hangs on it can never leave. */
  #within(number: number): BoxMm {
    const limb = this.#task.limbs[number];
    const at = limb === undefined ? NOWHERE : this.#hook(limb, []).at;
    return growBox({ minXMm: at.xMm, minYMm: at.yMm, maxXMm: at.xMm, maxYMm: at.yMm }, limb?.reachMm ?? 0);
  }

  /** What is laid beside `part`: its box, and those of its items that come near `box`. */
  #still(part: readonly Chosen[], near: BoxMm): Still {
    const moving = new Set(part.map((c) => c.limb));
    const { base } = this.#task;
    const items: Item[] = [];
    let box = base.box;
    this.#takeNear(base.items, near, items);
    for (const chosen of this.#chosen) {
      if (chosen === null || moving.has(chosen.limb)) continue;
      box = joinBoxes(box, chosen.placed.box);
      if (boxesNear(chosen.placed.box, near, this.#pricing.reachMm)) {
        this.#takeNear(chosen.placed.items, near, items);
      }
    }
    return this.#pricing.still(items, box);
  }

  #takeNear(from: readonly Item[], near: BoxMm, items: Item[]): void {
    for (const item of from) if (boxesNear(item.box, near, this.#pricing.reachMm)) items.push(item);
  }

  /** Price of some limbs among what stands still. */
  #priceOf(part: readonly Chosen[], still: Still): number {
    let price = 0;
    let { box } = still;
    part.forEach((chosen, i) => {
      box = joinBoxes(box, chosen.placed.box);
      price +=
        chosen.candidate.dislike +
        this.#priceAmong(chosen.placed, still, part.slice(0, i), Number.POSITIVE_INFINITY);
    });
    return price + benchPrice(this.#task.bench, box);
  }

  /**
   * What one laid limb costs beside what stands still, by itself, and beside others that move with it. Once it
   * is over `limit`, no more is added.
   */
  #priceAmong(placed: PlacedLimb, still: Still, others: readonly Chosen[], limit: number): number {
    let price = this.#pricing.beside(still, placed.items, limit);
    if (price >= limit) return price;
    if (placed.items.length > 2) price += this.#pricing.within(placed.items);
    for (const other of others) {
      if (boxesNear(placed.box, other.placed.box, this.#pricing.reachMm)) {
        price += this.#pricing.between(placed.items, other.placed.items);
      }
    }
    return price;
  }
}

const NOWHERE: PointMm = { xMm: 0, yMm: 0 };

const mirrored = (c: Candidate): Candidate => ({
  ...c,
  legs: c.legs.map((leg) => ({ ...leg, turnDeg: -leg.turnDeg })),
});

function legsFrom(c: Candidate, directionDeg: number): readonly Leg[] {
  const first = c.legs[0];
  if (c.fixedDeg === undefined || first === undefined) return c.legs;
  return [{ ...first, turnDeg: turnDeg(directionDeg, c.fixedDeg) }, ...c.legs.slice(1)];
}
