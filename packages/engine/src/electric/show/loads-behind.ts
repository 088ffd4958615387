import { compareText } from "@pinwright/kernel";
import type { FuseRating, HarnessResult, Machine } from "../../model/index.ts";
import { isLoad } from "../network/feeds.ts";
import { electricNetwork } from "../network/network.ts";
import { copperGraph, Reach } from "../protection/reach.ts";
import { CORNERS } from "../solve/corners.ts";

/**
 * Loads that each fuse lies on the way to, or on the way back from, in code-point order, by the fuse's placed element.
 * @param harnesses wires of the whole machine
 */
export function loadsBehindFuses(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
  fuses: readonly Pick<FuseRating, "elementId" | "supplyId">[],
): ReadonlyMap<string, readonly string[]> {
  const found = new Map(fuses.map(({ elementId }) => [elementId, new Set<string>()]));
  const [corner] = CORNERS;
  if (corner === undefined || fuses.length === 0) return new Map();
  const wires = [...harnesses.values()].flatMap((harness) => harness.wires);
  const { parts } = electricNetwork(machine, wires);
  const lengthsMm = new Map(wires.map((wire) => [wire.id, wire.finishedMm]));
  const copper = copperGraph(parts, { corner, numbers: machine.shop.numbers, lengthsMm });
  const loads = parts.filter(isLoad);
  for (const supplyId of new Set(fuses.map((fuse) => fuse.supplyId))) {
    const source = parts.find((part) => part.kind === "source" && (part.supply?.id ?? part.id) === supplyId);
    if (source === undefined) continue;
    const own = new Set(fuses.filter((one) => one.supplyId === supplyId).map(({ elementId }) => elementId));
    for (const reach of [new Reach(copper, source.a), new Reach(copper, source.b)])
      for (const load of loads)
        for (const node of [load.a, load.b])
          for (const { part } of reach.back(node)) if (own.has(part.id)) found.get(part.id)?.add(load.id);
  }
  return new Map([...found].map(([fuse, ids]) => [fuse, [...ids].sort(compareText)]));
}
