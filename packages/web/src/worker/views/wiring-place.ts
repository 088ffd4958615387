import type { Model } from "../model.ts";
import { netOfPoint } from "../wires/housing.ts";
import { findWire } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** What an id stands for in Wiring, and what to show for it. */
export interface WiringPlace {
  readonly kind: "net" | "wire" | "landing" | "point" | "item";
  readonly id: string;
  /** Item to open for a landing, point or item. */
  readonly itemId: string | null;
  readonly itemKind: "board" | "device" | "inline" | "mechanism" | null;
  readonly landingId: string | null;
  readonly netId: string | null;
}

function placeOf({ line }: Model, id: string): WiringPlace | null {
  const { machine } = line;
  const none = { itemId: null, itemKind: null, landingId: null, netId: null } as const;
  const found = findWire(line, id);
  if (found !== null) return { ...none, kind: "wire", id: found.wire.id, netId: found.wire.netId };
  if (machine.nets.has(id)) return { ...none, kind: "net", id, netId: id };
  const point = machine.points.get(id);
  const landing = machine.landings.get(point?.landingId ?? id);
  const item = machine.items.get(landing?.itemId ?? id);
  if (item === undefined || item.kind === "fastener") return null;
  return {
    kind:
      point !== undefined ? "point" : landing !== undefined && landing.id !== item.id ? "landing" : "item",
    id,
    itemId: item.id,
    itemKind: item.kind,
    landingId: landing?.id ?? null,
    netId: point === undefined ? null : netOfPoint(line, id),
  };
}

/** What an id is; nothing when the book has none such. */
export const wiringPlace = view<string, WiringPlace>({
  uses: ({ line }) => [line.machine.items, line.machine.nets, line.machine.ends, ...line.harnesses.values()],
  entries: (model, id) => {
    const place = placeOf(model, id);
    return new Map(place === null ? [] : [["", place]]);
  },
  restsInPreview: true,
});
