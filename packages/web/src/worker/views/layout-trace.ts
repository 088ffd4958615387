import type { HarnessResult, SizedWire } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** A stretch that wires of what is selected run along, on one panel. */
export interface TraceSpan {
  readonly kind: "lane" | "tail";
  readonly side: "top" | "under";
  readonly fromXMm: number;
  readonly fromYMm: number;
  readonly toXMm: number;
  readonly toYMm: number;
  readonly wires: number;
}

/** A place at which they leave the panel, or one of their contacts on it. */
export interface TraceSpot {
  readonly kind: "crossing" | "point";
  readonly side: "top" | "under";
  readonly xMm: number;
  readonly yMm: number;
  /** Where it goes on; blank for a contact. */
  readonly therePanelId: string;
  readonly thereSide: "top" | "under";
}

/** Whether a wire belongs to one of the ids: by itself, its net, its harness, a way it goes along, or what it ends at. */
export function wireTest({ line }: Model, ids: readonly string[]): (wire: SizedWire) => boolean {
  const { machine } = line;
  const asked = new Set(ids);
  const ends = (pointId: string): boolean => {
    if (asked.has(pointId)) return true;
    const point = machine.points.get(pointId);
    if (point === undefined) return false;
    if (asked.has(point.itemId) || asked.has(point.landingId)) return true;
    const parentId = machine.items.get(point.itemId)?.parentId ?? null;
    return parentId !== null && asked.has(parentId);
  };
  // As it is printed on the wire: number of the harness, number of the wire.
  const printed = ({ harnessId, number }: SizedWire): string =>
    `${machine.harnesses.get(harnessId)?.number ?? ""}-${number}`;
  return (wire) =>
    asked.has(wire.id) ||
    asked.has(printed(wire)) ||
    asked.has(wire.netId) ||
    asked.has(wire.harnessId) ||
    wire.path.some((id) => asked.has(id)) ||
    ends(wire.a) ||
    ends(wire.b);
}

function* spansOf(
  result: HarnessResult,
  counts: ReadonlyMap<string, number>,
  panelId: string,
): Generator<[string, TraceSpan | TraceSpot]> {
  const nodes = new Map(result.route.nodes.map((node) => [node.id, node.place]));
  for (const branch of result.branches) {
    const wires = counts.get(branch.id);
    const a = nodes.get(branch.a);
    const b = nodes.get(branch.b);
    if (wires === undefined || a === undefined || b === undefined) continue;
    if (branch.kind === "crossing") {
      for (const [here, there] of [
        [a, b],
        [b, a],
      ] as const)
        if (here.panelId === panelId)
          yield [
            `${result.harness.id} ${branch.id} ${here.side}`,
            {
              kind: "crossing",
              side: here.side,
              xMm: here.xMm,
              yMm: here.yMm,
              therePanelId: there.panelId,
              thereSide: there.side,
            },
          ];
    } else if (a.panelId === panelId)
      yield [
        `${result.harness.id} ${branch.id}`,
        {
          kind: branch.kind,
          side: a.side,
          fromXMm: a.xMm,
          fromYMm: a.yMm,
          toXMm: b.xMm,
          toYMm: b.yMm,
          wires,
        },
      ];
  }
}

/** The way of every wire that touches what is selected, and its contacts; follows what is dragged. */
export const layoutTrace = view<
  { readonly panelId: string; readonly ids: readonly string[] },
  TraceSpan | TraceSpot
>({
  uses: ({ line }) => [...line.harnesses.values()],
  entries: (model, { panelId, ids }) => {
    const entries = new Map<string, TraceSpan | TraceSpot>();
    if (ids.length === 0) return entries;
    const { machine, harnesses } = model.line;
    const isAsked = wireTest(model, ids);
    for (const result of harnesses.values()) {
      const counts = new Map<string, number>();
      for (const wire of result.wires) {
        if (!isAsked(wire)) continue;
        for (const id of wire.path) counts.set(id, (counts.get(id) ?? 0) + 1);
        for (const pointId of [wire.a, wire.b]) {
          const place = machine.points.get(pointId)?.place;
          if (place === undefined || place.panelId !== panelId) continue;
          const { side, xMm, yMm } = place;
          entries.set(pointId, { kind: "point", side, xMm, yMm, therePanelId: "", thereSide: side });
        }
      }
      if (counts.size === 0) continue;
      for (const [key, span] of spansOf(result, counts, panelId)) entries.set(key, span);
    }
    return entries;
  },
});
