import type { BookRow } from "@pinwright/book";
import { compareText, SharedMemory } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";
import { edgeName } from "./complete.ts";
import type { Plan } from "./plan.ts";
import type { NetTask } from "./task.ts";

type Cable = BookRow<"cables">;
type Core = BookRow<"cable_cores">;

/** A core and the wire that it is, named by its two nodes in the plan of its net. */
export interface CoreWire {
  readonly cable: Cable;
  readonly core: Core;
}

const coresOfTable = new SharedMemory<readonly Core[], ReadonlyMap<string, readonly CoreWire[]>>();

/** Cores that a net has in a harness, in the order of cable and core number. */
export function coresOf(machine: Machine, netId: string, harnessId: string): readonly CoreWire[] {
  const { cables, cable_cores } = machine.book.tables;
  const cores = coresOfTable.ask(cable_cores, [cables], () => coresByNet(machine));
  return cores.get(`${netId}|${harnessId}`) ?? [];
}

function coresByNet(machine: Machine): ReadonlyMap<string, readonly CoreWire[]> {
  const cables = new Map(machine.book.tables.cables.map((c) => [c.id, c]));
  const byNet = new Map<string, CoreWire[]>();
  const cores = [...machine.book.tables.cable_cores].sort(
    (a, b) => compareText(a.cable, b.cable) || a.core - b.core,
  );
  for (const core of cores) {
    const cable = cables.get(core.cable);
    if (cable === undefined) continue;
    const key = `${core.net}|${cable.harness}`;
    const list = byNet.get(key);
    if (list === undefined) byNet.set(key, [{ cable, core }]);
    else list.push({ cable, core });
  }
  return byNet;
}

/** Whether a point's item is the cable's item or a child of it. */
const isAt = (itemId: string, cableItem: string): boolean =>
  itemId === cableItem || itemId.startsWith(`${cableItem}/`);

function nodesAt(task: NetTask, item: string): readonly number[] {
  return task.ends.flatMap((end, i) => (isAt(end.point.itemId, item) ? [i] : []));
}

/**
 * Lays a wire for each core whose cable says where it comes from and goes to, before anything else is joined.
 * @returns for each wire that is laid, by its name within the plan, the core that it is
 */
export function layCores(plan: Plan, cores: readonly CoreWire[]): ReadonlyMap<string, CoreWire> {
  const laid = new Map<string, CoreWire>();
  for (const wire of cores) {
    if (wire.cable.to === null) continue;
    const from = nodesAt(plan.task, wire.cable.from);
    const to = nodesAt(plan.task, wire.cable.to);
    const pairs = from.flatMap((a) => to.map((b) => [a, b] as const));
    const bare = ([a, b]: readonly [number, number]): number => plan.degree(a) + plan.degree(b);
    pairs.sort((p, q) => bare(p) - bare(q) || p[0] - q[0] || p[1] - q[1]);
    const pair = pairs.find(([a, b]) => plan.add(a, b));
    if (pair !== undefined) laid.set(edgeName(pair[0], pair[1]), wire);
  }
  return laid;
}

/** Gives wires that leave the cable's first item to cores that do not say where they go. */
export function takeCores(
  plan: Plan,
  cores: readonly CoreWire[],
  laid: ReadonlyMap<string, CoreWire>,
): ReadonlyMap<string, CoreWire> {
  const all = new Map(laid);
  for (const wire of cores) {
    if (wire.cable.to !== null) continue;
    const from = nodesAt(plan.task, wire.cable.from);
    const edge = plan.edges
      .filter(([a, b]) => from.includes(a) !== from.includes(b) && !all.has(edgeName(a, b)))
      .sort((p, q) => p[0] - q[0] || p[1] - q[1])[0];
    if (edge !== undefined) all.set(edgeName(edge[0], edge[1]), wire);
  }
  return all;
}
