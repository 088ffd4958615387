import { compareText, shortestPathOrder } from "@pinwright/kernel";
import type { DeviceItem, Machine } from "../../model/index.ts";

/** Devices of one panel that are tried one after the other, each near the one before. */
export interface WalkStretch {
  readonly panelId: string;
  readonly itemIds: readonly string[];
}

type DeviceClass = DeviceItem["type"]["class"];

/** What a test of each purpose goes along; one of another purpose goes along nothing. */
const CLASSES: Readonly<Record<string, readonly DeviceClass[]>> = {
  switch: ["switch", "sensor", "button"],
  lamp: ["lamp"],
  coil: ["coil"],
  motor: ["motor"],
};

/** So many stand on one screen and are still told apart in a drawing. Common practice, no source. */
const STRETCH = 8;
/** The walk is no exact optimum: a hand does not feel a few millimetres, and the line must answer at once. */
const EFFORT = { kicksPerNode: 2, boundSteps: 0 };

/**
 * The way along everything that a test of the whole machine tries one by one: panel by panel as the book has them, from the
 * one that lies nearest to the player, each next to the one before (a short open path through their places). Coils stay one
 * at a time: this is an order, not a group.
 */
export function testWalk(machine: Machine, purpose: string): readonly WalkStretch[] {
  const classes = CLASSES[purpose] ?? [];
  const found = [...machine.items.values()].filter(
    (item): item is DeviceItem => item.kind === "device" && classes.includes(item.type.class),
  );
  const panelIds = machine.book.tables.panels.map(({ id }) => id);
  return panelIds.flatMap((panelId) => {
    const here = found.filter(({ place }) => place.panelId === panelId).sort(nearestFirst);
    if (here.length === 0) return [];
    const matrix = here.map((a) => here.map((b) => distanceMm(a, b)));
    const itemIds = shortestPathOrder(matrix, 0, undefined, EFFORT).order.flatMap((i) => here[i]?.id ?? []);
    return stretches(itemIds).map((ids): WalkStretch => ({ panelId, itemIds: ids }));
  });
}

const nearestFirst = ({ id: a, place: p }: DeviceItem, { id: b, place: q }: DeviceItem): number =>
  p.yMm - q.yMm || p.xMm - q.xMm || compareText(a, b);

const distanceMm = ({ place: a }: DeviceItem, { place: b }: DeviceItem): number =>
  Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);

/** Cuts a walk into stretches as equal as they can be. */
function stretches(itemIds: readonly string[]): readonly (readonly string[])[] {
  const count = Math.ceil(itemIds.length / STRETCH);
  const at = (i: number): number => Math.round((i * itemIds.length) / count);
  return Array.from({ length: count }, (_, i) => itemIds.slice(at(i), at(i + 1)));
}
