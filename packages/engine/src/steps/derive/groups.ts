import { compareText } from "@pinwright/kernel";
import type { FastenerItem, Item, Machine, Side } from "../../model/index.ts";
import { sideOf } from "./side.ts";
import { type Patch, patchesOf, type Spot } from "./split.ts";

/** Things of a panel side that are alike and go into one step, or into several when they are too many for a card. */
export interface Group {
  readonly id: string;
  readonly kind: "devices" | "boards" | "fixings" | "join";
  /** Class of devices, or kind of fasteners. */
  readonly family: string;
  readonly panelId: string;
  readonly side: Side;
  readonly ids: readonly string[];
}

/** A thing to be grouped. */
interface Grouped extends Spot {
  readonly kind: Group["kind"];
  readonly family: string;
  readonly panelId: string;
  readonly side: Side;
  /** Types of its fasteners: what needs the same boxes goes together. */
  readonly boxes: string;
}

/**
 * The groups of what no one has claimed. Each panel side, kind and family is divided by itself, so that a thing that is
 * added changes no group but its own: a family that is too much for one step by the boxes it needs, and what is still
 * too much by place.
 * @param most fasteners in one step
 */
export function groupsOf(
  machine: Machine,
  items: readonly Exclude<Item, FastenerItem>[],
  loose: readonly FastenerItem[],
  fastenersOf: (itemId: string) => readonly FastenerItem[],
  most: number,
): readonly Group[] {
  const families = new Map<string, Grouped[]>();
  const add = (thing: Grouped): void => {
    const key = `${thing.kind}:${thing.panelId}:${thing.side}${thing.family === "" ? "" : `:${thing.family}`}`;
    const own = families.get(key);
    if (own === undefined) families.set(key, [thing]);
    else own.push(thing);
  };
  for (const item of items) {
    const { kind, family } = familyOf(item);
    if (kind !== null) add(grouped(item, kind, family, fastenersOf(item.id)));
  }
  for (const fastener of loose) add(grouped(fastener, "fixings", fastener.type.kind, [fastener]));
  return [...families]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([key, things]) => divide(machine, key, things, most));
}

function familyOf(item: Exclude<Item, FastenerItem>): {
  readonly kind: Exclude<Group["kind"], "fixings"> | null;
  readonly family: string;
} {
  if (item.kind === "device") return { kind: "devices", family: item.type.class };
  if (item.kind === "board") return { kind: "boards", family: "" };
  return { kind: item.kind === "inline" ? "join" : null, family: "" };
}

function grouped(
  { id, place }: Item,
  kind: Group["kind"],
  family: string,
  fasteners: readonly FastenerItem[],
): Grouped {
  const { panelId, xMm, yMm } = place;
  // Guides stand on one side and are screwed on from the other: the panel lies as the screws are driven.
  const driven = fasteners.filter((fastener) => fastener.place.panelId === panelId);
  const side = driven.length === 0 ? place.side : sideOf(driven.map((fastener) => fastener.place)).side;
  const boxes = [...new Set(fasteners.map((fastener) => fastener.type.id))].sort(compareText).join("+");
  return { id, kind, family, panelId, side, boxes, xMm, yMm, weight: Math.max(1, fasteners.length) };
}

function divide(machine: Machine, key: string, things: readonly Grouped[], most: number): readonly Group[] {
  const [first] = things;
  if (first === undefined) return [];
  const { kind, family, panelId, side } = first;
  const group = (id: string, ids: readonly string[]): Group => ({ id, kind, family, panelId, side, ids });
  const byId = [...things].sort((a, b) => compareText(a.id, b.id));
  if (byId.reduce((sum, thing) => sum + thing.weight, 0) <= most || byId.length === 1)
    return [
      group(
        key,
        byId.map(({ id }) => id),
      ),
    ];
  const byBoxes = new Map<string, Grouped[]>();
  for (const thing of byId) {
    const alike = byBoxes.get(thing.boxes);
    if (alike === undefined) byBoxes.set(thing.boxes, [thing]);
    else alike.push(thing);
  }
  return [...byBoxes]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([boxes, alike]) =>
      patches(machine, panelId, alike, most).map(({ path, ids }) =>
        group([key, boxes, path].filter((text) => text !== "").join(":"), ids),
      ),
    );
}

function patches(
  machine: Machine,
  panelId: string,
  things: readonly Grouped[],
  most: number,
): readonly Patch[] {
  const panel = machine.panels.get(panelId);
  const area = {
    minXMm: 0,
    minYMm: 0,
    maxXMm: panel?.width_mm ?? 0,
    maxYMm: panel?.height_mm ?? 0,
  };
  return patchesOf(things, area, most);
}
