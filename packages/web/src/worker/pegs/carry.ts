import type { BoardPoint, HarnessResult } from "@pinwright/engine";
import { addPoints, distance, scalePoint, subtractPoints } from "@pinwright/kernel";

/** What moving one node of a pinboard means for the others. */
export interface Carried {
  /** Where the node goes: where the hand is, or as near as its branch to the bulk of the harness reaches. */
  readonly at: BoardPoint;
  /** Nodes and branches that hang on it, away from the bulk of the harness: they move with it. */
  readonly nodes: ReadonlySet<string>;
  readonly branches: ReadonlySet<string>;
}

/** A branch this near to being straight is drawn straight: bends of a few millimetres are nobody's wish. */
const STRAIGHT_MM = 12;

type Branch = HarnessResult["branches"][number];

function branchesByNode({ branches }: HarnessResult): ReadonlyMap<string, readonly Branch[]> {
  const map = new Map<string, Branch[]>();
  for (const branch of branches)
    for (const end of [branch.a, branch.b]) {
      const list = map.get(end);
      if (list === undefined) map.set(end, [branch]);
      else list.push(branch);
    }
  return map;
}

interface Part {
  readonly nodes: ReadonlySet<string>;
  readonly branches: ReadonlySet<string>;
  readonly lengthMm: number;
}

/** Everything that hangs on a node by one of its branches. */
function partBeyond(byNode: ReadonlyMap<string, readonly Branch[]>, nodeId: string, first: Branch): Part {
  const nodes = new Set([first.a === nodeId ? first.b : first.a]);
  const branches = new Set([first.id]);
  let lengthMm = first.lengthMm;
  for (const node of nodes)
    for (const branch of byNode.get(node) ?? []) {
      if (branches.has(branch.id)) continue;
      branches.add(branch.id);
      lengthMm += branch.lengthMm;
      nodes.add(branch.a === node ? branch.b : branch.a);
    }
  return { nodes, branches, lengthMm };
}

/** The next peg on the way from a node along a branch, and how far the wires run to it. */
function nextPeg(
  harness: HarnessResult,
  byNode: ReadonlyMap<string, readonly Branch[]>,
  nodeId: string,
  first: Branch,
): { readonly at: BoardPoint; readonly lengthMm: number } | null {
  const places = new Map(harness.pinboard.nodes.map((node) => [node.id, node]));
  let lengthMm = 0;
  let node = nodeId;
  for (let branch: Branch | undefined = first; branch !== undefined; ) {
    const taken: Branch = branch;
    lengthMm += taken.lengthMm;
    node = taken.a === node ? taken.b : taken.a;
    const onward: readonly Branch[] = (byNode.get(node) ?? []).filter((one) => one !== taken);
    branch = onward.length === 1 && places.get(node)?.peg === false ? onward[0] : undefined;
  }
  const at = places.get(node)?.at;
  return at === undefined ? null : { at, lengthMm };
}

/**
 * What it means to carry a node to where the hand is. A holder goes round on its straight tail; a peg stays within
 * reach of the bulk of the harness, and takes along what hangs on it on the other sides.
 */
export function carry(harness: HarnessResult, nodeId: string, hand: BoardPoint): Carried {
  const byNode = branchesByNode(harness);
  const parts = (byNode.get(nodeId) ?? []).map((branch) => ({
    branch,
    part: partBeyond(byNode, nodeId, branch),
  }));
  const [bulk, ...others] = parts.toSorted(
    (p, q) => q.part.lengthMm - p.part.lengthMm || (p.branch.id < q.branch.id ? -1 : 1),
  );
  const nodes = new Set(others.flatMap(({ part }) => [...part.nodes]));
  const branches = new Set(others.flatMap(({ part }) => [...part.branches]));
  const from = bulk === undefined ? null : nextPeg(harness, byNode, nodeId, bulk.branch);
  const apart = from === null ? 0 : distance(from.at, hand);
  if (from === null || apart === 0) return { at: hand, nodes, branches };
  const isTail = others.length === 0;
  const isFree = !isTail && apart < from.lengthMm - STRAIGHT_MM;
  const at = isFree
    ? hand
    : addPoints(from.at, scalePoint(subtractPoints(hand, from.at), from.lengthMm / apart));
  return { at, nodes, branches };
}
