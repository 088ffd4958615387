import { compareText, UnionFind } from "@pinwright/kernel";
import { benchGraph, wireEntryCell } from "../../lists/index.ts";
import type { HarnessResult, Machine } from "../../model/index.ts";

/** A place that a tester makes contact with: a cavity of a housing, or an end that hangs free. */
export interface TestPlace {
  /** Id of the spot as in the continuity list; of a cavity without a wire, its point. */
  readonly id: string;
  readonly pointId: string;
  readonly landingId: string;
  readonly loose: boolean;
  /** Where it is in its housing, seen from the wires. */
  readonly column: number;
  readonly row: number;
  /** Numbers of the wires that belong there; none in an empty cavity. */
  readonly wires: readonly number[];
}

export interface BenchWire {
  readonly id: string;
  readonly number: number;
  readonly netId: string;
  /** Spots or splices. */
  readonly a: string;
  readonly b: string;
}

/** A harness on the tester: every place is tried against all others. */
export interface TestBench {
  readonly harnessId: string;
  /** In code-point order of their ids. */
  readonly places: readonly TestPlace[];
  readonly wires: readonly BenchWire[];
  readonly splices: readonly string[];
}

/** Something that is wrong with a harness. */
export type HarnessFault =
  /** The wire was never laid. */
  | { readonly kind: "missing-wire"; readonly wireId: string }
  /** The wire makes no contact at this end. */
  | { readonly kind: "open"; readonly wireId: string; readonly at: string }
  /** The contact is not in its cavity, or not crimped at all: none of its wires is reached. */
  | { readonly kind: "contact-out"; readonly at: string }
  /** Two places touch that must not. */
  | { readonly kind: "short"; readonly a: string; readonly b: string }
  /** Two contacts have changed places. */
  | { readonly kind: "swapped"; readonly a: string; readonly b: string }
  /** A contact sits in a cavity that stays empty. */
  | { readonly kind: "wrong-cavity"; readonly contact: string; readonly cavity: string };

/** Everything that a tester can reach on a harness: the cavities of its housings, empty ones too, and its free ends. */
export function testBench(machine: Machine, harness: HarnessResult): TestBench {
  const graph = benchGraph(machine, harness);
  const places = new Map<string, TestPlace>();
  const place = (id: string, pointId: string, loose: boolean, wires: readonly number[]): void => {
    const point = machine.points.get(pointId);
    const landing = machine.landings.get(point?.landingId ?? "");
    const cell =
      landing === undefined || point?.pin === null || point === undefined
        ? { column: 0, row: 0 }
        : wireEntryCell(machine, landing, point.pin);
    places.set(id, { id, pointId, landingId: landing?.id ?? "", loose, ...cell, wires });
  };
  for (const spot of graph.spots.values()) place(spot.id, spot.pointId, spot.loose, spot.wires);
  for (const landingId of harness.landingIds) {
    const landing = machine.landings.get(landingId);
    if (landing === undefined || landing.connector === null) continue;
    for (const pointId of landing.pointIds) {
      const point = machine.points.get(pointId);
      const isBlocked = point?.use === "key" || landing.keyPins.includes(point?.pin ?? 0);
      if (!isBlocked && !places.has(pointId)) place(pointId, pointId, false, []);
    }
  }
  const wires = new Map<string, BenchWire>();
  for (const list of graph.wiresAt.values())
    for (const wire of list) {
      const { id, number, netId } = wire;
      wires.set(id, { id, number, netId, a: graph.nodeOf(wire, wire.a), b: graph.nodeOf(wire, wire.b) });
    }
  return {
    harnessId: harness.harness.id,
    places: [...places.values()].sort((a, b) => compareText(a.id, b.id)),
    wires: [...wires.values()].sort((a, b) => compareText(a.id, b.id)),
    splices: [...graph.wiresAt.keys()].filter((id) => !graph.spots.has(id)).sort(compareText),
  };
}

/** Number of the group that each place is in, by its index in the bench: places with one number are joined. */
export type Groups = readonly number[];

/** Gives groups their numbers in the order of their first places, so that equal partitions are equal lists. */
export function numberedGroups(rough: readonly number[]): Groups {
  const numbers = new Map<number, number>();
  return rough.map((group) => {
    const known = numbers.get(group) ?? numbers.size;
    numbers.set(group, known);
    return known;
  });
}

/** What a tester would read on a harness with these faults. */
export class BenchModel {
  readonly bench: TestBench;
  readonly #index: ReadonlyMap<string, number>;
  readonly #places: number;
  readonly #sets: UnionFind;

  constructor(bench: TestBench) {
    this.bench = bench;
    this.#places = bench.places.length;
    // Cavities come first; a contact or splice is a node of its own behind them.
    const nodes = [...bench.places.map(({ id }) => id), ...bench.splices];
    this.#index = new Map(nodes.map((id, i) => [id, this.#places + i]));
    this.#sets = new UnionFind(this.#places + nodes.length);
  }

  /** Index of a place in the bench; -1 for what is none. */
  placeIndex(id: string): number {
    const node = this.#index.get(id);
    return node === undefined || node >= 2 * this.#places ? -1 : node - this.#places;
  }

  groups(faults: readonly HarnessFault[]): Groups {
    const sets = this.#sets;
    sets.reset();
    const missing = new Set<string>();
    const open = new Set<string>();
    const cavityOf = new Map<number, number>();
    for (const fault of faults) {
      if (fault.kind === "missing-wire") missing.add(fault.wireId);
      else if (fault.kind === "open") open.add(`${fault.wireId} ${fault.at}`);
      else if (fault.kind === "contact-out") cavityOf.set(this.#node(fault.at), -1);
      else if (fault.kind === "wrong-cavity")
        cavityOf.set(this.#node(fault.contact), this.placeIndex(fault.cavity));
      else if (fault.kind === "swapped") {
        cavityOf.set(this.#node(fault.a), this.placeIndex(fault.b));
        cavityOf.set(this.#node(fault.b), this.placeIndex(fault.a));
      }
    }
    for (const wire of this.bench.wires) {
      if (missing.has(wire.id)) continue;
      if (open.size > 0 && (open.has(`${wire.id} ${wire.a}`) || open.has(`${wire.id} ${wire.b}`))) continue;
      sets.join(this.#node(wire.a), this.#node(wire.b));
    }
    for (let i = 0; i < this.#places; i++) {
      const cavity = cavityOf.get(this.#places + i) ?? i;
      if (cavity >= 0) sets.join(cavity, this.#places + i);
    }
    for (const fault of faults)
      if (fault.kind === "short") sets.join(this.placeIndex(fault.a), this.placeIndex(fault.b));
    return numberedGroups(Array.from({ length: this.#places }, (_, i) => sets.find(i)));
  }

  #node(id: string): number {
    return this.#index.get(id) ?? 0;
  }
}
