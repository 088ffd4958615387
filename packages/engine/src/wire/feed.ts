import { compareText } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";
import { mateOf, type NetIndex, type RankedEnd } from "./net-index.ts";

/** Without an element that tells, boards feed what is not a board, and an in-line connector feeds a device. */
const BOARD_RANK = 3;
const INLINE_RANK = 4;
const DEVICE_RANK = 5;

function rankOf(machine: Machine, index: NetIndex, pointId: string): number {
  const kind = machine.items.get(machine.points.get(pointId)?.itemId ?? "")?.kind;
  const own = kind === "board" ? BOARD_RANK : kind === "inline" ? INLINE_RANK : DEVICE_RANK;
  return Math.min(own, index.feedRank.get(pointId) ?? own);
}

/**
 * The end of a net within a harness that its wires start from. It is the net's `source` point if that is in this
 * harness, else a supply, a driver, an input or a board, else the half of an in-line connector through which the net comes
 * from the harness that has one of those, else the first end in code-point order. Null when the net has no end here.
 */
export function feedPoint(
  machine: Machine,
  index: NetIndex,
  netId: string,
  harnessId: string,
): string | null {
  const ranked = rankedEnds(machine, index, netId);
  const best = ranked[0];
  const bestOwn = ranked.find((end) => end.harness === harnessId);
  if (best === undefined || bestOwn === undefined) return null;
  if (bestOwn.rank === best.rank) return bestOwn.point;
  return entryPoint(machine, ranked, best.harness, harnessId) ?? bestOwn.point;
}

/** Ends of a net with how near each is to where the net is fed from, nearest first. */
function rankedEnds(machine: Machine, index: NetIndex, netId: string): readonly RankedEnd[] {
  const known = index.ranked.get(netId);
  if (known !== undefined) return known;
  const wanted = machine.nets.get(netId)?.source ?? null;
  const made = (index.endsByNet.get(netId) ?? [])
    .map(({ point, harness }) => ({
      point,
      harness,
      rank: point === wanted ? -1 : rankOf(machine, index, point),
    }))
    .sort((a, b) => a.rank - b.rank || compareText(a.point, b.point) || compareText(a.harness, b.harness));
  index.ranked.set(netId, made);
  return made;
}

/** The point through which the whole current of a net comes into the machine's wires; null when it has no end. */
export function machineFeed(machine: Machine, index: NetIndex, netId: string): string | null {
  return rankedEnds(machine, index, netId)[0]?.point ?? null;
}

/** The in-line half through which a net enters `harnessId` on the way with fewest connectors from `fromHarness`. */
function entryPoint(
  machine: Machine,
  ends: readonly { readonly point: string; readonly harness: string }[],
  fromHarness: string,
  harnessId: string,
): string | null {
  const harnessOf = new Map(ends.map((end) => [end.point, end.harness]));
  const reached = new Set([fromHarness]);
  let edge = [fromHarness];
  while (edge.length > 0) {
    const next: string[] = [];
    for (const end of ends) {
      if (!edge.includes(end.harness)) continue;
      const mate = mateOf(machine, end.point);
      const into = mate === null ? undefined : harnessOf.get(mate);
      if (mate === null || into === undefined || reached.has(into)) continue;
      if (into === harnessId) return mate;
      reached.add(into);
      next.push(into);
    }
    edge = next.sort(compareText);
  }
  return null;
}
