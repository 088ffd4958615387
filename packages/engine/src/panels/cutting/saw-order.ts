import { fenceKey } from "./pattern.ts";
import type { SheetNode } from "./sheet-layout.ts";

/** The fence set once, and the cuts that are made then: for each sheet their places among its nodes. */
interface Setup {
  readonly fenceMm: number;
  readonly cuts: readonly (readonly number[])[];
}

export interface SawOrder {
  readonly setups: readonly Setup[];
  /** No order of these cuts sets the fence less often. */
  readonly fewest: number;
}

/** Orders looked at, as counted steps: for a plan that is to be followed. */
const MOST_STEPS = 20_000;

/**
 * The order in which the fence is set, so that it is set as seldom as can be found: at every setting all that can be cut
 * is cut, of all sheets. A cut waits for the one that its part comes out of. To set a distance twice is needed only where
 * every cut of it cannot wait until others have been made.
 */
export function sawOrder(sheets: readonly (readonly SheetNode[])[], mostSteps = MOST_STEPS): SawOrder {
  const cuts = sheets.flatMap((nodes, sheet) =>
    nodes.map((node, at) => ({
      sheet,
      at,
      after: node.after,
      key: fenceKey(node.fenceMm),
      fenceMm: node.fenceMm,
    })),
  );
  if (cuts.length === 0) return { setups: [], fewest: 0 };
  const base: number[] = [];
  let n = 0;
  for (const nodes of sheets) {
    base.push(n);
    n += nodes.length;
  }
  const keys = [...new Set(cuts.map(({ key }) => key))].sort((a, b) => b - a);
  const search = new Search(
    cuts.map(({ sheet, after, key }) => ({
      parent: after < 0 ? -1 : (base[sheet] ?? 0) + after,
      key: keys.indexOf(key),
    })),
    keys.length,
    mostSteps,
  );
  const order = search.best();
  const made = new Set<number>();
  const setups = order.map((key): Setup => {
    const own = sheets.map((): number[] => []);
    cuts.forEach((cut, i) => {
      const parent = cut.after < 0 ? -1 : (base[cut.sheet] ?? 0) + cut.after;
      if (made.has(i) || cut.key !== keys[key] || (parent >= 0 && !made.has(parent))) return;
      made.add(i);
      own[cut.sheet]?.push(cut.at);
    });
    return { fenceMm: (keys[key] ?? 0) / 1000, cuts: own };
  });
  return { setups, fewest: search.bound };
}

interface Cut {
  /** The cut before, which stands earlier in the list. */
  readonly parent: number;
  readonly key: number;
}

/** Branch and bound over the next distance; what is made with the fence set so is everything that can be. */
class Search {
  readonly #cuts: readonly Cut[];
  readonly #keys: number;
  readonly #mostSteps: number;
  #steps = 0;
  #best: readonly number[] = [];
  readonly bound: number;

  constructor(cuts: readonly Cut[], keys: number, mostSteps: number) {
    this.#mostSteps = mostSteps;
    this.#cuts = cuts;
    this.#keys = keys;
    this.bound = this.#atLeast();
  }

  best(): readonly number[] {
    this.#best = this.#greedy();
    if (this.#best.length > this.bound) this.#look(new Uint8Array(this.#cuts.length), [], new Map());
    return this.#best;
  }

  /** Distances, and of one distance that comes again below another, as often as that is so in one chain. */
  #atLeast(): number {
    const most = new Array<number>(this.#keys).fill(0);
    this.#cuts.forEach((cut, i) => {
      let runs = 1;
      let last = cut.key;
      for (let at = this.#cuts[i]?.parent ?? -1; at >= 0; at = this.#cuts[at]?.parent ?? -1) {
        const key = this.#cuts[at]?.key ?? -1;
        if (key === cut.key && last !== cut.key) runs++;
        last = key;
      }
      most[cut.key] = Math.max(most[cut.key] ?? 0, runs);
    });
    return most.reduce((sum, n) => sum + n, 0);
  }

  /** Makes all cuts of a distance that can be made; how many. */
  #make(done: Uint8Array, key: number): number {
    let count = 0;
    this.#cuts.forEach((cut, i) => {
      if (done[i] === 1 || cut.key !== key || (cut.parent >= 0 && done[cut.parent] !== 1)) return;
      done[i] = 1;
      count++;
    });
    return count;
  }

  #left(done: Uint8Array): number[] {
    const left = new Array<number>(this.#keys).fill(0);
    this.#cuts.forEach(({ key }, i) => {
      if (done[i] !== 1) left[key] = (left[key] ?? 0) + 1;
    });
    return left;
  }

  /** Always a distance that is then done with if there is one, else the one at which most is cut. */
  #greedy(): readonly number[] {
    const done = new Uint8Array(this.#cuts.length);
    const order: number[] = [];
    for (;;) {
      const next = this.#ranked(done)[0];
      if (next === undefined) return order;
      this.#make(done, next.key);
      order.push(next.key);
    }
  }

  #ranked(
    done: Uint8Array,
  ): readonly { readonly key: number; readonly finishes: boolean; readonly made: number }[] {
    return this.#left(done)
      .flatMap((left, key) => {
        if (left === 0) return [];
        const made = this.#make(done.slice(), key);
        return made === 0 ? [] : [{ key, finishes: made === left, made }];
      })
      .sort((a, b) => Number(b.finishes) - Number(a.finishes) || b.made - a.made || a.key - b.key);
  }

  #look(done: Uint8Array, order: readonly number[], seen: Map<string, number>): void {
    if (this.#steps++ > this.#mostSteps || this.#best.length <= this.bound) return;
    const open = this.#left(done).filter((n) => n > 0).length;
    if (open === 0) {
      if (order.length < this.#best.length) this.#best = order;
      return;
    }
    if (order.length + open >= this.#best.length) return;
    const state = done.join("");
    const known = seen.get(state);
    if (known !== undefined && known <= order.length) return;
    seen.set(state, order.length);
    const ranked = this.#ranked(done);
    // A distance that is then done with can always come first: waiting gains nothing.
    const options = ranked[0]?.finishes === true ? ranked.slice(0, 1) : ranked;
    for (const { key } of options) {
      const next = done.slice();
      this.#make(next, key);
      this.#look(next, [...order, key], seen);
    }
  }
}
