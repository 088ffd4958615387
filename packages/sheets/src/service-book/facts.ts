import {
  type FastenerItem,
  type HarnessResult,
  type Item,
  type Landing,
  type LineResult,
  type PlacedElement,
  type ProgramPoint,
  programMap,
  type SizedWire,
} from "@pinwright/engine";
import { type Power, powerOf } from "../circuits/index.ts";
import { wireNo } from "../facts.ts";
import { type FuseFacts, fusesOf } from "../supply-schedule/fuses.ts";

/** A wire with the harness that it lies in. */
export interface OwnWire {
  readonly wire: SizedWire;
  readonly harness: HarnessResult;
  /** As on its label. */
  readonly number: string;
}

/** What the chapters look up, worked out once for a machine. */
export interface ServiceFacts {
  readonly power: Power;
  readonly fuses: readonly FuseFacts[];
  /** Nearest fuse before a load, by load. */
  readonly fuseOf: ReadonlyMap<string, FuseFacts>;
  /** Wires by the point that they end on. */
  readonly wiresAt: ReadonlyMap<string, readonly OwnWire[]>;
  readonly landingsOf: ReadonlyMap<string, readonly Landing[]>;
  /** Points of boards that drive or read a device, by device. */
  readonly programOf: ReadonlyMap<string, readonly ProgramPoint[]>;
  /** Devices of a mechanism. */
  readonly childrenOf: ReadonlyMap<string, readonly Item[]>;
  /** Elements by the item that they are in. */
  readonly elementsOf: ReadonlyMap<string, readonly PlacedElement[]>;
  /** Classes of the nets that an item is on. */
  readonly classesOf: ReadonlyMap<string, ReadonlySet<string>>;
  /** Fasteners by what they hold. */
  readonly fastenersOf: ReadonlyMap<string, readonly FastenerItem[]>;
}

function grouped<T>(list: Iterable<T>, keyOf: (each: T) => string | null): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const each of list) {
    const key = keyOf(each);
    if (key === null) continue;
    const own = groups.get(key);
    if (own === undefined) groups.set(key, [each]);
    else own.push(each);
  }
  return groups;
}

/** The mechanism or item that is taken out as a whole. */
const unitId = (id: string): string => id.split("/")[0] ?? id;

export function serviceFacts(line: LineResult): ServiceFacts {
  const { machine } = line;
  const power = powerOf(line);
  const fuses = power.supplies.flatMap((node) => fusesOf(node, line.ratings.fuses));
  const wires = [...line.harnesses.values()].flatMap((harness) =>
    harness.wires.map((wire): OwnWire => ({ wire, harness, number: wireNo(harness, wire.number) })),
  );
  const ends = wires.flatMap((own) => [
    { end: own.wire.a, own },
    { end: own.wire.b, own },
  ]);
  const wiresAt = new Map(
    [...grouped(ends, ({ end }) => end)].map(([end, list]) => [end, list.map(({ own }) => own)] as const),
  );
  const items = [...machine.items.values()];
  const classesOf = new Map<string, Set<string>>();
  for (const end of machine.ends) {
    const itemId = machine.points.get(end.point)?.itemId ?? "";
    const own = classesOf.get(itemId) ?? new Set();
    own.add(machine.nets.get(end.net)?.class ?? "");
    classesOf.set(itemId, own);
  }
  return {
    power,
    fuses,
    fuseOf: new Map(fuses.flatMap((fuse) => fuse.node.loadIds.map((id) => [id, fuse] as const))),
    wiresAt,
    landingsOf: grouped(machine.landings.values(), (landing) => landing.itemId),
    programOf: grouped(programMap(machine), (point) => point.deviceId),
    childrenOf: grouped(
      items.filter((item) => item.kind !== "fastener"),
      (item) => item.parentId,
    ),
    elementsOf: grouped(machine.elements, (element) => element.itemId),
    classesOf,
    fastenersOf: grouped(
      items.flatMap((item) => (item.kind === "fastener" ? [item] : [])),
      (item) => (item.holds === null ? item.parentId : unitId(item.holds)),
    ),
  };
}
