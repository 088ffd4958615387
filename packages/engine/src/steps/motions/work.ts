import { compareText } from "@pinwright/kernel";
import type { FastenerItem, FasteningResult, Item, Machine, Motion } from "../../model/index.ts";
import type { Draft } from "../derive/draft.ts";
import { type Drive, type Driven, driveOrder, driveOrderOnce } from "./drive.ts";
import {
  type BenchWork,
  benchMotions,
  driveMotions,
  type HarnessWork,
  harnessMotions,
  placeMotions,
  recheckMotions,
  type TimeNumbers,
} from "./motions.ts";

/** What is done in a step and in which order, before it has its place among the others. */
export interface StepWork {
  readonly itemIds: readonly string[];
  readonly fastenerIds: readonly string[];
  readonly recheckIds: readonly string[];
  readonly motions: readonly Motion[];
  readonly tools: readonly string[];
  readonly bits: readonly string[];
  readonly boxes: readonly string[];
}

/** What the work of a step is found from. */
export interface WorkInputs {
  readonly draft: Draft;
  readonly items: readonly Item[];
  /** Fasteners that are driven, or checked again. */
  readonly drives: readonly Drive[];
  readonly harness: HarnessWork | null;
  readonly bench: BenchWork | null;
  readonly numbers: TimeNumbers;
}

/** Fasteners of a step with the tools that reach them. */
export function drivesOf(
  machine: Machine,
  { reaches }: FasteningResult,
  ids: readonly string[],
  layerOf: (fastener: FastenerItem) => number,
): readonly Drive[] {
  return ids.flatMap((id): Drive[] => {
    const fastener = machine.items.get(id);
    if (fastener?.kind !== "fastener") return [];
    const reach = reaches.get(id);
    const bit = reach?.driverId ?? fastener.type.drive;
    const nutTool = fastener.nut === null ? "" : (reach?.nutDriverId ?? fastener.nut.drive);
    return [{ fastener, bit, nutTool, layer: layerOf(fastener) }];
  });
}

export function workOf({ draft, items, drives, harness, bench, numbers }: WorkInputs): StepWork {
  if (draft.kind === "recheck") {
    const driven = driveOrderOnce(drives);
    const motions = recheckMotions(drives.length, driven, numbers);
    return {
      itemIds: [],
      fastenerIds: [],
      recheckIds: driven.fastenerIds,
      motions,
      tools: toolsOf(driven, []),
      bits: driven.bits,
      boxes: [],
    };
  }
  const driven = driveOrder(drives);
  return {
    itemIds: itemOrder(draft, drives, driven),
    fastenerIds: driven.fastenerIds,
    recheckIds: [],
    motions: [
      ...placeMotions(items, numbers),
      ...driveMotions(drives, driven, numbers),
      ...(harness === null ? [] : harnessMotions(harness, numbers)),
      ...(bench === null ? [] : benchMotions(bench, draft.times, numbers)),
    ],
    tools: bench === null ? toolsOf(driven, drives) : benchTools(bench),
    bits: driven.bits,
    boxes: driven.boxes,
  };
}

/** Bits in the order of use, then what holds the nuts. */
function toolsOf(driven: Driven, drives: readonly Drive[]): readonly string[] {
  const nutTools = drives.map(({ nutTool }) => nutTool).sort(compareText);
  return [...new Set([...driven.bits, ...nutTools])].filter((tool) => tool !== "");
}

const benchTools = ({ rows }: BenchWork): readonly string[] =>
  [...new Set(rows.map((row) => row.tool))].filter((tool) => tool !== "");

/** Items in the order in which their fasteners are driven, then those that none holds. */
function itemOrder(draft: Draft, drives: readonly Drive[], driven: Driven): readonly string[] {
  const heldBy = new Map(drives.map(({ fastener }) => [fastener.id, fastener.holds]));
  const own = new Set(draft.itemIds);
  const order = new Set<string>();
  for (const id of driven.fastenerIds) {
    const held = heldBy.get(id)?.split("/")[0];
    if (held !== undefined && own.has(held)) order.add(held);
  }
  for (const id of draft.itemIds) order.add(id);
  return [...order];
}
