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
 * is, of those that can be done: on the bench at work; without a change of box; with the box that the most steps ask
 * for; without a change of bit; the lowest.
 */
export function draftOrder(draft: Draft, turns: readonly Turn[]): readonly number[] {
  const { after, before, bench, handled, nodes, turned } = draft;
  const waits = before.map((list) => list.length);
  const up: Side[] = [];
  const hands = new Map<number, Hand>();
  const order: number[] = [];
  let ready = waits.flatMap((left, node) => (left === 0 ? [node] : []));
  let at = -1;
  let turn = 0;
  while (order.length < nodes.length) {
    const able = ready.filter((node) => {
      const panel = turned[node] ?? -1;
      return panel === -1 || up[panel] === nodes[node]?.side;
    });
    if (able.length === 0) {
      const next = turns[turn++];
      if (next === undefined) break;
      up[next.panel] = next.side;
      continue;
    }
    const here = able.filter((node) => bench[node] === at);
    const among = here.length > 0 ? here : able;
    if (here.length === 0) at = bench[among[0] ?? -1] ?? -1;
    const chosen = handiest(
      among.filter((node) => bench[node] === at),
      handled,
      hands.get(at) ?? EMPTY,
    );
    order.push(chosen);
    hands.set(at, handAfter(hands.get(at) ?? EMPTY, handled[chosen]));
    ready = ready.filter((node) => node !== chosen);
    for (const next of after[chosen] ?? []) {
      const left = (waits[next] ?? 0) - 1;
      waits[next] = left;
      if (left === 0) ready.push(next);
    }
    ready.sort((a, b) => a - b);
  }
  return order;
}

/** Open box and bit in the driver; −1: none. */
interface Hand {
  readonly box: number;
  readonly bit: number;
}

const EMPTY: Hand = { box: -1, bit: -1 };

const handAfter = (hand: Hand, step: Handled | undefined): Hand => ({
  box: step?.boxes.at(-1) ?? hand.box,
  bit: step?.bits.at(-1) ?? hand.bit,
});

function handiest(among: readonly number[], handled: readonly Handled[], hand: Hand): number {
  const asked = new Map<number, number>();
  for (const node of among) {
    const box = handled[node]?.boxes[0] ?? -1;
    asked.set(box, (asked.get(box) ?? 0) + 1);
  }
  let best = among[0] ?? 0;
  let bestKey: readonly number[] | null = null;
  for (const node of among) {
    const box = handled[node]?.boxes[0] ?? hand.box;
    const bit = handled[node]?.bits[0] ?? hand.bit;
    const key = [
      Number(box !== hand.box && hand.box !== -1),
      -(asked.get(handled[node]?.boxes[0] ?? -1) ?? 0),
      Number(bit !== hand.bit && hand.bit !== -1),
      handled[node]?.boxes.length ?? 0,
      node,
    ];
    if (bestKey !== null && compareKeys(key, bestKey) >= 0) continue;
    best = node;
    bestKey = key;
  }
  return best;
}

function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const less = (a[i] ?? 0) - (b[i] ?? 0);
    if (less !== 0) return less;
  }
  return 0;
}
