import type { SizedBranch, TreeNode } from "../model/index.ts";

/** A branch within a run; `forward` when the run follows it from its `a` to its `b`. */
export interface RunPart {
  readonly source: SizedBranch;
  readonly forward: boolean;
}

/** Branches end to end that a builder lays as one: the harness only passes the nodes between them. */
export interface Run {
  readonly a: string;
  readonly b: string;
  readonly parts: readonly RunPart[];
  /** Ids of the nodes between the parts, in the order from `a`. */
  readonly joints: readonly string[];
}

/**
 * Draws branches together into runs. A run goes on through a waypoint at which exactly two lanes meet, unless that
 * node is in `kept`; a crossing and a tail are always runs of their own. A run is directed as the first of its
 * branches by id. Branches must form a tree.
 */
export function runsOf(
  nodes: readonly TreeNode[],
  branches: readonly SizedBranch[],
  kept: ReadonlySet<string>,
): readonly Run[] {
  const at = new Map<string, SizedBranch[]>();
  for (const branch of branches) {
    for (const end of [branch.a, branch.b]) {
      const list = at.get(end);
      if (list === undefined) at.set(end, [branch]);
      else list.push(branch);
    }
  }
  const waypoints = new Set(nodes.filter((n) => n.kind === "waypoint").map((n) => n.id));
  /** The lane that goes on from `via` through a node, if the harness only passes there. */
  const onward = (node: string, via: SizedBranch): SizedBranch | undefined => {
    const [p, q, more] = at.get(node) ?? [];
    if (p === undefined || q === undefined || more !== undefined) return undefined;
    if (p.kind !== "lane" || q.kind !== "lane" || !waypoints.has(node) || kept.has(node)) return undefined;
    return p === via ? q : p;
  };
  const taken = new Set<SizedBranch>();
  const runs: Run[] = [];
  for (const first of branches) {
    if (taken.has(first)) continue;
    const follow = (from: string): { readonly end: string; readonly beyond: readonly SizedBranch[] } => {
      const beyond: SizedBranch[] = [];
      let end = from;
      let last = first;
      for (let next = onward(end, last); next !== undefined; next = onward(end, last)) {
        beyond.push(next);
        end = next.a === end ? next.b : next.a;
        last = next;
      }
      return { end, beyond };
    };
    const before = follow(first.a);
    const after = follow(first.b);
    const sources = [...before.beyond.toReversed(), first, ...after.beyond];
    const parts: RunPart[] = [];
    const joints: string[] = [];
    let node = before.end;
    for (const source of sources) {
      taken.add(source);
      if (parts.length > 0) joints.push(node);
      const forward = source.a === node;
      parts.push({ source, forward });
      node = forward ? source.b : source.a;
    }
    runs.push({ a: before.end, b: node, parts, joints });
  }
  return runs;
}
