import { turnDeg } from "@pinwright/kernel";
import { rootBase } from "./base.ts";
import { Layout } from "./layout.ts";
import { limbsBeyond } from "./limb.ts";
import { turnedCandidates } from "./planar.ts";
import type { Bench } from "./task.ts";
import type { BoardTree } from "./tree.ts";

/** No cone is wider: a convex cone keeps everything in it that starts in it. */
const WIDEST_DEG = 160;
const SEARCH_STEPS_PER_LIMB = 40;

/**
 * Lays a harness so that no branches cross, whatever its lengths: every node has a cone, its branches run along
 * the middles of narrower cones side by side in it, and each of those is the cone of the node at the end. What
 * lies beyond a branch stays within its cone, because cones are convex, and cones side by side do not meet (a
 * slope-disjoint drawing: Angelini and others, Monotone drawings of graphs, 2012, from memory).
 * The search that follows may only lower the price, of which a crossing is by far the largest part.
 */
export function layInCones(tree: BoardTree, bench: Bench, handRoomMm: number): Layout {
  const middle = middleNode(tree);
  const directionOf = new Map<number, number>();
  spread(tree, middle, -1, -180, 360, directionOf);
  const limbs = limbsBeyond(tree, new Set(), [middle], () => false);
  const candidates = limbs.map((limb) => {
    const above = limb.parent === null ? undefined : limbs[limb.parent]?.steps[0];
    const before = above === undefined ? 0 : (directionOf.get(above.branch) ?? 0);
    const own = limb.steps[0] === undefined ? 0 : (directionOf.get(limb.steps[0].branch) ?? 0);
    return turnedCandidates(limb.lengthMm, turnDeg(before, own));
  });
  let first = true;
  const layout = new Layout({
    tree,
    base: rootBase(middle),
    limbs,
    bench,
    handRoomMm,
    candidates: (limb) => (first ? (candidates[limb] ?? []).slice(0, 1) : (candidates[limb] ?? [])),
  });
  layout.layAll();
  first = false;
  layout.improve(SEARCH_STEPS_PER_LIMB * limbs.length);
  return layout;
}

/** Gives each way from a node its share of the node's cone, by the leaves beyond it. */
function spread(
  tree: BoardTree,
  node: number,
  via: number,
  fromDeg: number,
  widthDeg: number,
  directionOf: Map<number, number>,
): void {
  const ways = (tree.ways[node] ?? []).filter((w) => w.branch !== via);
  const leaves = ways.map((w) => leavesBeyond(tree, w.to, w.branch));
  const all = leaves.reduce((s, n) => s + n, 0);
  let at = fromDeg;
  ways.forEach((way, i) => {
    const share = (widthDeg * (leaves[i] ?? 0)) / all;
    const direction = at + share / 2;
    directionOf.set(way.branch, direction);
    const cone = Math.min(share, WIDEST_DEG);
    spread(tree, way.to, way.branch, direction - cone / 2, cone, directionOf);
    at += share;
  });
}

function leavesBeyond(tree: BoardTree, node: number, via: number): number {
  const ways = (tree.ways[node] ?? []).filter((w) => w.branch !== via);
  return ways.length === 0 ? 1 : ways.reduce((s, w) => s + leavesBeyond(tree, w.to, w.branch), 0);
}

/** The node whose largest side has the fewest leaves; the first of several. */
function middleNode(tree: BoardTree): number {
  let best = tree.root;
  let least = Number.POSITIVE_INFINITY;
  tree.nodes.forEach((_, node) => {
    const most = (tree.ways[node] ?? []).reduce((m, w) => Math.max(m, leavesBeyond(tree, w.to, w.branch)), 0);
    if (most >= least) return;
    least = most;
    best = node;
  });
  return best;
}
