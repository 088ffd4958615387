import type { Direction } from "./problem.ts";

/**
 * The chains of one direction while a search goes on: each an order of sites from its line's feed. Sites are put where
 * they lengthen a chain least and taken out without reordering, so that a trial costs steps in the length of a chain.
 */
export class Chains {
  readonly #direction: Direction;
  readonly #groups: number;
  /** By line × groups + group. */
  readonly #orders: number[][];
  readonly lineOf: number[];

  constructor(direction: Direction, lineOf: readonly number[]) {
    this.#direction = direction;
    this.#groups = Math.max(0, ...direction.groupOf) + 1;
    this.#orders = Array.from({ length: direction.lines.length * this.#groups }, () => []);
    this.lineOf = [...lineOf];
    for (const site of lineOf.keys()) this.#put(site, this.#orderOf(site));
  }

  /** Orders of all chains, empty ones among them. */
  get orders(): readonly (readonly number[])[] {
    return this.#orders;
  }

  /** Mm that the move of a site to another line adds, and, when `other` is given, of that one to the site's line. */
  delta(site: number, line: number, other: number | null): number {
    const from = this.lineOf[site] ?? 0;
    if (from === line) return 0;
    const home = this.#orderAt(from, site);
    const away = this.#orderAt(line, site);
    const swapsWithin = other !== null && this.#direction.groupOf[other] === this.#direction.groupOf[site];
    if (other === null) return this.#cheapest(away, line, site, -1).mm - this.#saved(home, from, site);
    if (!swapsWithin)
      return (
        this.#cheapest(away, line, site, -1).mm -
        this.#saved(home, from, site) +
        this.#cheapest(this.#orderAt(from, other), from, other, -1).mm -
        this.#saved(this.#orderAt(line, other), line, other)
      );
    return (
      this.#cheapest(away, line, site, other).mm -
      this.#saved(away, line, other) +
      this.#cheapest(home, from, other, site).mm -
      this.#saved(home, from, site)
    );
  }

  /** Moves a site to another line, and `other` to the line that it leaves. */
  move(site: number, line: number, other: number | null): void {
    const from = this.lineOf[site] ?? 0;
    if (from === line) return;
    this.#take(site);
    if (other !== null) this.#take(other);
    this.lineOf[site] = line;
    this.#put(site, this.#orderOf(site));
    if (other === null) return;
    this.lineOf[other] = from;
    this.#put(other, this.#orderOf(other));
  }

  /** Mm that turning round the part of a chain between two places adds. */
  turnDelta(chain: number, first: number, last: number): number {
    const order = this.#orders[chain] ?? [];
    const line = Math.floor(chain / this.#groups);
    const [a, b] = [order[first] ?? -1, order[last] ?? -1];
    const before = order[first - 1] ?? -1;
    const after = order[last + 1];
    const tail = after === undefined ? 0 : this.#mm(line, a, after) - this.#mm(line, b, after);
    return this.#mm(line, before, b) - this.#mm(line, before, a) + tail;
  }

  turn(chain: number, first: number, last: number): void {
    const order = this.#orders[chain] ?? [];
    order.splice(first, last - first + 1, ...order.slice(first, last + 1).reverse());
  }

  /** Puts a shorter order in place of a chain's own. */
  reorder(chain: number, order: readonly number[]): void {
    this.#orders[chain] = [...order];
  }

  /** Line of a chain. */
  line(chain: number): number {
    return Math.floor(chain / this.#groups);
  }

  lengthMm(chain: number): number {
    const line = this.line(chain);
    let sum = 0;
    let before = -1;
    for (const site of this.#orders[chain] ?? []) {
      sum += this.#mm(line, before, site);
      before = site;
    }
    return sum;
  }

  #orderAt(line: number, site: number): number[] {
    return this.#orders[line * this.#groups + (this.#direction.groupOf[site] ?? 0)] ?? [];
  }

  #orderOf(site: number): number[] {
    return this.#orderAt(this.lineOf[site] ?? 0, site);
  }

  /** Distance of two sites; −1 is the line's feed. */
  #mm(line: number, a: number, b: number): number {
    return a < 0
      ? (this.#direction.lines[line]?.feedMm[b] ?? Number.POSITIVE_INFINITY)
      : (this.#direction.mm[a]?.[b] ?? Number.POSITIVE_INFINITY);
  }

  #saved(order: readonly number[], line: number, site: number): number {
    const i = order.indexOf(site);
    const before = order[i - 1] ?? -1;
    const after = order[i + 1];
    const own = this.#mm(line, before, site);
    return after === undefined ? own : own + this.#mm(line, site, after) - this.#mm(line, before, after);
  }

  /** Where a site lengthens an order least, as if `without` were not in it. */
  #cheapest(
    order: readonly number[],
    line: number,
    site: number,
    without: number,
  ): { mm: number; at: number } {
    let before = -1;
    let best = { mm: Number.POSITIVE_INFINITY, at: 0 };
    let at = 0;
    for (const after of order) {
      if (after === without) continue;
      const mm = this.#mm(line, before, site) + this.#mm(line, site, after) - this.#mm(line, before, after);
      if (mm < best.mm) best = { mm, at };
      before = after;
      at++;
    }
    const mm = this.#mm(line, before, site);
    return mm < best.mm ? { mm, at } : best;
  }

  #put(site: number, order: number[]): void {
    order.splice(this.#cheapest(order, this.lineOf[site] ?? 0, site, -1).at, 0, site);
  }

  #take(site: number): void {
    const order = this.#orderOf(site);
    order.splice(order.indexOf(site), 1);
  }
}
