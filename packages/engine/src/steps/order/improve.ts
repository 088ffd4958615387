import type { Handled } from "./changes.ts";
import type { Draft } from "./draft.ts";

/** Most moves that are tried; each costs a few steps of the bench that it is on. */
const MOST_TRIES = 60_000;

/** Box changes outweigh any number of bit changes. */
const BOX = 1 << 16;

/**
 * Moves steps to other places on their bench as long as that saves changes of boxes or bits. A step stays between what
 * it waits for and what waits for it, and beside others on the same side of its panel, so that no turn-over is added.
 */
export function improveOrder(draft: Draft, order: readonly number[]): readonly number[] {
  const search = new Search(draft, order);
  search.run();
  return search.order;
}

/** Number of what is in the hand before each place of a bench, and what is taken up from there on; −1: nothing. */
interface InHand {
  readonly before: Int32Array;
  readonly from: Int32Array;
}

class Search {
  readonly #draft: Draft;
  readonly #order: number[];
  /** Steps of each bench in their order. */
  readonly #benches: Map<number, readonly number[]>;
  /** Place of each step in the order. */
  readonly #at: Int32Array;
  #tries = MOST_TRIES;

  constructor(draft: Draft, order: readonly number[]) {
    this.#draft = draft;
    this.#order = [...order];
    this.#at = new Int32Array(order.length);
    this.#benches = new Map(
      draft.benches.map((bench) => [bench, order.filter((n) => draft.bench[n] === bench)]),
    );
    this.#number(0, order.length - 1);
  }

  get order(): readonly number[] {
    return this.#order;
  }

  run(): void {
    for (let better = true; better && this.#tries > 0; ) {
      better = false;
      for (let node = 0; node < this.#order.length && this.#tries > 0; node++)
        if (this.#move(node)) better = true;
    }
  }

  /** Moves a step to where it costs the fewest changes; whether that is elsewhere. */
  #move(node: number): boolean {
    const bench = this.#draft.bench[node] ?? -1;
    const own = this.#benches.get(bench) ?? [];
    const step = this.#draft.handled[node];
    if (step === undefined || (step.boxes.length === 0 && step.bits.length === 0)) return false;
    const from = own.indexOf(node);
    const rest = own.toSpliced(from, 1);
    const [low, high] = this.#room(node, rest, from);
    this.#tries -= 1 + high - low;
    if (low === high) return false;
    const boxes = this.#inHand(rest, (one) => one.boxes);
    const bits = this.#inHand(rest, (one) => one.bits);
    let best = from;
    let least = costAt(step.boxes, boxes, from) * BOX + costAt(step.bits, bits, from);
    for (let to = low; to <= high; to++) {
      if (!this.#keepsTurns(node, rest, to)) continue;
      const cost = costAt(step.boxes, boxes, to) * BOX + costAt(step.bits, bits, to);
      if (cost >= least) continue;
      least = cost;
      best = to;
    }
    if (best === from) return false;
    this.#put(node, rest, best);
    this.#benches.set(bench, rest.toSpliced(best, 0, node));
    return true;
  }

  /** Places among the others of its bench between which a step may go. */
  #room(node: number, rest: readonly number[], from: number): readonly [low: number, high: number] {
    const { before, after } = this.#draft;
    let first = -1;
    let last = this.#order.length;
    for (const other of before[node] ?? []) first = Math.max(first, this.#at[other] ?? -1);
    for (const other of after[node] ?? []) last = Math.min(last, this.#at[other] ?? last);
    const fits = (other: number | undefined): boolean => {
      if (other === undefined) return false;
      const at = this.#at[other] ?? -1;
      return at > first && at < last;
    };
    let low = from;
    while (low > 0 && fits(rest[low - 1])) low--;
    let high = from;
    while (high < rest.length && fits(rest[high])) high++;
    return [low, high];
  }

  /** Whether a step that goes to a place lies beside one on the same side of its panel. */
  #keepsTurns(node: number, rest: readonly number[], to: number): boolean {
    const { turned, nodes } = this.#draft;
    const side = nodes[node]?.side;
    return (
      turned[node] === -1 || nodes[rest[to - 1] ?? -1]?.side === side || nodes[rest[to] ?? -1]?.side === side
    );
  }

  #inHand(rest: readonly number[], pick: (one: Handled) => readonly number[]): InHand {
    const before = new Int32Array(rest.length + 1).fill(-1);
    const from = new Int32Array(rest.length + 1).fill(-1);
    const lists = rest.map((node) => pick(this.#draft.handled[node] ?? NO_STEP));
    lists.forEach((list, i) => {
      before[i + 1] = list.at(-1) ?? before[i] ?? -1;
    });
    for (let i = rest.length - 1; i >= 0; i--) from[i] = lists[i]?.[0] ?? from[i + 1] ?? -1;
    return { before, from };
  }

  /** Puts a step before the one at a place among the others of its bench, or after the last of them. */
  #put(node: number, rest: readonly number[], to: number): void {
    const old = this.#at[node] ?? 0;
    const next = rest[to];
    const nextAt = next === undefined ? -1 : (this.#at[next] ?? -1);
    const previous = rest[to - 1] ?? 0;
    // Seen from where it is taken out, what comes later moves forward by one.
    const at = nextAt !== -1 && nextAt < old ? nextAt : (this.#at[previous] ?? 0);
    this.#order.splice(old, 1);
    this.#order.splice(at, 0, node);
    this.#number(Math.min(at, old), Math.max(at, old));
  }

  #number(from: number, to: number): void {
    for (let i = from; i <= to; i++) this.#at[this.#order[i] ?? 0] = i;
  }
}

const NO_STEP: Handled = { boxes: [], bits: [] };

/** Changes that a list adds at a place: what its neighbours cost each other without it is saved. */
function costAt(list: readonly number[], { before, from }: InHand, to: number): number {
  if (list.length === 0) return 0;
  const left = before[to] ?? -1;
  const right = from[to] ?? -1;
  return joint(left, list[0] ?? -1) + joint(list.at(-1) ?? -1, right) - joint(left, right);
}

const joint = (a: number, b: number): number => (a !== -1 && b !== -1 && a !== b ? 1 : 0);
