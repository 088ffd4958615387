import { compareText, mirrorX, type PointMm, subtractPoints, vectorLength } from "@pinwright/kernel";
import type { SizedBranch, TreeNode } from "../model/index.ts";
import type { HolderSize } from "./holder-size.ts";
import { landingOf, type PinboardInput } from "./input.ts";

/** A branch seen from one of its nodes. */
export interface Way {
  readonly branch: number;
  readonly to: number;
}

export interface TreeBranch {
  readonly source: SizedBranch;
  readonly a: number;
  readonly b: number;
  readonly lengthMm: number;
  /** Radius of the laid bundle. */
  readonly radiusMm: number;
  /** It may not be bent: it runs over a hinge or a gap. */
  readonly straight: boolean;
  /** Share that the branch has in choosing a trunk: long and thick is trunk. */
  readonly weight: number;
}

export interface TreeHolder extends HolderSize {
  readonly landingId: string;
}

/** A harness tree by numbers: nodes and branches in the order of their ids, so that row order cannot matter. */
export interface BoardTree {
  readonly nodes: readonly TreeNode[];
  readonly branches: readonly TreeBranch[];
  /** Of each node, in the order of branch ids. */
  readonly ways: readonly (readonly Way[])[];
  readonly holders: readonly (TreeHolder | null)[];
  /** Of each node, the least angle in degrees that is wanted between two of its branches. */
  readonly leastAngleDeg: readonly number[];
  readonly root: number;
}

/** Least angle between two branches at a breakout that leaves room for a tie gun. Common practice, no source. */
const LEAST_ANGLE_DEG = 40;
/** Where many branches meet, each is given at least this share of its equal part of the circle. */
const EQUAL_SHARE = 0.8;

const FALLBACK_HOLDER: HolderSize = { widthMm: 14, depthMm: 14 };

/** Nodes and branches that hang together with the root; a branch that would close a loop is left out. */
function connected(input: PinboardInput): { nodes: readonly TreeNode[]; branches: readonly SizedBranch[] } {
  const nodes = new Map(input.nodes.toSorted((a, b) => compareText(a.id, b.id)).map((n) => [n.id, n]));
  const sorted = input.branches.toSorted((a, b) => compareText(a.id, b.id));
  const at = new Map<string, SizedBranch[]>();
  for (const branch of sorted) {
    for (const end of [branch.a, branch.b]) {
      const list = at.get(end);
      if (list === undefined) at.set(end, [branch]);
      else list.push(branch);
    }
  }
  const first = nodes.get(input.rootId) ?? [...nodes.values()][0];
  const reached = new Set(first === undefined ? [] : [first.id]);
  const kept = new Set<SizedBranch>();
  for (const id of reached) {
    for (const branch of at.get(id) ?? []) {
      const other = branch.a === id ? branch.b : branch.a;
      if (reached.has(other) || !nodes.has(other)) continue;
      reached.add(other);
      kept.add(branch);
    }
  }
  return {
    nodes: [...nodes.values()].filter((n) => reached.has(n.id)),
    branches: sorted.filter((b) => kept.has(b)),
  };
}

/** Numbers the tree of a harness. */
export function boardTree(input: PinboardInput): BoardTree {
  const { nodes, branches: sources } = connected(input);
  const numberOf = new Map(nodes.map((n, i) => [n.id, i]));
  const branches: TreeBranch[] = [];
  const ways: Way[][] = nodes.map(() => []);
  for (const source of sources) {
    const a = numberOf.get(source.a) ?? 0;
    const b = numberOf.get(source.b) ?? 0;
    const branch = branches.length;
    ways[a]?.push({ branch, to: b });
    ways[b]?.push({ branch, to: a });
    branches.push({
      source,
      a,
      b,
      lengthMm: source.lengthMm,
      radiusMm: source.bundle.laidMm / 2,
      straight: source.kind === "crossing",
      weight: source.lengthMm * Math.sqrt(Math.max(1, source.wireIds.length)),
    });
  }
  const holders = nodes.map((node): TreeHolder | null => {
    const landingId = landingOf(node);
    return landingId === null
      ? null
      : { landingId, ...(input.holderSizes.get(landingId) ?? FALLBACK_HOLDER) };
  });
  const leastAngleDeg = ways.map((w) =>
    Math.min(LEAST_ANGLE_DEG, (EQUAL_SHARE * 360) / Math.max(1, w.length)),
  );
  return { nodes, branches, ways, holders, leastAngleDeg, root: numberOf.get(input.rootId) ?? 0 };
}

/** How the machine has a branch run from `from`, as a viewer of that side sees it; null between sides or panels. */
export function realVector(tree: BoardTree, branch: TreeBranch, from: number): PointMm | null {
  const p = tree.nodes[branch.a]?.place;
  const q = tree.nodes[branch.b]?.place;
  if (p === undefined || q === undefined || p.panelId !== q.panelId || p.side !== q.side) return null;
  const along = subtractPoints(q, p);
  if (vectorLength(along) === 0) return null;
  const seen = p.side === "under" ? mirrorX(along) : along;
  return from === branch.a ? seen : { xMm: -seen.xMm, yMm: -seen.yMm };
}
