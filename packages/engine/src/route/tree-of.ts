import { compareText } from "@pinwright/kernel";
import type { Branch, HarnessRoute, HarnessWires, Machine, TreeNode } from "../model/index.ts";
import { type HarnessProblem, landingIdOf } from "./harness-problem.ts";
import type { RouteMeasure } from "./search/measure.ts";
import type { RouteSolution } from "./search/problem.ts";

export const tailId = (landingId: string): string => `tail:${landingId}`;
const landingNodeId = (landingId: string): string => `landing:${landingId}`;

/**
 * The tree of a solution, directed from the landing with the most wire ends (ties: the first by id), with every
 * wire's branches from `a` to `b`. A jumper within one landing follows no branch.
 */
export function treeOf(
  machine: Machine,
  harness: HarnessWires,
  set: HarnessProblem,
  solution: RouteSolution,
  measure: RouteMeasure,
): Omit<HarnessRoute, "work"> {
  const nodes = new Map<string, TreeNode>();
  const edges: Branch[] = [];
  const join = (id: string, kind: Branch["kind"], a: string, b: string, routeMm: number): void => {
    edges.push({ id, kind, a, b, routeMm });
  };
  const passSpot = (spot: number): string => {
    const waypoint = set.spots[spot];
    if (waypoint === undefined) throw new RangeError(`there is no spot ${spot}`);
    if (!nodes.has(waypoint.id))
      nodes.set(waypoint.id, {
        id: waypoint.id,
        kind: "waypoint",
        place: waypoint.place,
        breakout: (measure.branchesAt[spot] ?? 0) > 2,
      });
    return waypoint.id;
  };
  for (const index of solution.lanes) {
    // The problem numbers only the spots of the joined part that the harness lies in; the lane graph numbers all.
    const lane = set.lanes[index];
    const numbered = set.problem.lanes[index];
    if (lane === undefined || numbered === undefined) continue;
    join(lane.id, lane.kind, passSpot(numbered.a), passSpot(numbered.b), lane.lengthMm);
  }
  set.landings.forEach((landing, i) => {
    const tail = set.problem.landings[i]?.candidates[solution.attach[i] ?? -1];
    if (tail === undefined) return;
    const id = landingNodeId(landing.id);
    nodes.set(id, { id, kind: "landing", place: landing.place, breakout: false });
    join(tailId(landing.id), "tail", passSpot(tail.spot), id, tail.lengthMm);
  });
  const rootId = rootOf(machine, harness, set);
  const directed = direct(rootId, edges);
  return {
    harnessId: harness.harnessId,
    rootId,
    nodes: directed.order.flatMap((id) => nodes.get(id) ?? []),
    branches: directed.branches,
    paths: pathsOf(machine, set, measure),
    spliceAt: new Map(
      set.spliceIds.flatMap((id, i) => {
        const place = set.problem.splices[i]?.places[solution.spliceAt[i] ?? -1];
        const waypoint = place === undefined ? undefined : set.spots[place.spot];
        return waypoint === undefined ? [] : [[id, waypoint.id] as const];
      }),
    ),
    unreached: set.unreached,
  };
}

function rootOf(machine: Machine, harness: HarnessWires, set: HarnessProblem): string {
  const ends = new Map<string, number>();
  for (const wire of harness.wires)
    for (const end of [wire.a, wire.b]) {
      const id = landingIdOf(machine, end);
      if (id !== undefined) ends.set(id, (ends.get(id) ?? 0) + 1);
    }
  let root = "";
  for (const { id } of set.landings)
    if (root === "" || (ends.get(id) ?? 0) > (ends.get(root) ?? 0)) root = id;
  return landingNodeId(root);
}

/** Turns every branch away from the root; nodes and branches in the order of a walk, near ones first. */
function direct(rootId: string, edges: readonly Branch[]): { order: string[]; branches: Branch[] } {
  const beside = new Map<string, Branch[]>();
  for (const edge of edges)
    for (const end of [edge.a, edge.b]) {
      const list = beside.get(end);
      if (list === undefined) beside.set(end, [edge]);
      else list.push(edge);
    }
  const order = [rootId];
  const seen = new Set(order);
  const branches: Branch[] = [];
  for (const node of order) {
    const next = [...(beside.get(node) ?? [])].sort((x, y) => compareText(x.id, y.id));
    for (const edge of next) {
      const other = edge.a === node ? edge.b : edge.a;
      if (seen.has(other)) continue;
      seen.add(other);
      order.push(other);
      branches.push({ ...edge, a: node, b: other });
    }
  }
  return { order, branches };
}

function pathsOf(
  machine: Machine,
  set: HarnessProblem,
  measure: RouteMeasure,
): ReadonlyMap<string, readonly string[]> {
  return new Map(
    set.wires.map((wire, i) => {
      const a = landingIdOf(machine, wire.a);
      const b = landingIdOf(machine, wire.b);
      if (a !== undefined && a === b) return [wire.id, []] as const;
      const lanes = (measure.paths[i] ?? []).flatMap((index) => set.lanes[index]?.id ?? []);
      const start = a === undefined ? [] : [tailId(a)];
      const finish = b === undefined ? [] : [tailId(b)];
      return [wire.id, [...start, ...lanes, ...finish]] as const;
    }),
  );
}
