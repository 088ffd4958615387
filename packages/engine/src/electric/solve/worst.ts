import { type Cap, CappedChoice } from "@pinwright/kernel";
import { type IslandState, type ModeAmps, modesOf } from "./island-state.ts";
import { baseAt, partAt, type Rows } from "./rows.ts";

/** A set of units that are on together, by their place in the island, with the currents of its modes by corner. */
export interface UnitSet {
  readonly units: readonly number[];
  readonly at: readonly ModeAmps[];
}

const NOTHING: ModeAmps = { modes: [], amps: new Float64Array(0) };

/**
 * The worst allowed sets of an island. By superposition a quantity is its value with all off and a part for each unit
 * that is on: its row times the currents of the unit on by itself. Which allowed set has the largest sum is found
 * exactly, at the nominal corner; the set's own currents are then solved with true resistances at every corner, once
 * for each different set.
 */
export class WorstSets {
  readonly #states: readonly IslandState[];
  readonly #choice: CappedChoice;
  /** Currents of each unit by itself at the nominal corner. */
  readonly #alone: readonly ModeAmps[];
  readonly #known = new Map<string, UnitSet>();
  readonly none: UnitSet;
  #gap = 0;
  #value = 0;

  /** @param states of one island at every corner, the nominal one first */
  constructor(states: readonly IslandState[], caps: readonly Cap[]) {
    this.#states = states;
    const [nominal] = states;
    const units = nominal?.network.units ?? [];
    const place = new Map(units.map((unit, u) => [unit.number, u]));
    this.#choice = new CappedChoice(
      units.length,
      caps.map(({ members, most }) => ({ members: members.flatMap((m) => place.get(m) ?? []), most })),
    );
    this.#alone = nominal === undefined ? [] : units.map((_, u) => modesOf(nominal, [u]));
    this.none = { units: [], at: states.map(() => NOTHING) };
    this.#known.set("", this.none);
  }

  /** Every different set that was asked for. */
  get sets(): ReadonlyMap<string, UnitSet> {
    return this.#known;
  }

  /** Sum of the worst values that were found, and of the gaps to what bounds them; 0 where the groups nest. */
  get optimum(): { readonly value: number; readonly gap: number } {
    return { value: this.#value, gap: this.#gap };
  }

  /** A set with its currents at every corner. */
  setOf(units: readonly number[]): UnitSet {
    const key = units.join(" ");
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    const set: UnitSet = { units, at: this.#states.map((state) => modesOf(state, units)) };
    this.#known.set(key, set);
    return set;
  }

  /** What each unit by itself adds to a quantity at the nominal corner. */
  weights(rows: Rows): Float64Array {
    const weights = new Float64Array(this.#alone.length);
    for (let u = 0; u < weights.length; u++) weights[u] = partAt(rows, 0, this.#alone[u] ?? NOTHING);
    return weights;
  }

  /** The allowed set whose weights have the largest sum; those in `forced` are in it. */
  heaviest(
    weights: Float64Array,
    forced: readonly number[] = [],
  ): { readonly set: UnitSet; readonly value: number } {
    const found = this.#choice.heaviest(weights, forced);
    this.#gap += found.upperBound - found.value;
    this.#value += found.value;
    return { set: found.chosen.length === 0 ? this.none : this.setOf(found.chosen), value: found.value };
  }

  /** The allowed set that adds most to a quantity, and the one that takes most from it. */
  extremes(rows: Rows): { readonly up: UnitSet; readonly down: UnitSet; readonly larger: UnitSet } {
    const weights = this.weights(rows);
    const up = this.heaviest(weights);
    const down = this.heaviest(weights.map((w) => -w));
    const base = baseAt(rows, 0);
    const larger = Math.abs(base - down.value) > Math.abs(base + up.value) ? down.set : up.set;
    return { up: up.set, down: down.set, larger };
  }
}

/** Value of a quantity at a corner in a moment. */
export const valueAt = (rows: Rows, corner: number, set: UnitSet): number =>
  baseAt(rows, corner) + partAt(rows, corner, set.at[corner] ?? NOTHING);
