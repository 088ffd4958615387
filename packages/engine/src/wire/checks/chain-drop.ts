import { compareText } from "@pinwright/kernel";
import {
  type Finding,
  type HarnessWires,
  type Machine,
  makeFinding,
  type Place,
  straightDistances,
  type Wire,
} from "../../model/index.ts";
import { feedPoint } from "../feed.ts";
import { linkedPoints, type NetIndex, netIndex } from "../net-index.ts";
import { dropLimitMm } from "../solve.ts";

/** A memory of what was found of the nets of one harness. */
export type DropMemory = (netId: string, find: () => Finding | null) => Finding | null;

/**
 * `chain-drop`: within one harness the far end of a net lies farther along its wires, straight measured, than its
 * drop limit allows when its whole current flows to that end.
 */
export function chainDrop(
  machine: Machine,
  { harnessId, wires }: Pick<HarnessWires, "harnessId" | "wires">,
  remember: DropMemory = (_, find) => find(),
): readonly Finding[] {
  const byNet = new Map<string, Wire[]>();
  for (const wire of wires) {
    const own = byNet.get(wire.netId);
    if (own === undefined) byNet.set(wire.netId, [wire]);
    else own.push(wire);
  }
  return [...byNet].flatMap(
    ([netId, own]) => remember(netId, () => netDrop(machine, netId, harnessId, own)) ?? [],
  );
}

function netDrop(machine: Machine, netId: string, harnessId: string, own: readonly Wire[]): Finding | null {
  const limitMm = dropLimitMm(machine, netId);
  if (limitMm === Number.POSITIVE_INFINITY) return null;
  const mm = Math.round(farthestMm(machine, netIndex(machine), own, straightDistances(machine)));
  if (mm <= Math.floor(limitMm)) return null;
  return makeFinding("chain-drop", "warning", [netId, harnessId], {
    length_mm: mm,
    limit_mm: Math.floor(limitMm),
    drop_limit_pct: machine.nets.get(netId)?.max_drop_pct ?? 0,
  });
}

/** Longest way along the wires of one net in one harness from where it is fed, in mm. */
function farthestMm(
  machine: Machine,
  index: NetIndex,
  wires: readonly Wire[],
  distance: (a: Place, b: Place) => number,
): number {
  const next = new Map<string, string[]>();
  for (const wire of wires) {
    for (const [from, to] of [
      [wire.a, wire.b],
      [wire.b, wire.a],
    ] as const) {
      const list = next.get(from);
      if (list === undefined) next.set(from, [to]);
      else list.push(to);
    }
  }
  // A splice is measured at the first of the points beside it.
  const places = new Map<string, Place | null>();
  const placeOf = (end: string): Place | null => {
    const known = places.get(end);
    if (known !== undefined) return known;
    const beside = [end, ...[...(next.get(end) ?? [])].sort(compareText)];
    const landing = beside.flatMap((id) => machine.points.get(id)?.landingId ?? [])[0];
    const place = machine.landings.get(landing ?? "")?.place ?? null;
    places.set(end, place);
    return place;
  };
  const stepMm = (a: string, b: string): number => {
    const [p, q] = [placeOf(a), placeOf(b)];
    return p === null || q === null ? 0 : distance(p, q);
  };
  const feed = feedPoint(machine, index, wires[0]?.netId ?? "", wires[0]?.harnessId ?? "");
  if (feed === null) return 0;
  const far = new Map([[feed, 0]]);
  const todo = [feed];
  const reach = (to: string, mm: number): void => {
    if (mm >= (far.get(to) ?? Number.POSITIVE_INFINITY)) return;
    far.set(to, mm);
    todo.push(to);
  };
  for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
    const here = far.get(at) ?? 0;
    // Points that links join and that have no wire of their own lead no farther.
    for (const to of linkedPoints(index, at)) if (next.has(to)) reach(to, here);
    for (const to of next.get(at) ?? []) reach(to, here + stepMm(at, to));
  }
  return Math.max(...far.values());
}
