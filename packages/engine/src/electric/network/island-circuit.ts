import type { ShopNumbers } from "@pinwright/book";
import { Circuit, type NodePair, type PiecewiseElement, SharedMemory } from "@pinwright/kernel";
import type { Corner } from "../../model/index.ts";
import type { Feed } from "./feeds.ts";
import type { Island } from "./islands.ts";
import type { ElementPart, Part, SourcePart } from "./parts.ts";
import { seriesOf } from "./series.ts";
import type { Unit, Units } from "./units.ts";
import {
  type Behaviour,
  BLOCKED_SIEMENS,
  backVolts,
  behaviourOf,
  cornerFactors,
  forwardVolts,
  isJoint,
  OPEN_SIEMENS,
  sourceVolts,
} from "./values.ts";

/** A driver or contact that a unit closes: open it is a leak, closed its resistance. */
interface Port {
  readonly part: ElementPart;
  readonly resistor: number;
  readonly from: number;
  readonly to: number;
}

/** A unit of an island: its ports, and its loads that are not plain resistances. */
export interface IslandUnit {
  readonly unit: Unit;
  /** Number of it among all units of the machine. */
  readonly number: number;
  readonly ports: readonly number[];
  readonly holdPorts: readonly number[];
}

/** An island as a circuit: numbered nodes, and which part is which join or resistor. */
export interface IslandCircuit {
  readonly island: Island;
  readonly circuit: Circuit;
  readonly nodeOf: ReadonlyMap<string, number>;
  readonly joins: readonly Part[];
  readonly resistors: readonly Part[];
  /** What each resistor's resistance changes with. */
  readonly behaviours: readonly Behaviour[];
  /** Number of the resistor that a part is. */
  readonly resistorOf: ReadonlyMap<string, number>;
  /** Constant currents of boards. */
  readonly steadyLoads: readonly Feed[];
  /** Diodes and LEDs, by resistor. One that a unit switches conducts what its open driver leaks while it is off. */
  readonly piecewise: readonly { readonly part: ElementPart; readonly resistor: number }[];
  readonly steadyMotors: readonly { readonly feed: Feed; readonly resistor: number }[];
  readonly ports: readonly Port[];
  readonly units: readonly IslandUnit[];
  readonly sources: readonly SourcePart[];
  /** Loads that are on all the time. */
  readonly steady: readonly Feed[];
  readonly caps: Units["caps"];
  /** For each part of the island the first of those in series with it. */
  readonly series: Int32Array;
}

/** Where a machine's units and its feeds that are always on are found: each island looks up only its own. */
interface UnitIndex {
  /** Numbers of the units that a switch belongs to. */
  readonly bySwitch: ReadonlyMap<string, readonly number[]>;
  /** Numbers of the steady feeds by the first node of their load. */
  readonly byNode: ReadonlyMap<string, readonly number[]>;
}

const indexes = new SharedMemory<Units, UnitIndex>();

const indexOf = (units: Units): UnitIndex =>
  indexes.ask(units, [], () => {
    const bySwitch = new Map<string, number[]>();
    const byNode = new Map<string, number[]>();
    const add = (map: Map<string, number[]>, key: string, n: number): void => {
      const list = map.get(key);
      if (list === undefined) map.set(key, [n]);
      else list.push(n);
    };
    for (const [n, unit] of units.units.entries())
      for (const { id } of new Set([...unit.switches, ...unit.holdSwitches])) add(bySwitch, id, n);
    for (const [n, { load }] of units.steady.entries()) add(byNode, load.a, n);
    return { bySwitch, byNode };
  });

/** Those of `all` whose numbers a key of the island leads to, in their own order. */
function ownOf<T>(
  all: readonly T[],
  keys: Iterable<string>,
  index: ReadonlyMap<string, readonly number[]>,
): readonly (readonly [number, T])[] {
  const numbers = new Set<number>();
  for (const key of keys) for (const n of index.get(key) ?? []) numbers.add(n);
  return [...numbers]
    .sort((p, q) => p - q)
    .flatMap((n) => {
      const one = all[n];
      return one === undefined ? [] : [[n, one] as const];
    });
}

/** The circuit of an island; the return of its first source is at 0 V. */
export function islandCircuit(island: Island, all: Units): IslandCircuit {
  const index = indexOf(all);
  const nodeOf = new Map(island.nodes.map((node, n) => [node, n]));
  const at = (node: string): number => nodeOf.get(node) ?? 0;
  const joins: Part[] = [];
  const resistors: Part[] = [];
  const loads = new Set<string>();
  for (const part of island.parts) {
    if (part.kind === "source" || isJoint(part)) joins.push(part);
    else if (part.kind === "element" && part.element.row.kind === "load") loads.add(part.id);
    else resistors.push(part);
  }
  const resistorOf = new Map(resistors.map((part, r) => [part.id, r]));
  const pair = ({ a, b }: Part): NodePair => [at(a), at(b)];
  const sources = island.parts.filter((part) => part.kind === "source");
  const first = sources.find((source) => source.id === island.id);
  const portOf = new Map<string, number>();
  const ports: Port[] = [];
  const portsOf = (switches: readonly ElementPart[]): readonly number[] =>
    switches.flatMap((part) => {
      const resistor = resistorOf.get(part.id);
      if (resistor === undefined) return [];
      const known = portOf.get(part.id);
      if (known !== undefined) return [known];
      const [from, to] = pair(part);
      portOf.set(part.id, ports.length);
      ports.push({ part, resistor, from, to });
      return [ports.length - 1];
    });
  const units = ownOf(all.units, resistorOf.keys(), index.bySwitch);
  const steady = ownOf(all.steady, island.nodes, index.byNode).flatMap(([, feed]) =>
    nodeOf.has(feed.load.b) ? [feed] : [],
  );
  const own = units.flatMap(([number, unit]): readonly IslandUnit[] => {
    const unitPorts = portsOf(unit.switches);
    return unitPorts.length === 0
      ? []
      : [{ unit, number, ports: unitPorts, holdPorts: portsOf(unit.holdSwitches) }];
  });
  return {
    island,
    circuit: new Circuit({
      nodes: island.nodes.length,
      reference: first === undefined ? 0 : at(first.b),
      joins: joins.map(pair),
      resistors: resistors.map(pair),
    }),
    nodeOf,
    joins,
    resistors,
    behaviours: resistors.map(behaviourOf),
    resistorOf,
    steadyLoads: steady.filter((feed) => loads.has(feed.load.id)),
    piecewise: resistors.flatMap((part, resistor) => {
      if (part.kind !== "element") return [];
      const { kind } = part.element.row;
      return kind === "led" || kind === "diode" ? [{ part, resistor }] : [];
    }),
    steadyMotors: steady.flatMap((feed) => {
      const resistor = resistorOf.get(feed.load.id);
      return feed.load.element.row.kind === "motor" && resistor !== undefined ? [{ feed, resistor }] : [];
    }),
    ports,
    units: own,
    sources,
    steady,
    caps: all.caps,
    series: seriesOf(island.parts),
  };
}

/** Values of an island's joins and resistors with every unit off; those of diodes come with their elements. */
export interface IslandValues {
  readonly siemens: Float64Array;
  readonly joinVolts: Float64Array;
  /** Currents injected by what is on all the time. */
  readonly amps: Float64Array;
  readonly piecewise: readonly PiecewiseElement[];
  /** Ω of each port that, beside the leak that it is when open, makes its resistance when closed. */
  readonly portOhm: Float64Array;
}

/**
 * @param ohms of the island's resistors at the nominal corner
 * @param corner whose values are wanted
 */
export function islandValues(
  network: IslandCircuit,
  ohms: Float64Array,
  corner: Corner,
  numbers: ShopNumbers,
): IslandValues {
  const siemens = new Float64Array(ohms.length);
  const factors = cornerFactors(corner, numbers);
  for (let r = 0; r < ohms.length; r++)
    siemens[r] = 1 / ((ohms[r] ?? 1) * factors[network.behaviours[r] ?? "fixed"]);
  const portOhm = Float64Array.from(
    network.ports,
    ({ resistor }) => 1 / ((siemens[resistor] ?? 1) - OPEN_SIEMENS),
  );
  for (const { resistor } of network.ports) siemens[resistor] = OPEN_SIEMENS;
  const amps = new Float64Array(network.island.nodes.length);
  for (const feed of network.steadyLoads) drawAmps(network, amps, feed, feed.load.element.row.amp ?? 0);
  for (const { feed, resistor } of network.steadyMotors)
    drawAmps(network, amps, feed, -(siemens[resistor] ?? 0) * backVolts(feed.load.element.row));
  return {
    siemens,
    joinVolts: Float64Array.from(network.joins, (part) =>
      part.kind === "source" ? sourceVolts(part, corner) : 0,
    ),
    amps,
    piecewise: network.piecewise.map(({ part, resistor }) => ({
      resistor,
      forwardV: forwardVolts(part.element.row),
      onSiemens: siemens[resistor] ?? 0,
      leakSiemens: BLOCKED_SIEMENS,
    })),
    portOhm,
  };
}

/** What a unit's loads draw at once when it is on, beside what passes its ports: back voltages and steady currents. */
export function unitAmps(
  network: IslandCircuit,
  values: IslandValues,
  { unit }: IslandUnit,
): Float64Array | null {
  let amps: Float64Array | null = null;
  for (const feed of unit.loads) {
    const { row } = feed.load.element;
    const held = row.kind === "motor" ? backVolts(row) : 0;
    const siemens = held === 0 ? 0 : (values.siemens[network.resistorOf.get(feed.load.id) ?? -1] ?? 0);
    const drawn = row.kind === "load" ? (row.amp ?? 0) : -siemens * held;
    if (drawn === 0) continue;
    amps ??= new Float64Array(network.island.nodes.length);
    drawAmps(network, amps, feed, drawn);
  }
  return amps;
}

/** Adds a current that a load draws from its positive end to its negative one. */
function drawAmps({ nodeOf }: IslandCircuit, amps: Float64Array, feed: Feed, drawn: number): void {
  const { a, b } = feed.load;
  const [from, to] = feed.reversed ? [b, a] : [a, b];
  const [p, q] = [nodeOf.get(from), nodeOf.get(to)];
  if (p === undefined || q === undefined) return;
  amps[p] = (amps[p] ?? 0) - drawn;
  amps[q] = (amps[q] ?? 0) + drawn;
}
