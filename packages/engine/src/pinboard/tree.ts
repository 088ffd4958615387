import { compareText, mirrorX, type PointMm, subtractPoints, vectorLength } from "@pinwright/kernel";
import type { SizedBranch, TreeNode } from "../model/index.ts";
import type { HolderSize } from "./holder-size.ts";
import { landingOf, type PinboardInput } from "./input.ts";
import { type RunPart, runsOf } from "./runs.ts";

/** A branch seen from one of its nodes. */
export interface Way {
  readonly branch: number;
  readonly to: number;
}

/** What is laid as one piece: a tail, a crossing, or all lanes from one breakout to the next. */
export interface TreeBranch {
  /** Id of the first of its parts, by which findings name it. */
  readonly id: string;
  readonly kind: SizedBranch["kind"];
  /** The harness's own branches along it, from `a` to `b`, and the nodes that it only passes between them. */
  readonly parts: readonly RunPart[];
  readonly joints: readonly string[];
  readonly a: number;
  readonly b: number;
  readonly lengthMm: number;
  /** Radius of the laid bundle, where it is thickest. */
  readonly radiusMm: number;
  /** The most wires that lie in it anywhere. */
  readonly wires: number;
  /** It may not be bent: it runs over a hinge or a gap. */
  readonly straight: boolean;
  /** Share that the branch has in choosing a trunk: long and thick is trunk. */
  readonly weight: number;
}

export interface TreeHolder extends HolderSize {
  readonly landingId: string;
}

/**
 * A harness tree by numbers: nodes and branches in the order of their ids, so that row order cannot matter. Nodes
 * that the harness only passes are not among them: they are joints of a branch.
 */
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

/** Nodes of a harness that a choice names: they are laid for themselves, even where the harness only passes. */
function askedNodes({ harness, pegs }: PinboardInput): ReadonlySet<string> {
  return new Set([...pegs.keys()].map((subject) => subject.slice(harness.id.length + 1)));
}

/** Numbers the tree of a harness. */
export function boardTree(input: PinboardInput): BoardTree {
  const all = connected(input);
  const runs = runsOf(all.nodes, all.branches, askedNodes(input));
  const passed = new Map(runs.flatMap((run) => run.joints.map((id) => [id, run] as const)));
  const nodes = all.nodes.filter((n) => !passed.has(n.id));
  const numberOf = new Map(nodes.map((n, i) => [n.id, i]));
  const branches: TreeBranch[] = [];
  const ways: Way[][] = nodes.map(() => []);
  for (const run of runs) {
    const a = numberOf.get(run.a) ?? 0;
    const b = numberOf.get(run.b) ?? 0;
    const branch = branches.length;
    ways[a]?.push({ branch, to: b });
    ways[b]?.push({ branch, to: a });
    const sources = run.parts.map((part) => part.source);
    const most = (of: (source: SizedBranch) => number): number => Math.max(...sources.map(of));
    const sum = (of: (source: SizedBranch) => number): number => sources.reduce((s, x) => s + of(x), 0);
    const first = sources[0];
    branches.push({
      id: first?.id ?? "",
      kind: first?.kind ?? "lane",
      parts: run.parts,
      joints: run.joints,
      a,
      b,
      lengthMm: sum((s) => s.lengthMm),
      radiusMm: most((s) => s.bundle.laidMm) / 2,
      wires: most((s) => s.wireIds.length),
      straight: first?.kind === "crossing",
      weight: sum((s) => s.lengthMm * Math.sqrt(Math.max(1, s.wireIds.length))),
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
  const root = numberOf.get(passed.get(input.rootId)?.a ?? input.rootId) ?? 0;
  return { nodes, branches, ways, holders, leastAngleDeg, root };
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
