import { compareText } from "@pinwright/kernel";
import type { ColourProblem } from "./problem.ts";

/**
 * One alike pair or one reel counts more than any number of what comes after it: alike in a housing, alike though
 * of one net in a housing, a wire that does not wear its net's colour, alike at a breakout, a further reel.
 */
const WEIGHTS = { hard: 1e12, same: 1e9, offNet: 1e6, soft: 1e3, reel: 1 } as const;

const MOST_PASSES = 12;

/** Worn by a wire whose type is to be had in no colour at all; a finding tells of it. */
const NO_COLOUR = "BK";

/** A colouring that is searched: greedy by net, then one wire or one net at a time while anything gets better. */
export class ColourSearch {
  readonly #problem: ColourProblem;
  readonly #fixed: ReadonlyMap<number, string>;
  readonly #colours: string[];
  readonly #reels = new Map<string, number>();
  readonly #main: Map<string, string>;
  readonly #nets: readonly (readonly [string, readonly number[]])[];

  /** @param known colours that nets have in harnesses that are coloured already */
  constructor(
    problem: ColourProblem,
    fixed: ReadonlyMap<number, string>,
    known: ReadonlyMap<string, string>,
  ) {
    this.#problem = problem;
    this.#fixed = fixed;
    this.#main = new Map(known);
    this.#colours = problem.wires.map(() => "");
    const nets = new Map<string, number[]>();
    problem.wires.forEach(({ wire }, i) => {
      const list = nets.get(wire.netId);
      if (list === undefined) nets.set(wire.netId, [i]);
      else list.push(i);
    });
    const load = (own: readonly number[]): number =>
      own.reduce((sum, i) => sum + (problem.wires[i]?.hard.length ?? 0), 0);
    this.#nets = [...nets].sort((a, b) => load(b[1]) - load(a[1]) || compareText(a[0], b[0]));
    for (const [i, colour] of fixed) this.#paint(i, colour);
    for (const [netId, own] of this.#nets) {
      const worn = own.flatMap((i) => fixed.get(i) ?? []);
      if (!this.#main.has(netId) && worn[0] !== undefined) this.#main.set(netId, mostUsed(worn));
    }
  }

  run(): readonly string[] {
    for (const [netId, own] of this.#nets) this.#first(netId, own);
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      let better = false;
      for (const [netId, own] of this.#nets) if (this.#improveNet(netId, own)) better = true;
      for (const i of this.#problem.wires.keys()) if (this.#improveWire(i)) better = true;
      if (!better) break;
    }
    return this.#colours;
  }

  /** Colour that most wires of each net wear. */
  netColours(): ReadonlyMap<string, string> {
    return new Map(
      this.#nets.map(([netId, own]) => [netId, mostUsed(own.map((i) => this.#colours[i] ?? ""))]),
    );
  }

  #reel(i: number, colour: string): string {
    return `${this.#problem.wires[i]?.wire.wireType.id}|${colour}`;
  }

  #paint(i: number, colour: string): void {
    const old = this.#colours[i] ?? "";
    if (old !== "") this.#reels.set(this.#reel(i, old), (this.#reels.get(this.#reel(i, old)) ?? 1) - 1);
    this.#colours[i] = colour;
    if (colour !== "")
      this.#reels.set(this.#reel(i, colour), (this.#reels.get(this.#reel(i, colour)) ?? 0) + 1);
  }

  /** What it costs that wire `i` wears this colour, as the others are now. */
  #cost(i: number, colour: string): number {
    const own = this.#problem.wires[i];
    if (own === undefined) return 0;
    const alike = (others: readonly number[]): number =>
      others.reduce((sum, j) => sum + (this.#colours[j] === colour ? 1 : 0), 0);
    const main = this.#main.get(own.wire.netId);
    const key = this.#reel(i, colour);
    const others = (this.#reels.get(key) ?? 0) - (this.#colours[i] === colour ? 1 : 0);
    return (
      WEIGHTS.hard * alike(own.hard) +
      WEIGHTS.same * alike(own.same) +
      (main !== undefined && main !== colour ? WEIGHTS.offNet : 0) +
      WEIGHTS.soft * alike(own.soft) +
      (others === 0 ? WEIGHTS.reel : 0)
    );
  }

  #palette(i: number): readonly string[] {
    const palette = this.#problem.wires[i]?.palette ?? [];
    return palette.length > 0 ? palette : [NO_COLOUR];
  }

  #best(i: number): string {
    let best = "";
    let least = Number.POSITIVE_INFINITY;
    for (const colour of this.#palette(i)) {
      const cost = this.#cost(i, colour);
      if (cost < least) [best, least] = [colour, cost];
    }
    return best;
  }

  #paintNet(own: readonly number[]): number {
    let cost = 0;
    for (const i of own) {
      if (!this.#fixed.has(i)) {
        this.#paint(i, "");
        this.#paint(i, this.#best(i));
      }
    }
    for (const i of own) cost += this.#cost(i, this.#colours[i] ?? "");
    return cost;
  }

  #netPalette(own: readonly number[]): readonly string[] {
    return [...new Set(own.filter((i) => !this.#fixed.has(i)).flatMap((i) => this.#palette(i)))];
  }

  /** First colours of a net: every main colour is tried, each wire keeping to it where it can. */
  #first(netId: string, own: readonly number[]): void {
    if (this.#main.has(netId)) {
      this.#paintNet(own);
      return;
    }
    this.#tryMains(netId, own, Number.POSITIVE_INFINITY);
  }

  #tryMains(netId: string, own: readonly number[], below: number): boolean {
    const before = own.map((i) => this.#colours[i] ?? "");
    const oldMain = this.#main.get(netId);
    let bestMain: string | null = null;
    let least = below;
    for (const main of this.#netPalette(own)) {
      if (main === oldMain) continue;
      this.#main.set(netId, main);
      for (const i of own) if (!this.#fixed.has(i)) this.#paint(i, "");
      const cost = this.#paintNet(own);
      if (cost < least) [bestMain, least] = [main, cost];
    }
    own.forEach((i, n) => {
      if (!this.#fixed.has(i)) this.#paint(i, before[n] ?? "");
    });
    if (oldMain === undefined) this.#main.delete(netId);
    else this.#main.set(netId, oldMain);
    if (bestMain === null) return false;
    this.#main.set(netId, bestMain);
    for (const i of own) if (!this.#fixed.has(i)) this.#paint(i, "");
    this.#paintNet(own);
    return true;
  }

  #improveNet(netId: string, own: readonly number[]): boolean {
    if (own.some((i) => this.#fixed.has(i))) return false;
    const now = own.reduce((sum, i) => sum + this.#cost(i, this.#colours[i] ?? ""), 0);
    return this.#tryMains(netId, own, now);
  }

  #improveWire(i: number): boolean {
    if (this.#fixed.has(i)) return false;
    const old = this.#colours[i] ?? "";
    const best = this.#best(i);
    if (this.#cost(i, best) >= this.#cost(i, old)) return false;
    this.#paint(i, best);
    return true;
  }
}

/** The colour that occurs most; of several the first in code-point order. */
function mostUsed(colours: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  const sorted = [...counts].sort((a, b) => b[1] - a[1] || compareText(a[0], b[0]));
  return sorted[0]?.[0] ?? "";
}
