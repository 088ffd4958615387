import { compareText } from "@pinwright/kernel";
import type { DropSection, ElectricSolution, Machine, NetDrop, SizedWire } from "../../model/index.ts";
import { linkedPoints, mateOf, type NetIndex, netIndex } from "../../wire/index.ts";
import { itemNode } from "../network/parts.ts";

type NetWire = Pick<SizedWire, "id" | "netId" | "a" | "b">;

/** Wires of the nets that have a drop limit, and the ways along them that were found so far. */
export class LimitedNets {
  readonly index: NetIndex;
  readonly wires = new Map<string, NetWire[]>();
  readonly #machine: Machine;
  readonly #ways = new Map<string, readonly NetWire[]>();

  constructor(machine: Machine, wires: Iterable<NetWire>) {
    this.#machine = machine;
    this.index = netIndex(machine);
    for (const wire of wires) {
      if (machine.nets.get(wire.netId)?.max_drop_pct == null) continue;
      const own = this.wires.get(wire.netId);
      if (own === undefined) this.wires.set(wire.netId, [wire]);
      else own.push(wire);
    }
  }

  /** Wires of a net on the way with fewest of them between two points. */
  way(netId: string, from: string, to: string): readonly NetWire[] {
    const key = `${netId} ${from} ${to}`;
    const known = this.#ways.get(key);
    if (known !== undefined) return known;
    const way = wayAlong(this.#machine, this.index, this.wires.get(netId) ?? [], from, to);
    this.#ways.set(key, way);
    return way;
  }
}

/**
 * For each net with a drop limit the end with the largest drop from where the net is fed, at the worst corner and
 * moment, with the wires on the way there. Of a feed the lowest voltages count, of a return the highest.
 */
export function rateDrops(
  machine: Machine,
  limited: LimitedNets,
  solution: Pick<ElectricSolution, "volts" | "wires">,
): ReadonlyMap<string, NetDrop> {
  const supplies = new Map(machine.book.tables.supplies.map((supply) => [supply.id, supply]));
  const drops = new Map<string, NetDrop>();
  for (const netId of limited.wires.keys()) {
    const net = machine.nets.get(netId);
    const nominalV = Math.abs(net?.volts || supplies.get(net?.supply ?? "")?.volts || 0);
    if (net?.max_drop_pct == null || nominalV === 0) continue;
    const drop = netDrop({ machine, limited, solution }, netId);
    if (drop !== null) drops.set(netId, { ...drop, nominalV, limitV: (nominalV * net.max_drop_pct) / 100 });
  }
  return drops;
}

type Found = Omit<NetDrop, "nominalV" | "limitV">;

interface At {
  readonly pointId: string;
  readonly level: number;
}

const isFirst = (p: At, q: At): boolean => p.level === q.level && compareText(p.pointId, q.pointId) < 0;

interface Task {
  readonly machine: Machine;
  readonly limited: LimitedNets;
  readonly solution: Pick<ElectricSolution, "volts" | "wires">;
}

function netDrop({ machine, limited, solution }: Task, netId: string): Found | null {
  const wires = limited.wires.get(netId) ?? [];
  const isReturn = (machine.nets.get(netId)?.volts ?? 0) === 0;
  const voltsAt = (pointId: string): number | null => {
    const spread = solution.volts.get(itemNode(pointId));
    return spread === undefined ? null : isReturn ? spread.most : spread.least;
  };
  // A feed is fed where its voltage is highest; a return leads to where it is lowest.
  let [from, to]: [At | null, At | null] = [null, null];
  for (const wire of wires)
    for (const pointId of [wire.a, wire.b]) {
      const volts = machine.points.has(pointId) ? voltsAt(pointId) : null;
      if (volts === null) continue;
      const at = { pointId, level: isReturn ? -volts : volts };
      if (from === null || at.level > from.level || isFirst(at, from)) from = at;
      if (to === null || at.level < to.level || isFirst(at, to)) to = at;
    }
  if (from === null || to === null || from.level === to.level) return null;
  return {
    netId,
    fromPointId: from.pointId,
    toPointId: to.pointId,
    dropV: from.level - to.level,
    sections: limited.way(netId, from.pointId, to.pointId).map((wire) => sectionOf(solution, wire)),
  };
}

function sectionOf(solution: Pick<ElectricSolution, "wires">, wire: NetWire): DropSection {
  const carried = solution.wires.get(wire.id);
  const [amps, ohm] = [carried?.peakA.most ?? 0, carried?.ohm.most ?? 0];
  return { wireId: wire.id, amps, ohm, dropV: amps * ohm };
}

/** Wires of a net on the way with fewest of them between two points, over links and the mates of in-line contacts. */
function wayAlong(
  machine: Machine,
  index: NetIndex,
  wires: readonly NetWire[],
  from: string,
  to: string,
): readonly NetWire[] {
  const at = new Map<string, NetWire[]>();
  for (const wire of wires)
    for (const end of [wire.a, wire.b]) {
      const list = at.get(end);
      if (list === undefined) at.set(end, [wire]);
      else list.push(wire);
    }
  const by = new Map<string, { readonly from: string; readonly wire: NetWire | null }>();
  const seen = new Set([from]);
  for (const here of seen) {
    const step = (next: string, wire: NetWire | null): void => {
      if (seen.has(next)) return;
      seen.add(next);
      by.set(next, { from: here, wire });
    };
    const mate = machine.points.has(here) ? mateOf(machine, here) : null;
    for (const joined of [...linkedPoints(index, here), ...(mate === null ? [] : [mate])]) step(joined, null);
    for (const wire of at.get(here) ?? []) step(wire.a === here ? wire.b : wire.a, wire);
  }
  const way: NetWire[] = [];
  for (let step = by.get(to); step !== undefined; step = by.get(step.from))
    if (step.wire !== null) way.push(step.wire);
  return way.reverse();
}
