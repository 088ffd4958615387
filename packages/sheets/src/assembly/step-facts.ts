import type { BookRow } from "@pinwright/book";
import {
  type FastenerItem,
  type FastenerMoment,
  type Item,
  type LineResult,
  partsOfStep,
  type ScrewSymbol,
  type Side,
  type WorkStep,
} from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { symbolOf } from "./symbol-mark.ts";

/** What a step does on one side of one panel. */
export interface StepSide {
  readonly step: WorkStep;
  readonly panelId: string;
  readonly side: Side;
  /** Its fasteners there, in the order in which they are driven, or checked again. */
  readonly fasteners: readonly FastenerItem[];
  /** Items that it puts in there. */
  readonly items: readonly Item[];
}

/** Fasteners of one type that go in in the same way. */
export interface ScrewGroup {
  readonly type: BookRow<"fastener_types">;
  readonly symbol: ScrewSymbol;
  readonly count: number;
  readonly washer: BookRow<"fastener_types"> | null;
  readonly nut: BookRow<"fastener_types"> | null;
  readonly moments: readonly FastenerMoment[];
  /** Tool of the shop that drives it; null: none fits, or nothing is known. */
  readonly driverId: string | null;
  /** Tool that holds the nut. */
  readonly nutDriverId: string | null;
  readonly fastenerIds: readonly string[];
}

export const sideKey = (panelId: string, side: Side): string => `${panelId} ${side}`;

/** Fasteners that a step drives or checks, by id; those that the machine does not have are left out. */
export function stepFasteners(line: LineResult, step: WorkStep): readonly FastenerItem[] {
  const ids = step.kind === "recheck" ? step.recheckIds : step.fastenerIds;
  return ids.flatMap((id) => {
    const item = line.machine.items.get(id);
    return item?.kind === "fastener" ? [item] : [];
  });
}

/** Items that a step puts in, without the fasteners that are items of their own. */
export function stepItems(line: LineResult, step: WorkStep): readonly Item[] {
  return step.itemIds.flatMap((id) => {
    const item = line.machine.items.get(id);
    return item === undefined || item.kind === "fastener" ? [] : [item];
  });
}

/**
 * The panel sides that a step has fasteners on, in the order in which its fasteners come to them. Items are with the
 * side that they are on; a step without fasteners has no sides.
 */
function stepSides(line: LineResult, step: WorkStep): readonly StepSide[] {
  const sides = new Map<string, { panelId: string; side: Side; fasteners: FastenerItem[] }>();
  for (const item of stepFasteners(line, step)) {
    const { panelId, side } = item.place;
    const key = sideKey(panelId, side);
    const known = sides.get(key);
    if (known === undefined) sides.set(key, { panelId, side, fasteners: [item] });
    else known.fasteners.push(item);
  }
  const items = stepItems(line, step);
  return [...sides.values()].map((own) => ({
    step,
    ...own,
    items: items.filter((i) => i.place.panelId === own.panelId && i.place.side === own.side),
  }));
}

/** The panel sides that a step's picture shows: those with fasteners, then those on which it only puts something. */
export function pictureSides(line: LineResult, step: WorkStep): readonly StepSide[] {
  const screwed = stepSides(line, step);
  // On its own bench a mechanism is on no panel.
  if (step.kind === "bench") return screwed;
  const known = new Set(screwed.map((s) => sideKey(s.panelId, s.side)));
  const laid = new Map<string, StepSide & { items: Item[] }>();
  for (const item of stepItems(line, step)) {
    const { panelId, side } = item.place;
    const key = sideKey(panelId, side);
    if (known.has(key)) continue;
    const own = laid.get(key);
    if (own === undefined) laid.set(key, { step, panelId, side, fasteners: [], items: [item] });
    else own.items.push(item);
  }
  return [...screwed, ...laid.values()];
}

/** The sides of all steps, in the order of assembly. */
export function allStepSides(line: LineResult): readonly StepSide[] {
  return line.steps.steps.flatMap((step) => stepSides(line, step));
}

/** Fasteners by what they are and what goes on with them, by the letters of their symbols. */
export function screwGroups(line: LineResult, fasteners: readonly FastenerItem[]): readonly ScrewGroup[] {
  const groups = new Map<string, ScrewGroup & { fastenerIds: string[]; count: number }>();
  for (const item of fasteners) {
    const reach = line.fastening.reaches.get(item.id);
    const driverId = reach?.driverId ?? null;
    const nutDriverId = reach?.nutDriverId ?? null;
    const key = JSON.stringify([
      item.type.id,
      item.washer?.id ?? "",
      item.nut?.id ?? "",
      item.moments,
      driverId,
      nutDriverId,
    ]);
    const known = groups.get(key);
    if (known !== undefined) {
      known.count++;
      known.fastenerIds.push(item.id);
      continue;
    }
    groups.set(key, {
      type: item.type,
      symbol: symbolOf(line, item.type.id),
      count: 1,
      washer: item.washer,
      nut: item.nut,
      moments: item.moments,
      driverId,
      nutDriverId,
      fastenerIds: [item.id],
    });
  }
  return [...groups.values()].sort(
    (a, b) => compareText(a.symbol.letter, b.symbol.letter) || compareText(a.type.id, b.type.id),
  );
}

/** Whether something electrical of an item, or of its children, is of a net class. */
export function touchesClass(line: LineResult, itemIds: ReadonlySet<string>, netClass: string): boolean {
  const { machine } = line;
  return machine.ends.some((end) => {
    if (machine.nets.get(end.net)?.class !== netClass) return false;
    const itemId = machine.points.get(end.point)?.itemId ?? "";
    return itemIds.has(itemId) || itemIds.has(itemId.split("/")[0] ?? "");
  });
}

/**
 * Letters that stand for the types of what a step puts in, by type, in the order of its list of parts; none where all
 * are of one type.
 */
export function partKeys(line: LineResult, step: WorkStep): ReadonlyMap<string, string> {
  const own = new Set(stepItems(line, step).map((item) => item.type.id));
  const types = partsOfStep(line, step).filter((part) => own.has(part.typeId));
  return types.length < 2
    ? new Map()
    : new Map(types.map((part, i) => [part.typeId, String.fromCodePoint(97 + (i % 26))]));
}

/** Name of a step in files: its id with what file systems do not take made to hyphens. */
export function stepSlug(stepId: string): string {
  return stepId.toLowerCase().replace(/[^a-z0-9.-]+/gu, "-");
}

/** What tells the sheets of a step's side apart: the step, and the side where it has several. */
export function sideSlug(line: LineResult, { step, panelId, side }: StepSide): string {
  const several = stepSides(line, step).length > 1;
  return several ? `${stepSlug(step.id)}-${stepSlug(panelId)}-${side}` : stepSlug(step.id);
}
