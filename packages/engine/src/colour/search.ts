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

/** Not coloured yet. */
const BARE = -1;

/** How many neighbours of each wire wear each colour, kept up to date so that a cost is one look-up. */
class Neighbours {
  readonly #lists: readonly (readonly number[])[];
  readonly #counts: Int32Array;
  readonly #colours: number;

  constructor(lists: readonly (readonly number[])[], colours: number) {
    this.#lists = lists;
    this.#colours = colours;
    this.#counts = new Int32Array(lists.length * colours);
  }

  change(i: number, colour: number, by: 1 | -1): void {
    for (const j of this.#lists[i] ?? []) {
      const at = j * this.#colours + colour;
      this.#counts[at] = (this.#counts[at] ?? 0) + by;
    }
  }

  alike(i: number, colour: number): number {
    return this.#counts[i * this.#colours + colour] ?? 0;
  }
}

/** A colouring that is searched: greedy by net, then one wire or one net at a time while anything gets better. */
export class ColourSearch {
  readonly #names: readonly string[];
  readonly #fixed: ReadonlySet<number>;
  readonly #worn: number[];
  readonly #palettes: readonly (readonly number[])[];
  readonly #hard: Neighbours;
  readonly #same: Neighbours;
  readonly #soft: Neighbours;
  /** For each wire the index of its net and of its wire type. */
  readonly #netOf: readonly number[];
  readonly #typeOf: readonly number[];
  readonly #reels: Int32Array;
  readonly #main: number[];
  readonly #nets: readonly { readonly id: string; readonly index: number; readonly own: readonly number[] }[];

  /** @param known colours that nets have in harnesses that are coloured already */
  constructor(
    problem: ColourProblem,
    fixed: ReadonlyMap<number, string>,
    known: ReadonlyMap<string, string>,
  ) {
    const { wires } = problem;
    const names = new Set([
      NO_COLOUR,
      ...wires.flatMap((w) => w.palette),
      ...fixed.values(),
      ...known.values(),
    ]);
    this.#names = [...names].sort(compareText);
    const index = new Map(this.#names.map((name, i) => [name, i]));
    const numbers = (palette: readonly string[]): readonly number[] =>
      palette.flatMap((name) => index.get(name) ?? []);
    const noColour = numbers([NO_COLOUR]);
    const byList = new Map<readonly string[], readonly number[]>();
    this.#palettes = wires.map(({ palette }) => {
      const made = byList.get(palette) ?? (palette.length > 0 ? numbers(palette) : noColour);
      byList.set(palette, made);
      return made;
    });
    const count = this.#names.length;
    this.#hard = new Neighbours(
      wires.map((w) => w.hard),
      count,
    );
    this.#same = new Neighbours(
      wires.map((w) => w.same),
      count,
    );
    this.#soft = new Neighbours(
      wires.map((w) => w.soft),
      count,
    );
    this.#worn = wires.map(() => BARE);
    this.#fixed = new Set(fixed.keys());
    const netIndex = numbered(wires.map((w) => w.wire.netId));
    const typeIndex = numbered(wires.map((w) => w.wire.wireType.id));
    this.#netOf = wires.map((w) => netIndex.get(w.wire.netId) ?? 0);
    this.#typeOf = wires.map((w) => typeIndex.get(w.wire.wireType.id) ?? 0);
    this.#reels = new Int32Array(Math.max(1, typeIndex.size) * count);
    const own: number[][] = [...netIndex].map(() => []);
    this.#netOf.forEach((net, i) => {
      own[net]?.push(i);
    });
    const load = (list: readonly number[]): number =>
      list.reduce((sum, i) => sum + (wires[i]?.hard.length ?? 0), 0);
    this.#nets = [...netIndex]
      .map(([id, net]) => ({ id, index: net, own: own[net] ?? [] }))
      .sort((a, b) => load(b.own) - load(a.own) || compareText(a.id, b.id));
    for (const [i, colour] of fixed) this.#paint(i, index.get(colour) ?? BARE);
    this.#main = own.map(() => BARE);
    for (const net of this.#nets) {
      const worn = net.own.flatMap((i) => fixed.get(i) ?? []);
      const main = known.get(net.id) ?? (worn.length > 0 ? mostUsed(worn) : undefined);
      if (main !== undefined) this.#main[net.index] = index.get(main) ?? BARE;
    }
  }

  run(): readonly string[] {
    for (const { index, own } of this.#nets) {
      if (this.#main[index] === BARE) this.#tryMains(index, own, Number.POSITIVE_INFINITY);
      else this.#dress(own);
    }
    for (let pass = 0; pass < MOST_PASSES; pass++) {
      let better = false;
      for (const { index, own } of this.#nets) if (this.#improveNet(index, own)) better = true;
      for (const i of this.#worn.keys()) if (this.#improveWire(i)) better = true;
      if (!better) break;
    }
    return this.#worn.map((colour) => this.#names[colour] ?? "");
  }

  /** Colour that most wires of each net wear. */
  netColours(): ReadonlyMap<string, string> {
    return new Map(
      this.#nets.map(({ id, own }) => [
        id,
        mostUsed(own.map((i) => this.#names[this.#worn[i] ?? BARE] ?? "")),
      ]),
    );
  }

  #paint(i: number, colour: number): void {
    const old = this.#worn[i] ?? BARE;
    if (old === colour) return;
    const reel = (this.#typeOf[i] ?? 0) * this.#names.length;
    for (const [which, by] of [
      [old, -1],
      [colour, 1],
    ] as const) {
      if (which === BARE) continue;
      this.#hard.change(i, which, by);
      this.#same.change(i, which, by);
      this.#soft.change(i, which, by);
      this.#reels[reel + which] = (this.#reels[reel + which] ?? 0) + by;
    }
    this.#worn[i] = colour;
  }

  /** What it costs that wire `i` wears this colour, as the others are now. */
  #cost(i: number, colour: number): number {
    const main = this.#main[this.#netOf[i] ?? 0] ?? BARE;
    const reel = this.#reels[(this.#typeOf[i] ?? 0) * this.#names.length + colour] ?? 0;
    return (
      WEIGHTS.hard * this.#hard.alike(i, colour) +
      WEIGHTS.same * this.#same.alike(i, colour) +
      (main !== BARE && main !== colour ? WEIGHTS.offNet : 0) +
      WEIGHTS.soft * this.#soft.alike(i, colour) +
      (reel - (this.#worn[i] === colour ? 1 : 0) === 0 ? WEIGHTS.reel : 0)
    );
  }

  #best(i: number): number {
    let best = BARE;
    let least = Number.POSITIVE_INFINITY;
    for (const colour of this.#palettes[i] ?? []) {
      const cost = this.#cost(i, colour);
      if (cost < least) [best, least] = [colour, cost];
    }
    return best;
  }

  /** Gives each free wire of a net the main colour where it can wear it, else the best other one; tells the cost. */
  #dress(own: readonly number[]): number {
    for (const i of own) if (!this.#fixed.has(i)) this.#paint(i, BARE);
    for (const i of own) {
      if (this.#fixed.has(i)) continue;
      const main = this.#main[this.#netOf[i] ?? 0] ?? BARE;
      const wears =
        main !== BARE &&
        this.#hard.alike(i, main) === 0 &&
        this.#same.alike(i, main) === 0 &&
        this.#palettes[i]?.includes(main);
      this.#paint(i, wears ? main : this.#best(i));
    }
    return this.#costOf(own);
  }

  #costOf(own: readonly number[]): number {
    return own.reduce((sum, i) => sum + this.#cost(i, this.#worn[i] ?? BARE), 0);
  }

  /** Tries every main colour for a net and takes the best when it costs less than `below`. */
  #tryMains(net: number, own: readonly number[], below: number): boolean {
    const before = own.map((i) => this.#worn[i] ?? BARE);
    const oldMain = this.#main[net] ?? BARE;
    let bestMain = BARE;
    let least = below;
    const lists = new Set(own.filter((i) => !this.#fixed.has(i)).map((i) => this.#palettes[i] ?? []));
    for (const main of new Set([...lists].flat())) {
      if (main === oldMain) continue;
      this.#main[net] = main;
      const cost = this.#dress(own);
      if (cost < least) [bestMain, least] = [main, cost];
    }
    this.#main[net] = bestMain === BARE ? oldMain : bestMain;
    if (bestMain !== BARE) this.#dress(own);
    else
      own.forEach((i, n) => {
        this.#paint(i, before[n] ?? BARE);
      });
    return bestMain !== BARE;
  }

  #improveNet(net: number, own: readonly number[]): boolean {
    if (own.some((i) => this.#fixed.has(i))) return false;
    const now = this.#costOf(own);
    // Nothing is alike and nothing is off its net's colour: only reels could be saved, and wires do that alone.
    if (now < WEIGHTS.soft) return false;
    return this.#tryMains(net, own, now);
  }

  #improveWire(i: number): boolean {
    if (this.#fixed.has(i)) return false;
    const old = this.#worn[i] ?? BARE;
    const best = this.#best(i);
    if (best === BARE || this.#cost(i, best) >= this.#cost(i, old)) return false;
    this.#paint(i, best);
    return true;
  }
}

function numbered(ids: readonly string[]): ReadonlyMap<string, number> {
  return new Map([...new Set(ids)].sort(compareText).map((id, i) => [id, i]));
}

/** The colour that occurs most; of several the first in code-point order. */
function mostUsed(colours: readonly string[]): string {
  const counts = new Map<string, number>();
  for (const colour of colours) counts.set(colour, (counts.get(colour) ?? 0) + 1);
  const sorted = [...counts].sort((a, b) => b[1] - a[1] || compareText(a[0], b[0]));
  return sorted[0]?.[0] ?? "";
}
