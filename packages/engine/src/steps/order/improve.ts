import type { Handled } from "./changes.ts";
import type { Draft } from "./draft.ts";

/** Most moves that are tried; each costs a few steps of the bench that it is on. */
const MOST_TRIES = 60_000;

/** Box changes outweigh any number of bit changes. */
const BOX = 1 << 16;

/**
 * Moves steps to other places on their bench as long as that saves changes of boxes or bits. A step stays between what
 * it waits for and what waits for it, and between the same turn-overs of its panel, so that none is added.
 */
export function improveOrder(draft: Draft, order: readonly number[]): readonly number[] {
  const search = new Search(draft, order);
  search.run();
  return search.order;
}

class Search {
  readonly #draft: Draft;
  #order: number[];
  /** Place of each step in the order. */
  readonly #at: Int32Array;
  #tries = MOST_TRIES;

  constructor(draft: Draft, order: readonly number[]) {
    this.#draft = draft;
    this.#order = [...order];
    this.#at = new Int32Array(order.length);
    this.#number(0);
  }

  get order(): readonly number[] {
    return this.#order;
  }

  run(): void {
    for (let better = true; better && this.#tries > 0; ) {
      better = false;
      for (const bench of this.#draft.benches) if (this.#pass(bench)) better = true;
    }
  }

  /** Tries to move each step of one bench; whether any moved. */
  #pass(bench: number): boolean {
    let moved = false;
    for (let node = 0; node < this.#draft.nodes.length; node++)
      if (this.#draft.bench[node] === bench && this.#move(node, bench)) moved = true;
    return moved;
  }

  #move(node: number, bench: number): boolean {
    const own = this.#order.filter((other) => this.#draft.bench[other] === bench);
    const from = own.indexOf(node);
    const rest = own.toSpliced(from, 1);
    const [low, high] = this.#room(node, rest, from);
    const now = this.#costAt(rest, from, node);
    let best = from;
    let least = now;
    for (let to = low; to <= high && this.#tries > 0; to++) {
      this.#tries--;
      const cost = this.#costAt(rest, to, node);
      if (cost >= least) continue;
      least = cost;
      best = to;
    }
    if (best === from) return false;
    this.#put(node, rest, best);
    return true;
  }

  /** Places among the others of its bench between which a step may go. */
  #room(node: number, rest: readonly number[], from: number): readonly [low: number, high: number] {
    const { before, after, turned, nodes } = this.#draft;
    let first = -1;
    let last = this.#order.length;
    for (const other of before[node] ?? []) first = Math.max(first, this.#at[other] ?? -1);
    for (const other of after[node] ?? []) last = Math.min(last, this.#at[other] ?? last);
    const fits = (other: number | undefined): boolean => {
      if (other === undefined) return false;
      const at = this.#at[other] ?? -1;
      return at > first && at < last && (turned[node] === -1 || nodes[other]?.side === nodes[node]?.side);
    };
    let low = from;
    while (low > 0 && fits(rest[low - 1])) low--;
    let high = from;
    while (high < rest.length && fits(rest[high])) high++;
    return [low, high];
  }

  /** Changes between a step and its neighbours if it went to a place among the others. */
  #costAt(rest: readonly number[], to: number, node: number): number {
    const { handled } = this.#draft;
    const step = handled[node] ?? NO_STEP;
    let cost = 0;
    const add = (pick: (one: Handled) => readonly number[], weight: number): void => {
      const list = pick(step);
      const left = lastBefore(rest, to, handled, pick);
      const right = firstFrom(rest, to, handled, pick);
      const joins = (a: number, b: number): number => (a !== -1 && b !== -1 && a !== b ? weight : 0);
      if (list.length === 0) return;
      // What the neighbours cost each other without it is saved.
      cost += joins(left, list[0] ?? -1) + joins(list.at(-1) ?? -1, right) - joins(left, right);
    };
    add((one) => one.boxes, BOX);
    add((one) => one.bits, 1);
    return cost;
  }

  /** Puts a step before the one at a place among the others of its bench, or after the last of them. */
  #put(node: number, rest: readonly number[], to: number): void {
    const old = this.#at[node] ?? 0;
    const next = rest[to];
    const previous = rest[to - 1];
    this.#order.splice(old, 1);
    let at = this.#order.length;
    if (next !== undefined && (this.#at[next] ?? 0) < old) at = this.#order.indexOf(next);
    else if (previous !== undefined) at = this.#order.indexOf(previous) + 1;
    this.#order.splice(at, 0, node);
    this.#number(Math.min(at, old));
  }

  #number(from: number): void {
    for (let i = from; i < this.#order.length; i++) this.#at[this.#order[i] ?? 0] = i;
  }
}

const NO_STEP: Handled = { boxes: [], bits: [] };

function lastBefore(
  rest: readonly number[],
  to: number,
  handled: readonly Handled[],
  pick: (one: Handled) => readonly number[],
): number {
  for (let i = to - 1; i >= 0; i--) {
    const own = pick(handled[rest[i] ?? -1] ?? NO_STEP).at(-1);
    if (own !== undefined) return own;
  }
  return -1;
}

function firstFrom(
  rest: readonly number[],
  to: number,
  handled: readonly Handled[],
  pick: (one: Handled) => readonly number[],
): number {
  for (let i = to; i < rest.length; i++) {
    const own = pick(handled[rest[i] ?? -1] ?? NO_STEP)[0];
    if (own !== undefined) return own;
  }
  return -1;
}
