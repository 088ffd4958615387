import { compareText } from "@pinwright/kernel";
import type { BoardItem, Machine } from "../../../model/index.ts";
import { conductors } from "../conductors.ts";

/** Boards that share a pair of bus wires: one line from a head, from board to board. */
export interface BusSegment {
  /** Boards with an address, in code-point order. */
  readonly nodes: readonly BoardItem[];
  /** The board without an address that asks them; null when there is none. */
  readonly headId: string | null;
  /** For each of them how many wires of the bus it can have: 1 at the end of the line, 2 between. */
  readonly wires: ReadonlyMap<string, number>;
}

/** Every segment of every bus: conductors of class `data` that inputs of addressed boards listen to, each once. */
export function busSegments(machine: Machine): readonly BusSegment[] {
  const c = conductors(machine);
  const segments = new Map<string, BusSegment>();
  const places = placesByNet(machine);
  c.nets.forEach((nets, at) => {
    if (!nets.some((net) => net.class === "data")) return;
    const boards = new Map<string, BoardItem>();
    for (const { element } of c.terminals[at] ?? []) {
      const item = machine.items.get(element.itemId);
      if (item?.kind === "board" && (element.row.kind === "driver" || element.row.kind === "input"))
        boards.set(item.id, item);
    }
    const sorted = [...boards.values()].sort((a, b) => compareText(a.id, b.id));
    const nodes = sorted.filter((board) => board.address !== null);
    // Both wires of a pair, and its screen, join the same boards: that is one segment.
    const key = sorted.map((board) => board.id).join(" ");
    if (nodes.length === 0 || segments.has(key)) return;
    const own = nets.flatMap((net) => places.get(net.id) ?? []);
    segments.set(key, {
      nodes,
      headId: sorted.find((board) => board.address === null)?.id ?? null,
      wires: new Map(nodes.map(({ id }) => [id, own.filter((itemId) => itemId === id).length])),
    });
  });
  return [...segments.values()];
}

/** For each net of class `data` the items that its wires land on, once for every wire that a contact takes there. */
function placesByNet(machine: Machine): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  const seen = new Set<string>();
  for (const { point: pointId, net } of machine.ends) {
    const point = machine.points.get(pointId);
    if (machine.nets.get(net)?.class !== "data" || point === undefined || seen.has(pointId)) continue;
    seen.add(pointId);
    const places = found.get(net) ?? [];
    found.set(net, places);
    for (let wire = 0; wire < point.family.wires_per_contact; wire++) places.push(point.itemId);
  }
  return found;
}
