import type { Side } from "../../model/index.ts";
import type { Handled } from "./changes.ts";
import type { SequenceNode } from "./sequence.ts";
import type { Turn } from "./sides.ts";

/** Steps as numbers 0, 1, 2 … */
export interface Draft {
  readonly nodes: readonly SequenceNode[];
  readonly after: readonly (readonly number[])[];
  readonly before: readonly (readonly number[])[];
  /** Bench of each: its panel, by number. */
  readonly bench: readonly number[];
  readonly benches: readonly number[];
  readonly handled: readonly Handled[];
  /** Panel that is turned over, by number; −1: none. */
  readonly turned: readonly number[];
}

/**
 * An order that follows given turn-overs: whatever can be done before the next turn is done before it. The next step
 * is, of those that can be done: on the bench at work; without a change of box; with the box from which the most can
 * be done without another; without a change of bit; the lowest.
 */
export function draftOrder(draft: Draft, turns: readonly Turn[]): readonly number[] {
  return new Drafting(draft, turns).run();
}

/** Open box and bit in the driver; −1: none. */
interface Hand {
  readonly box: number;
  readonly bit: number;
}

const EMPTY: Hand = { box: -1, bit: -1 };
const NO_STEP: Handled = { boxes: [], bits: [] };

class Drafting {
  readonly #draft: Draft;
  readonly #turns: readonly Turn[];
  readonly #waits: number[];
  readonly #up: Side[] = [];
  readonly #hands = new Map<number, Hand>();
  readonly #order: number[] = [];
  #ready: readonly number[];

  constructor(draft: Draft, turns: readonly Turn[]) {
    this.#draft = draft;
    this.#turns = turns;
    this.#waits = draft.before.map((list) => list.length);
    this.#ready = this.#waits.flatMap((left, node) => (left === 0 ? [node] : []));
  }

  run(): readonly number[] {
    const { bench, nodes } = this.#draft;
    let at = -1;
    let turn = 0;
    while (this.#order.length < nodes.length) {
      const able = this.#ready.filter((node) => this.#lies(node));
      if (able.length === 0) {
        const next = this.#turns[turn++];
        if (next === undefined) break;
        this.#up[next.panel] = next.side;
        continue;
      }
      if (!able.some((node) => bench[node] === at)) at = bench[able[0] ?? -1] ?? -1;
      const here = able.filter((node) => bench[node] === at);
      this.#do(this.#handiest(here, this.#hands.get(at) ?? EMPTY), at);
    }
    return this.#order;
  }

  /** Whether the side of its panel is up. */
  #lies(node: number): boolean {
    const panel = this.#draft.turned[node] ?? -1;
    return panel === -1 || this.#up[panel] === this.#draft.nodes[node]?.side;
  }

  #do(node: number, bench: number): void {
    const { boxes, bits } = this.#draft.handled[node] ?? NO_STEP;
    const hand = this.#hands.get(bench) ?? EMPTY;
    this.#hands.set(bench, { box: boxes.at(-1) ?? hand.box, bit: bits.at(-1) ?? hand.bit });
    this.#order.push(node);
    const freed = (this.#draft.after[node] ?? []).filter((next) => {
      const left = (this.#waits[next] ?? 0) - 1;
      this.#waits[next] = left;
      return left === 0;
    });
    this.#ready = [...this.#ready.filter((other) => other !== node), ...freed].sort((a, b) => a - b);
  }

  #handiest(among: readonly number[], hand: Hand): number {
    const { handled } = this.#draft;
    const runs = new Map<number, number>();
    const runOf = (box: number): number => {
      const known = runs.get(box) ?? this.#runLength(among, box);
      runs.set(box, known);
      return known;
    };
    let best = among[0] ?? 0;
    let bestKey: readonly number[] | null = null;
    for (const node of among) {
      const { boxes, bits } = handled[node] ?? NO_STEP;
      const box = boxes[0] ?? hand.box;
      const isChange = box !== hand.box && hand.box !== -1;
      const key = [
        Number(isChange),
        isChange || hand.box === -1 ? -runOf(box) : 0,
        Number(bits.length > 0 && hand.bit !== -1 && bits[0] !== hand.bit),
        boxes.length,
        node,
      ];
      if (bestKey !== null && compareKeys(key, bestKey) >= 0) continue;
      best = node;
      bestKey = key;
    }
    return best;
  }

  /** How many steps can be done one after the other from one box, of those that are ready and those that they free. */
  #runLength(among: readonly number[], box: number): number {
    const { after, handled, bench } = this.#draft;
    const fits = (node: number): boolean => (handled[node]?.boxes ?? []).every((own) => own === box);
    const freed = new Map<number, number>();
    const open = among.filter(fits);
    const here = bench[among[0] ?? -1];
    let count = 0;
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      count++;
      for (const next of after[node] ?? []) {
        const left = (freed.get(next) ?? this.#waits[next] ?? 0) - 1;
        freed.set(next, left);
        if (left === 0 && bench[next] === here && this.#lies(next) && fits(next)) open.push(next);
      }
    }
    return count;
  }
}

function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const less = (a[i] ?? 0) - (b[i] ?? 0);
    if (less !== 0) return less;
  }
  return 0;
}
