import type { ColourProblem } from "./problem.ts";
import { isEarth } from "./problem.ts";

/** Fewest alike pairs among `things` that share `colours`: they are dealt out evenly. */
function leastPairs(things: number, colours: number): number {
  if (colours < 1) return (things * (things - 1)) / 2;
  const each = Math.floor(things / colours);
  const more = things % colours;
  return (more * (each + 1) * each) / 2 + ((colours - more) * each * (each - 1)) / 2;
}

/** What no colouring can beat. */
export interface ColourBound {
  /** Pairs that are alike, in a housing or at a breakout. */
  readonly alike: number;
  readonly reels: number;
}

/**
 * The worst single housing or breakout, with more wires than there are colours, gives the bound on alike pairs;
 * for each wire type the housing that has most wires of it gives the bound on its reels.
 */
export function colourBound(problem: ColourProblem): ColourBound {
  let alike = 0;
  const reels = new Map<string, number>();
  for (const list of problem.landings.values()) {
    const perPoint = new Map<string, number>();
    for (const { wire, pointId } of list) {
      const own = problem.wires[wire];
      if (own !== undefined && !isEarth(own.wire) && !perPoint.has(pointId)) perPoint.set(pointId, wire);
    }
    const own = [...new Set(perPoint.values())];
    alike = Math.max(alike, leastPairs(own.length, paletteOf(problem, own).size));
    for (const [type, ofType] of byType(problem, own)) {
      const least = Math.min(ofType.length, Math.max(1, paletteOf(problem, ofType).size));
      reels.set(type, Math.max(least, reels.get(type) ?? 0));
    }
  }
  for (const group of problem.breakouts) {
    const nets = new Map(group.map((i) => [problem.wires[i]?.wire.netId ?? "", i]));
    alike = Math.max(alike, leastPairs(nets.size, paletteOf(problem, [...nets.values()]).size));
  }
  for (const { wire } of problem.wires) if (!reels.has(wire.wireType.id)) reels.set(wire.wireType.id, 1);
  return { alike, reels: [...reels.values()].reduce((sum, n) => sum + n, 0) };
}

/** Every colour that one of these wires may wear. */
export function paletteOf(problem: ColourProblem, wires: readonly number[]): ReadonlySet<string> {
  const lists = new Set(wires.map((i) => problem.wires[i]?.palette ?? []));
  return new Set([...lists].flat());
}

function byType(problem: ColourProblem, wires: readonly number[]): ReadonlyMap<string, readonly number[]> {
  const map = new Map<string, number[]>();
  for (const i of wires) {
    const type = problem.wires[i]?.wire.wireType.id ?? "";
    const list = map.get(type);
    if (list === undefined) map.set(type, [i]);
    else list.push(i);
  }
  return map;
}
