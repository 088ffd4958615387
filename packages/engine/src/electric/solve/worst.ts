import { type Cap, CappedChoice } from "@pinwright/kernel";
import type { IslandUnit } from "../network/island-circuit.ts";
import { type IslandState, modesOf } from "./island-state.ts";
import type { Row } from "./rows.ts";

/** A set of units that are on together, by their place in the island, with the currents of its modes at each corner. */
export interface UnitSet {
  readonly units: readonly number[];
  readonly modes: readonly Float64Array[];
}

/**
 * The worst allowed sets of an island. By superposition a row's value is its value with all off and a part for each
 * unit that is on: the row times the currents of the unit on by itself. Which allowed set has the largest sum is found
 * exactly; the set's own currents are then solved with true resistances, once for each different set.
 */
export class WorstSets {
  readonly #states: readonly IslandState[];
  readonly #choice: CappedChoice;
  /** Currents of the modes of each unit by itself, by unit, at the nominal corner. */
  readonly #alone: readonly Float64Array[];
  readonly #count: number;
  readonly #known = new Map<string, UnitSet>();
  #gap = 0;
  #value = 0;

  /** @param states of one island at every corner, the nominal one first */
  constructor(states: readonly IslandState[], units: readonly IslandUnit[], caps: readonly Cap[]) {
    this.#states = states;
    const place = new Map(units.map((unit, u) => [unit.number, u]));
    this.#count = units.length;
    this.#choice = new CappedChoice(
      units.length,
      caps.map(({ members, most }) => ({ members: members.flatMap((m) => place.get(m) ?? []), most })),
    );
    const [nominal] = states;
    this.#alone = nominal === undefined ? [] : units.map((_, u) => modesOf(nominal, [u]));
  }

  /** Every different set that was worst for something. */
  get sets(): ReadonlyMap<string, UnitSet> {
    return this.#known;
  }

  /** Sum of the worst values that were found, and of the gaps to what bounds them; 0 where the groups nest. */
  get optimum(): { readonly value: number; readonly gap: number } {
    return { value: this.#value, gap: this.#gap };
  }

  /** No unit on. */
  get none(): UnitSet {
    return this.setOf([]);
  }

  /** A set with its currents at every corner. */
  setOf(units: readonly number[]): UnitSet {
    const key = units.join(" ");
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const set: UnitSet = { units, modes: this.#states.map((state) => modesOf(state, units)) };
    this.#known.set(key, set);
    return set;
  }

  /** What each unit by itself adds to a row at the nominal corner. */
  weights({ byMode }: Row, sign: 1 | -1 = 1): Float64Array {
    const weights = new Float64Array(this.#count);
    for (let u = 0; u < this.#count; u++) {
      const alone = this.#alone[u];
      let sum = 0;
      for (let m = 0; m < byMode.length; m++) sum += (byMode[m] ?? 0) * (alone?.[m] ?? 0);
      weights[u] = sign * sum;
    }
    return weights;
  }

  /** The allowed set that adds most to a row (sign 1) or takes most from it (sign −1). */
  most(
    row: Row,
    sign: 1 | -1,
    forced: readonly number[] = [],
  ): { readonly set: UnitSet; readonly value: number } {
    const weights = this.weights(row, sign);
    if (forced.length === 0 && weights.every((w) => w <= 0)) return { set: this.none, value: row.base };
    return this.heaviest(weights, row.base, sign, forced);
  }

  heaviest(
    weights: Float64Array,
    base: number,
    sign: 1 | -1,
    forced: readonly number[] = [],
  ): { readonly set: UnitSet; readonly value: number } {
    const found = this.#choice.heaviest(weights, forced);
    this.#gap += found.upperBound - found.value;
    this.#value += found.value;
    return { set: this.setOf(found.chosen), value: base + sign * found.value };
  }

  /** The allowed set in which a row is largest in size, whichever way it points. */
  largest(row: Row): UnitSet {
    const up = this.most(row, 1);
    const down = this.most(row, -1);
    return Math.abs(down.value) > Math.abs(up.value) ? down.set : up.set;
  }
}
