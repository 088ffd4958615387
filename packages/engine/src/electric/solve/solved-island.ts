import type { ShopNumbers } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { IslandCircuit } from "../network/island-circuit.ts";
import { type Behaviour, cornerFactors } from "../network/values.ts";
import { CORNERS } from "./corners.ts";
import { type UnitCurrents, unitCurrents } from "./heating.ts";
import { type IslandState, islandState, nominalOhms } from "./island-state.ts";
import { joinRows, type Rows, voltsRows } from "./rows.ts";
import { type UnitSet, valueAt, WorstSets } from "./worst.ts";

/** What is on in a moment of an island, beside what is on all the time: unit numbers of the machine. */
export interface IslandMoment {
  readonly id: string;
  readonly units: readonly number[];
}

/** What an island is solved with. */
export interface IslandTask {
  readonly network: IslandCircuit;
  /** The node that each node's volts are given against. */
  readonly returns: Int32Array;
  readonly numbers: ShopNumbers;
  /** Finished length by wire id. */
  readonly lengthsMm: ReadonlyMap<string, number>;
}

/** An island solved at every corner, with the worst moments that have been asked for so far. */
export class SolvedIsland {
  readonly task: IslandTask;
  /** Ω of the island's resistors at the nominal corner. */
  readonly ohms: Float64Array;
  /** What each corner makes of them. */
  readonly factors: readonly Readonly<Record<Behaviour, number>>[];
  readonly states: readonly IslandState[];
  readonly worst: WorstSets;
  /** Currents of each unit by itself, by corner. */
  readonly currents: readonly (readonly UnitCurrents[])[];
  /** Current through each join of the island. */
  readonly joinRows: readonly Rows[];
  readonly #momentOf = new Map<UnitSet, string>();
  readonly #moments = new Map<string, IslandMoment>();

  constructor(task: IslandTask) {
    const { network, numbers, lengthsMm } = task;
    this.task = task;
    this.ohms = nominalOhms(network, task);
    this.factors = CORNERS.map((corner) => cornerFactors(corner, numbers));
    this.states = CORNERS.map((corner) => islandState(network, { corner, numbers, lengthsMm }, this.ohms));
    this.worst = new WorstSets(this.states, network.caps);
    this.currents = this.states.map(unitCurrents);
    this.joinRows = joinRows(this.states);
  }

  get moments(): ReadonlyMap<string, IslandMoment> {
    return this.#moments;
  }

  /** The id of a set's moment: that of the first subject that it is the worst for. */
  momentOf(set: UnitSet, subject: string): string {
    if (set.units.length === 0) return "always";
    const known = this.#momentOf.get(set);
    if (known !== undefined) return known;
    this.#momentOf.set(set, subject);
    const units = set.units.map((u) => this.task.network.units[u]?.number ?? 0);
    this.#moments.set(subject, { id: subject, units });
    return subject;
  }

  /** Diodes and LEDs that are another way round in some moment, or were not settled. */
  unsettled(): readonly string[] {
    const { piecewise, circuit } = this.task.network;
    const wrong = new Set<string>();
    piecewise.forEach(({ part, resistor }, e) => {
      const [a, b] = [circuit.resistorA[resistor] ?? 0, circuit.resistorB[resistor] ?? 0];
      const rows = voltsRows(this.states, a, b);
      this.states.forEach(({ on, unsettled, values }, c) => {
        if (unsettled.includes(e)) wrong.add(part.id);
        const forwardV = values.piecewise[e]?.forwardV ?? 0;
        for (const set of this.worst.sets.values()) {
          const over = valueAt(rows, c, set) - forwardV;
          if (on[e] === 1 ? over < -1e-9 : over > 1e-9) wrong.add(part.id);
        }
      });
    });
    return [...wrong].sort(compareText);
  }
}
