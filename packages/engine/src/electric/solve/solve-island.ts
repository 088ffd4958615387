import type { ShopNumbers } from "@pinwright/book";
import type { Cap } from "@pinwright/kernel";
import type { Carried, LoadVolts, Spread, SupplyBudget } from "../../model/index.ts";
import type { Feed } from "../network/feeds.ts";
import type { IslandCircuit } from "../network/island-circuit.ts";
import type { Part, SourcePart } from "../network/parts.ts";
import { backVolts, forwardVolts, ohmOf } from "../network/values.ts";
import { CORNERS, same, spreadOf } from "./corners.ts";
import { heldMean, rmsOf, type UnitCurrents } from "./heating.ts";
import { type IslandState, islandState, modesOf } from "./island-state.ts";
import { joinRows, type Row, resistorRow, valueAt, voltsRow } from "./rows.ts";
import { type UnitSet, WorstSets } from "./worst.ts";

/** What is on in a moment of an island, beside what is on all the time: unit numbers of the machine. */
export interface IslandMoment {
  readonly id: string;
  readonly units: readonly number[];
}

/** Results of one island; moments are named by the subject that they are first worst for. */
export interface IslandSolution {
  readonly moments: ReadonlyMap<string, IslandMoment>;
  /** By wire, contact or element id. */
  readonly carried: ReadonlyMap<string, Carried>;
  readonly loads: ReadonlyMap<string, LoadVolts>;
  readonly supplies: ReadonlyMap<string, SupplyBudget>;
  readonly volts: ReadonlyMap<string, Spread>;
  /** Sum of the worst values found, and of what is left to their bounds. */
  readonly worst: { readonly value: number; readonly gap: number };
  /** Diodes and LEDs whose state was not settled at some corner, or is another one in some moment. */
  readonly unsettled: readonly string[];
}

/** Solves one island at every corner and in every moment that is the worst for something. */
export function solveIsland(
  network: IslandCircuit,
  caps: readonly Cap[],
  steady: readonly Feed[],
  returnOf: (node: string) => string | null,
  { numbers, lengthsMm }: { readonly numbers: ShopNumbers; readonly lengthsMm: ReadonlyMap<string, number> },
): IslandSolution {
  return new IslandSolver(network, caps, steady, returnOf, numbers, lengthsMm).solve();
}

type Rows = readonly Row[];

class IslandSolver {
  readonly #network: IslandCircuit;
  readonly #steady: readonly Feed[];
  readonly #returnOf: (node: string) => string | null;
  readonly #numbers: ShopNumbers;
  readonly #lengthsMm: ReadonlyMap<string, number>;
  readonly #states: readonly IslandState[];
  readonly #worst: WorstSets;
  /** Currents of each unit by itself, by corner. */
  readonly #units: readonly (readonly UnitCurrents[])[];
  readonly #momentOf = new Map<UnitSet, string>();
  readonly #moments = new Map<string, IslandMoment>();

  constructor(
    network: IslandCircuit,
    caps: readonly Cap[],
    steady: readonly Feed[],
    returnOf: (node: string) => string | null,
    numbers: ShopNumbers,
    lengthsMm: ReadonlyMap<string, number>,
  ) {
    this.#network = network;
    this.#steady = steady;
    this.#returnOf = returnOf;
    this.#numbers = numbers;
    this.#lengthsMm = lengthsMm;
    this.#states = CORNERS.map((corner) => islandState(network, { corner, numbers, lengthsMm }));
    this.#worst = new WorstSets(this.#states, network.units, caps);
    this.#units = this.#states.map((state) =>
      network.units.map((unit, u) => ({
        unit,
        pulse: modesOf(state, [u]),
        held: unit.holdPorts.length === 0 ? null : modesOf(state, [u], true),
      })),
    );
  }

  solve(): IslandSolution {
    const { joins, resistors, sources } = this.#network;
    const byJoin = this.#states.map(joinRows);
    const joinAt = (j: number): Rows =>
      byJoin.map((rows) => rows[j] ?? { base: 0, byMode: new Float64Array() });
    const supplies = new Map<string, SupplyBudget>();
    for (const source of sources) {
      if (source.supply === null) continue;
      supplies.set(source.supply.id, this.#budget(source.supply, source, joinAt(joins.indexOf(source))));
    }
    const loads = new Map<string, LoadVolts>();
    for (const feed of this.#steady) this.#addLoad(loads, feed, null);
    this.#network.units.forEach(({ unit }, u) => {
      for (const feed of unit.loads) this.#addLoad(loads, feed, u);
    });
    const carried = new Map<string, Carried>();
    joins.forEach((part, j) => {
      if (part.kind !== "source") carried.set(part.id, this.#carried(part, joinAt(j)));
    });
    resistors.forEach((part, r) => {
      if (!isConductor(part)) return;
      carried.set(
        part.id,
        this.#carried(
          part,
          this.#states.map((state) => resistorRow(state, r)),
        ),
      );
    });
    const volts = this.#volts();
    return {
      moments: this.#moments,
      carried,
      loads,
      supplies,
      volts,
      worst: this.#worst.optimum,
      unsettled: this.#unsettled(),
    };
  }

  /** The id of a set's moment: that of the first subject that it is the worst for. */
  #moment(set: UnitSet, subject: string): string {
    if (set.units.length === 0) return "always";
    const known = this.#momentOf.get(set);
    if (known !== undefined) return known;
    this.#momentOf.set(set, subject);
    const units = set.units.map((u) => this.#network.units[u]?.number ?? 0);
    this.#moments.set(subject, { id: subject, units });
    return subject;
  }

  #at(rows: Rows, set: UnitSet): (corner: number) => number {
    return (c) =>
      valueAt(rows[c] ?? { base: 0, byMode: new Float64Array() }, set.modes[c] ?? new Float64Array());
  }

  #carried(part: Part, rows: Rows): Carried {
    const [nominal] = rows;
    const set = nominal === undefined ? this.#worst.none : this.#worst.largest(nominal);
    const at = this.#at(rows, set);
    const ohms = CORNERS.map((corner) =>
      this.#network.joins.includes(part)
        ? 0
        : ohmOf(part, { corner, numbers: this.#numbers, lengthsMm: this.#lengthsMm }),
    );
    return {
      ohm: spreadOf((c) => ohms[c] ?? 0),
      rmsA: spreadOf((c) => rmsOf(rows[c] ?? { base: 0, byMode: new Float64Array() }, this.#units[c] ?? [])),
      peakA: spreadOf((c) => Math.abs(at(c))),
      dropV: spreadOf((c) => Math.abs(at(c)) * (ohms[c] ?? 0)),
      momentId: this.#moment(set, part.id),
    };
  }

  #budget(supply: NonNullable<SourcePart["supply"]>, source: SourcePart, into: Rows): SupplyBudget {
    // A join's current flows from the positive end through the source; what is delivered flows the other way.
    const rows = into.map(({ base, byMode }) => ({ base: -base, byMode: byMode.map((v) => -v) }));
    const nominal = rows[0] ?? { base: 0, byMode: new Float64Array() };
    const { set } = this.#worst.most(nominal, 1);
    const holds = this.#units.map((units, c) => units.map((unit) => heldMean(rows[c] ?? nominal, unit)));
    const held = this.#worst.heaviest(Float64Array.from(holds[0] ?? []), nominal.base, 1).set;
    const at = this.#at(rows, set);
    return {
      supplyId: supply.id,
      ratedA: supply.rated_a,
      steadyA: spreadOf((c) => rows[c]?.base ?? 0),
      rmsA: spreadOf((c) => rmsOf(rows[c] ?? nominal, this.#units[c] ?? [])),
      holdA: spreadOf(
        (c) => (rows[c]?.base ?? 0) + held.units.reduce((sum, u) => sum + (holds[c]?.[u] ?? 0), 0),
      ),
      worstA: spreadOf(at),
      momentId: this.#moment(set, supply.id),
      parts: this.#parts(source, set),
    };
  }

  /** What each load of a source draws in a moment at the nominal corner, largest first. */
  #parts(source: SourcePart, set: UnitSet): SupplyBudget["parts"] {
    const on = [...this.#steady, ...set.units.flatMap((u) => this.#network.units[u]?.unit.loads ?? [])];
    const parts = on.flatMap((feed) => {
      if (feed.source !== source) return [];
      const [state] = this.#states;
      const volts = state === undefined ? null : this.#loadRow(state, feed);
      if (state === undefined || volts === null) return [];
      const amps = this.#loadAmps(feed, 0, valueAt(volts, set.modes[0] ?? new Float64Array()));
      return [{ loadId: feed.load.id, amps }];
    });
    return parts.sort((a, b) => b.amps - a.amps || (a.loadId < b.loadId ? -1 : 1));
  }

  #loadRow(state: IslandState, { load, reversed }: Feed): Row | null {
    const a = this.#network.nodeOf.get(reversed ? load.b : load.a);
    const b = this.#network.nodeOf.get(reversed ? load.a : load.b);
    return a === undefined || b === undefined ? null : voltsRow(state, a, b);
  }

  /** Current of a load that is on, from the volts at its points. */
  #loadAmps({ load }: Feed, c: number, volts: number): number {
    const { row } = load.element;
    const corner = CORNERS[c];
    if (row.kind === "load" || corner === undefined) return row.amp ?? 0;
    const ohm = ohmOf(load, { corner, numbers: this.#numbers, lengthsMm: this.#lengthsMm });
    if (row.kind === "motor") return (volts - backVolts(row)) / ohm;
    if (row.kind === "led") return Math.max(0, volts - forwardVolts(row)) / ohm;
    return volts / ohm;
  }

  /** @param unit that switches it; null when it is on all the time */
  #addLoad(loads: Map<string, LoadVolts>, feed: Feed, unit: number | null): void {
    const rows = this.#states.flatMap((state) => this.#loadRow(state, feed) ?? []);
    const [nominal] = rows;
    if (nominal === undefined || rows.length < this.#states.length) return;
    const { row, itemId } = feed.load.element;
    const own = unit === null ? [] : [unit];
    const alone = this.#at(rows, this.#worst.setOf(own));
    const { set } = this.#worst.most(nominal, -1, own);
    const worst = this.#at(rows, set);
    const { supply, volts } = feed.source;
    loads.set(feed.load.id, {
      loadId: feed.load.id,
      itemId,
      supplyId: supply?.id ?? feed.source.id,
      // An LED with its resistor is made for the supply; a bare one for its forward voltage.
      nominalV: row.kind === "led" && (row.ohm ?? 0) > 0 ? volts : (row.volt ?? volts),
      aloneV: spreadOf(alone),
      worstV: spreadOf(worst),
      amps: spreadOf((c) => this.#loadAmps(feed, c, worst(c))),
      momentId: this.#moment(set, feed.load.id),
    });
  }

  #volts(): ReadonlyMap<string, Spread> {
    const { island, nodeOf } = this.#network;
    const volts = new Map<string, Spread>();
    for (const node of island.nodes) {
      const back = this.#returnOf(node);
      const [a, b] = [nodeOf.get(node) ?? 0, nodeOf.get(back ?? "") ?? 0];
      const rows = this.#states.map((state) => voltsRow(state, a, b));
      const [nominal] = rows;
      if (nominal === undefined) continue;
      const up = this.#at(rows, this.#worst.most(nominal, 1).set);
      const down = this.#at(rows, this.#worst.most(nominal, -1).set);
      const most = spreadOf((c) => Math.max(rows[c]?.base ?? 0, up(c)));
      const least = spreadOf((c) => Math.min(rows[c]?.base ?? 0, down(c)));
      volts.set(node, {
        nominal: nominal.base,
        least: least.least,
        leastAt: least.leastAt,
        most: most.most,
        mostAt: most.mostAt,
      });
    }
    for (const node of [...island.dangling.keys()].reverse()) {
      const known = volts.get(island.dangling.get(node) ?? "");
      volts.set(node, known ?? same(0));
    }
    return volts;
  }

  #unsettled(): readonly string[] {
    const wrong = new Set<string>();
    this.#states.forEach((state, c) => {
      for (const e of state.unsettled) wrong.add(this.#network.piecewise[e]?.part.id ?? "");
      const rows = this.#network.piecewise.map(({ resistor }) => {
        const [a, b] = this.#network.circuit.shape.resistors[resistor] ?? [0, 0];
        return voltsRow(state, a, b);
      });
      for (const set of this.#worst.sets.values()) {
        rows.forEach((row, e) => {
          const over =
            valueAt(row, set.modes[c] ?? new Float64Array()) - (state.values.piecewise[e]?.forwardV ?? 0);
          if (state.on[e] === 1 ? over < -1e-9 : over > 1e-9)
            wrong.add(this.#network.piecewise[e]?.part.id ?? "");
        });
      }
    });
    return [...wrong].sort();
  }
}

/** What has a result of its own as a conductor: not the loads, which have theirs. */
function isConductor(part: Part): boolean {
  if (part.kind !== "element") return true;
  const { kind } = part.element.row;
  return kind === "link" || kind === "resistor" || kind === "fuse" || kind === "driver" || kind === "contact";
}
