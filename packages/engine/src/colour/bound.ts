import type { ColourProblem } from "./problem.ts";
import { isEarth } from "./problem.ts";

/** Fewest alike pairs among `things` that share `colours`: they are dealt out evenly. */
function leastPairs(things: number, colours: number): number {
  if (colours < 1) return (things * (things - 1)) / 2;
  const each = Math.floor(things / colours);
  const more = things % colours;
  return (more * (each + 1) * each) / 2 + ((colours - more) * each * (each - 1)) / 2;
}

/** Fewest reels and alike pairs together, among `things` that may share up to `colours` reels of one type. */
function leastTogether(things: number, colours: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let reels = 1; reels <= Math.max(1, Math.min(things, colours)); reels++) {
    least = Math.min(least, reels + leastPairs(things, reels));
  }
  return least;
}

/**
 * Alike pairs and reels together that no colouring can beat. Wires of one type that should all differ, in a housing
 * or at a breakout, cost a reel each or make pairs; pairs and reels of different types are different ones, so the
 * worst group of each type adds up. Or, if that is more: the pairs of the worst group of all types together, and one
 * reel for each type.
 */
export function colourBound(problem: ColourProblem): number {
  const byType = new Map<string, number>();
  let pairs = 0;
  for (const group of groupsThatDiffer(problem)) {
    pairs = Math.max(pairs, leastPairs(group.length, paletteSize(problem, group)));
    const types = new Map<string, number[]>();
    for (const i of group) {
      const type = problem.wires[i]?.wire.wireType.id ?? "";
      const list = types.get(type);
      if (list === undefined) types.set(type, [i]);
      else list.push(i);
    }
    for (const [type, own] of types) {
      const least = leastTogether(own.length, paletteSize(problem, own));
      byType.set(type, Math.max(least, byType.get(type) ?? 0));
    }
  }
  for (const { wire } of problem.wires) {
    if (!byType.has(wire.wireType.id)) byType.set(wire.wireType.id, 1);
  }
  return Math.max(
    pairs + byType.size,
    [...byType.values()].reduce((sum, n) => sum + n, 0),
  );
}

/** Sets of wires of which any two that are alike count as a pair: one wire a point, and one wire a net. */
function groupsThatDiffer(problem: ColourProblem): readonly (readonly number[])[] {
  const groups: number[][] = [];
  for (const list of problem.landings.values()) {
    const perPoint = new Map<string, number>();
    for (const { wire, pointId } of list) {
      const own = problem.wires[wire];
      if (own !== undefined && !isEarth(own.wire) && !perPoint.has(pointId)) perPoint.set(pointId, wire);
    }
    groups.push([...new Set(perPoint.values())]);
  }
  for (const group of problem.breakouts) {
    const perNet = new Map<string, number>();
    for (const i of group) {
      const wire = problem.wires[i]?.wire;
      if (wire !== undefined && !isEarth(wire) && !perNet.has(wire.netId)) perNet.set(wire.netId, i);
    }
    groups.push([...perNet.values()]);
  }
  return groups;
}

/** How many colours these wires may wear between them. */
export function paletteSize(problem: ColourProblem, wires: readonly number[]): number {
  const lists = new Set(wires.map((i) => problem.wires[i]?.palette ?? []));
  const [only] = lists;
  return lists.size === 1 && only !== undefined ? only.length : new Set([...lists].flat()).size;
}
