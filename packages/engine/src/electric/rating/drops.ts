import { compareText } from "@pinwright/kernel";
import type {
  DropSection,
  ElectricSolution,
  HarnessResult,
  Machine,
  NetDrop,
  SizedWire,
} from "../../model/index.ts";
import { linkedPoints, mateOf, netIndex } from "../../wire/index.ts";
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
  const drops = new Map<string, NetDrop>();
  for (const [netId, wires] of byNet) {
    const net = machine.nets.get(netId);
    const nominalV = Math.abs(net?.volts || supplies.get(net?.supply ?? "")?.volts || 0);
    if (net?.max_drop_pct == null || nominalV === 0) continue;
    const drop = netDrop(machine, solution, netId, wires);
    if (drop !== null) drops.set(netId, { ...drop, nominalV, limitV: (nominalV * net.max_drop_pct) / 100 });
  }
  return drops;
}

type Found = Omit<NetDrop, "nominalV" | "limitV">;

function netDrop(
  machine: Machine,
  solution: Pick<ElectricSolution, "volts" | "wires">,
  netId: string,
  wires: readonly SizedWire[],
): Found | null {
  const isReturn = (machine.nets.get(netId)?.volts ?? 0) === 0;
  const voltsAt = (pointId: string): number | null => {
    const spread = solution.volts.get(itemNode(pointId));
    return spread === undefined ? null : isReturn ? spread.most : spread.least;
  };
  const points = [...new Set(wires.flatMap(({ a, b }) => [a, b]))]
    .filter((id) => machine.points.has(id))
    .sort(compareText);
  const known = points.flatMap((pointId) => {
    const volts = voltsAt(pointId);
    return volts === null ? [] : [{ pointId, volts }];
  });
  // A feed is fed where its voltage is highest; a return leads to where it is lowest.
  const by = (p: { volts: number }, q: { volts: number }): number =>
    isReturn ? p.volts - q.volts : q.volts - p.volts;
  const sorted = known.toSorted(by);
  const [from, to] = [sorted[0], sorted.at(-1)];
  if (from === undefined || to === undefined || from === to) return null;
  return {
    netId,
    fromPointId: from.pointId,
    toPointId: to.pointId,
    dropV: Math.abs(from.volts - to.volts),
    sections: wayAlong(machine, wires, from.pointId, to.pointId).map((wire) => sectionOf(solution, wire)),
  };
}

function sectionOf(solution: Pick<ElectricSolution, "wires">, wire: SizedWire): DropSection {
  const carried = solution.wires.get(wire.id);
  const [amps, ohm] = [carried?.peakA.most ?? 0, carried?.ohm.most ?? 0];
  return { wireId: wire.id, amps, ohm, dropV: amps * ohm };
}

/** Wires of a net on the way with fewest of them between two points, over links and the mates of in-line contacts. */
function wayAlong(
  machine: Machine,
  wires: readonly SizedWire[],
  from: string,
  to: string,
): readonly SizedWire[] {
  const index = netIndex(machine);
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
