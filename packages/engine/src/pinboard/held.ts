import {
  addPoints,
  directionDeg,
  distance,
  normaliseDeg,
  type PointMm,
  pointBetween,
  polar,
  polylineLength,
  scalePoint,
  subtractPoints,
  turnDeg,
} from "@pinwright/kernel";
import { startHolder } from "./base.ts";
import { boxesNear, pairPrice, reachMm } from "./crowding.ts";
import type { Item } from "./item.ts";
import { type LimbStep, lengthOf } from "./limb.ts";
import type { AskedPegs } from "./pegs.ts";
import { addBranchItems, boxOfItems, type Leg, legalBendMm, type PlacedLimb, placeLimb } from "./placing.ts";
import type { Base } from "./task.ts";
import type { BoardTree, Way } from "./tree.ts";

/** A line this close to its branch's length needs no change. */
const EXACT_MM = 0.0009;
const ORIGIN: PointMm = { xMm: 0, yMm: 0 };

/**
 * Lays the pegs that choices hold, at least two, and the branches between them. A peg that its branches cannot
 * reach is moved towards its place as far as they reach, and what lies beyond moves with it; a branch that is
 * longer than its pegs are apart is bent between them, unless it is a settled tail, whose holder moves outwards.
 */
export class HeldPegs {
  readonly #tree: BoardTree;
  readonly #asked: AskedPegs;
  readonly #handRoomMm: number;
  readonly #nodeAt = new Map<number, PointMm>();
  readonly #directionAt = new Map<number, number>();
  readonly #lineOf = new Map<number, { from: number; line: readonly PointMm[] }>();
  readonly #items: Item[] = [];

  constructor(tree: BoardTree, asked: AskedPegs, handRoomMm: number) {
    this.#tree = tree;
    this.#asked = asked;
    this.#handRoomMm = handRoomMm;
  }

  lay(): Base {
    const start = Math.min(...this.#asked.nodeAt.keys());
    const at = this.#asked.nodeAt.get(start) ?? ORIGIN;
    this.#nodeAt.set(start, at);
    this.#onward(start, -1, ORIGIN);
    const first = [...this.#lineOf].find(([, l]) => l.from === start);
    if (first !== undefined) {
      const [branch, { line }] = first;
      const lengthMm = this.#tree.branches[branch]?.lengthMm ?? 0;
      const a = line[0] ?? at;
      this.#directionAt.set(start, directionDeg(subtractPoints(line[1] ?? a, a)));
      const to = this.#otherEnd(branch, start);
      this.#items.push(...startHolder(this.#tree, { branch, from: start, to, lengthMm }, line));
    }
    return {
      nodeAt: this.#nodeAt,
      directionAt: this.#directionAt,
      lineOf: this.#lineOf,
      items: this.#items,
      box: boxOfItems(this.#items, at),
      isHeld: true,
    };
  }

  #otherEnd(branch: number, node: number): number {
    const own = this.#tree.branches[branch];
    return own === undefined ? node : own.a === node ? own.b : own.a;
  }

  /** Lays all ways from a laid node that lead to held pegs. `shift` is how far what lies beyond has moved. */
  #onward(node: number, via: number, shift: PointMm): void {
    for (const way of this.#tree.ways[node] ?? []) {
      if (way.branch === via || this.#lineOf.has(way.branch) || !this.#holds(way)) continue;
      const steps = this.#chain(node, way);
      const moved = this.#layChain(node, steps, shift);
      for (const step of steps) this.#onward(step.to, step.branch, moved);
    }
  }

  /** Whether a held peg lies along a way. */
  #holds(way: Way): boolean {
    if (this.#asked.nodeAt.has(way.to)) return true;
    return (this.#tree.ways[way.to] ?? []).some((w) => w.branch !== way.branch && this.#holds(w));
  }

  /** The steps to the next held peg. */
  #chain(from: number, first: Way): readonly LimbStep[] {
    const steps: LimbStep[] = [];
    let node = from;
    let way: Way | undefined = first;
    while (way !== undefined) {
      const taken: Way = way;
      steps.push({
        branch: taken.branch,
        from: node,
        to: taken.to,
        lengthMm: this.#tree.branches[taken.branch]?.lengthMm ?? 0,
      });
      node = taken.to;
      way = this.#asked.nodeAt.has(node)
        ? undefined
        : this.#tree.ways[node]?.find((w) => w.branch !== taken.branch && this.#holds(w));
    }
    return steps;
  }

  /** Lays steps from a laid node to a held peg; gives how far the peg is from where it was asked for. */
  #layChain(from: number, steps: readonly LimbStep[], shift: PointMm): PointMm {
    const a = this.#nodeAt.get(from) ?? ORIGIN;
    const last = steps.at(-1);
    const asked = last === undefined ? undefined : this.#asked.nodeAt.get(last.to);
    if (last === undefined || asked === undefined) return shift;
    const target = addPoints(asked, shift);
    const lengthMm = lengthOf(steps);
    const kept = this.#keptBends(steps, a, target, shift);
    if (kept !== null) {
      this.#take(steps, this.#along(steps, kept), target);
      return shift;
    }
    const apart = distance(a, target);
    const isTail = this.#tree.holders[last.to] !== null && this.#asked.settled.has(last.to);
    if (Math.abs(apart - lengthMm) <= EXACT_MM) {
      this.#take(steps, this.#along(steps, [a, target]), target);
      return shift;
    }
    const bent = apart < lengthMm && !isTail ? this.#bend(steps, a, target, lengthMm) : null;
    if (bent !== null) {
      this.#take(steps, bent, target);
      return shift;
    }
    const reached =
      apart === 0
        ? addPoints(a, polar(0, lengthMm))
        : addPoints(a, scalePoint(subtractPoints(target, a), lengthMm / apart));
    this.#take(steps, this.#along(steps, [a, reached]), reached);
    return subtractPoints(reached, asked);
  }

  /** The line of some branches through their bends as they were kept, if its length still is right. */
  #keptBends(
    steps: readonly LimbStep[],
    a: PointMm,
    target: PointMm,
    shift: PointMm,
  ): readonly PointMm[] | null {
    const bends = steps.flatMap((step) => {
      const kept = this.#asked.bendsOf.get(step.branch) ?? [];
      const forward = this.#tree.branches[step.branch]?.a === step.from;
      return (forward ? kept : kept.toReversed()).map((p) => addPoints(p, shift));
    });
    if (bends.length === 0) return null;
    const line = [a, ...bends, target];
    return Math.abs(polylineLength(line) - lengthOf(steps)) <= EXACT_MM ? line : null;
  }

  #along(steps: readonly LimbStep[], line: readonly PointMm[]): PlacedLimb {
    const legs: Leg[] = [];
    let before = 0;
    line.slice(1).forEach((b, i) => {
      const a = line[i] ?? b;
      const direction = directionDeg(subtractPoints(b, a));
      legs.push({ turnDeg: turnDeg(before, direction), lengthMm: distance(a, b) });
      before = direction;
    });
    return placeLimb(this.#tree, steps, legs, line[0] ?? ORIGIN, 0);
  }

  /** Bends steps once, near their middle, to the side that is freer; null where no bend is allowed. */
  #bend(steps: readonly LimbStep[], a: PointMm, b: PointMm, lengthMm: number): PlacedLimb | null {
    const first = legalBendMm(this.#tree, steps, lengthMm / 2);
    if (first === null) return null;
    const second = lengthMm - first;
    const apart = distance(a, b);
    if (apart <= Math.abs(first - second)) return null;
    const along = (first * first - second * second + apart * apart) / (2 * apart);
    const height = Math.sqrt(Math.max(0, first * first - along * along));
    const foot = pointBetween(a, b, along / apart);
    const across = polar(normaliseDeg(directionDeg(subtractPoints(b, a)) + 90), height);
    const left = this.#along(steps, [a, addPoints(foot, across), b]);
    const right = this.#along(steps, [a, subtractPoints(foot, across), b]);
    return this.#price(right.items) < this.#price(left.items) ? right : left;
  }

  #price(items: readonly Item[]): number {
    const reach = reachMm(this.#handRoomMm);
    let price = 0;
    for (const p of items) {
      for (const q of this.#items) {
        if (boxesNear(p.box, q.box, reach)) price += pairPrice(p, q, this.#handRoomMm);
      }
    }
    return price;
  }

  /** Takes over a laid chain; its last node is put exactly where it was asked for. */
  #take(steps: readonly LimbStep[], placed: PlacedLimb, end: PointMm): void {
    steps.forEach((step, i) => {
      const isLast = i === steps.length - 1;
      const laid = placed.lines[i] ?? [];
      const line = isLast ? [...laid.slice(0, -1), end] : laid;
      this.#nodeAt.set(step.to, isLast ? end : (placed.ends[i] ?? end));
      this.#directionAt.set(step.to, placed.directions[i] ?? 0);
      this.#lineOf.set(step.branch, { from: step.from, line });
      addBranchItems(this.#tree, step, line, placed.directions[i] ?? 0, this.#items);
    });
  }
}
