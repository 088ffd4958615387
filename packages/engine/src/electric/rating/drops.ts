import { compareText } from "@pinwright/kernel";
import type {
  DropSection,
  ElectricSolution,
  HarnessResult,
  Machine,
  NetDrop,
  SizedWire,
} from "../../model/index.ts";
import { linkedPoints, mateOf, type NetIndex, netIndex } from "../../wire/index.ts";
import { itemNode } from "../network/parts.ts";

type Harnesses = ReadonlyMap<string, Pick<HarnessResult, "wires">>;

/**
 * For each net with a drop limit the end with the largest drop from where the net is fed, at the worst corner and
 * moment, with the wires on the way there. Of a feed the lowest voltages count, of a return the highest.
 */
export function rateDrops(
  machine: Machine,
  harnesses: Harnesses,
  solution: Pick<ElectricSolution, "volts" | "wires">,
): ReadonlyMap<string, NetDrop> {
  const supplies = new Map(machine.book.tables.supplies.map((supply) => [supply.id, supply]));
  const byNet = new Map<string, SizedWire[]>();
  for (const { wires } of harnesses.values())
    for (const wire of wires) {
      const own = byNet.get(wire.netId);
      if (own === undefined) byNet.set(wire.netId, [wire]);
      else own.push(wire);
    }
  const index = netIndex(machine);
  const drops = new Map<string, NetDrop>();
  for (const [netId, wires] of byNet) {
    const net = machine.nets.get(netId);
    const nominalV = Math.abs(net?.volts || supplies.get(net?.supply ?? "")?.volts || 0);
    if (net?.max_drop_pct == null || nominalV === 0) continue;
    const drop = netDrop({ machine, index, solution }, netId, wires);
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
  readonly index: NetIndex;
  readonly solution: Pick<ElectricSolution, "volts" | "wires">;
}

function netDrop(task: Task, netId: string, wires: readonly SizedWire[]): Found | null {
  const { machine, solution } = task;
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
    sections: wayAlong(task, wires, from.pointId, to.pointId).map((wire) => sectionOf(solution, wire)),
  };
}

function sectionOf(solution: Pick<ElectricSolution, "wires">, wire: SizedWire): DropSection {
  const carried = solution.wires.get(wire.id);
  const [amps, ohm] = [carried?.peakA.most ?? 0, carried?.ohm.most ?? 0];
  return { wireId: wire.id, amps, ohm, dropV: amps * ohm };
}

/** Wires of a net on the way with fewest of them between two points, over links and the mates of in-line contacts. */
function wayAlong(
  { machine, index }: Task,
  wires: readonly SizedWire[],
  from: string,
  to: string,
): readonly SizedWire[] {
  const at = new Map<string, SizedWire[]>();
  for (const wire of wires)
    for (const end of [wire.a, wire.b]) {
      const list = at.get(end);
      if (list === undefined) at.set(end, [wire]);
      else list.push(wire);
    }
  const by = new Map<string, { readonly from: string; readonly wire: SizedWire | null }>();
  const seen = new Set([from]);
  for (const here of seen) {
    const step = (next: string, wire: SizedWire | null): void => {
      if (seen.has(next)) return;
      seen.add(next);
      by.set(next, { from: here, wire });
    };
    const mate = machine.points.has(here) ? mateOf(machine, here) : null;
    for (const joined of [...linkedPoints(index, here), ...(mate === null ? [] : [mate])]) step(joined, null);
    for (const wire of at.get(here) ?? []) step(wire.a === here ? wire.b : wire.a, wire);
  }
  const way: SizedWire[] = [];
  for (let step = by.get(to); step !== undefined; step = by.get(step.from))
    if (step.wire !== null) way.push(step.wire);
  return way.reverse();
}
