import type { HarnessResult, SizedBranch } from "@pinwright/engine";
import type { PagePoint } from "../compose/mark.ts";
import { distanceMm } from "../compose/plane.ts";
import type { BranchDrawing } from "./branch.ts";

/**
 * Branches in a row between two breakouts, or between a breakout and a holder, with the same wires: what the
 * builder measures as one length.
 */
export interface Run {
  readonly id: string;
  readonly points: readonly PagePoint[];
  readonly lengthMm: number;
  readonly halfMm: number;
  readonly laidMm: number;
  readonly wires: number;
}

/** Points of a branch that start at a place. */
function startingAt(points: readonly PagePoint[], place: PagePoint | undefined): readonly PagePoint[] {
  const [first] = points;
  const last = points[points.length - 1];
  if (place === undefined || first === undefined || last === undefined) return points;
  return distanceMm(first, place) <= distanceMm(last, place) ? points : [...points].reverse();
}

/** Nodes where exactly two branches with the same wires meet and nothing else happens. */
function passed(harness: HarnessResult): ReadonlyMap<string, readonly [SizedBranch, SizedBranch]> {
  const at = new Map<string, SizedBranch[]>();
  for (const branch of harness.branches) {
    for (const node of [branch.a, branch.b]) at.set(node, [...(at.get(node) ?? []), branch]);
  }
  const splices = new Set(harness.route.spliceAt.values());
  const kinds = new Map(harness.route.nodes.map((n) => [n.id, n.kind]));
  const found = new Map<string, readonly [SizedBranch, SizedBranch]>();
  for (const [node, [one, two, ...more]] of at) {
    if (one === undefined || two === undefined || more.length > 0) continue;
    if (kinds.get(node) !== "waypoint" || splices.has(node)) continue;
    if (one.wireIds.length === two.wireIds.length) found.set(node, [one, two]);
  }
  return found;
}

/** The runs of a harness, in the order of their first branches. */
export function runsOf(
  harness: HarnessResult,
  drawings: readonly BranchDrawing[],
  places: ReadonlyMap<string, PagePoint>,
): readonly Run[] {
  const through = passed(harness);
  const drawn = new Map(drawings.map((d) => [d.id, d]));
  const used = new Set<string>();
  const runs: Run[] = [];
  /** Branches from one on, away from `node`, as far as nodes are only passed. */
  const follow = (start: SizedBranch, node: string): { branch: SizedBranch; from: string }[] => {
    const chain: { branch: SizedBranch; from: string }[] = [];
    let branch = start;
    let from = node;
    for (;;) {
      const to = branch.a === from ? branch.b : branch.a;
      const pair = through.get(to);
      const next = pair?.find((b) => b.id !== branch.id);
      if (next === undefined || next.id === start.id) return chain;
      chain.push({ branch: next, from: to });
      branch = next;
      from = to;
    }
  };
  for (const branch of harness.branches) {
    if (used.has(branch.id)) continue;
    const back = follow(branch, branch.b);
    const ahead = follow(branch, branch.a);
    const chain = [
      ...back.reverse().map(({ branch: b, from }) => ({ branch: b, from: b.a === from ? b.b : b.a })),
      { branch, from: branch.a },
      ...ahead,
    ];
    const points: PagePoint[] = [];
    for (const { branch: b, from } of chain) {
      used.add(b.id);
      const own = startingAt(drawn.get(b.id)?.points ?? [], places.get(from));
      points.push(...(points.length === 0 ? own : own.slice(1)));
    }
    const [first] = chain;
    if (first === undefined || points.length < 2) continue;
    runs.push({
      id: first.branch.id,
      points,
      lengthMm: chain.reduce((sum, c) => sum + c.branch.lengthMm, 0),
      halfMm: Math.max(...chain.map((c) => c.branch.bundle.laidMm)) / 2,
      laidMm: Math.max(...chain.map((c) => c.branch.bundle.laidMm)),
      wires: branch.wireIds.length,
    });
  }
  return runs;
}
