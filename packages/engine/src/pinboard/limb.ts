import type { BoardTree, TreeBranch, Way } from "./tree.ts";

/** A branch of a limb in the direction in which the limb is laid. */
export interface LimbStep {
  readonly branch: number;
  readonly from: number;
  readonly to: number;
  readonly lengthMm: number;
}

/** Branches end to end that are laid as one line, hung on a node that is laid before. */
export interface Limb {
  readonly start: number;
  /** The limb that it hangs on, and the step of it that ends in `start`; null when it hangs on the base. */
  readonly parent: number | null;
  readonly parentStep: number;
  readonly steps: readonly LimbStep[];
  readonly lengthMm: number;
  /** Limbs that hang on its nodes, by their numbers. */
  readonly children: readonly number[];
  /** Total length of it and of all that hangs on it. */
  readonly massMm: number;
  /** No point of it, of what hangs on it, or of their holders is ever further from its start. */
  readonly reachMm: number;
}

const stepOf = (from: number, way: Way, branch: TreeBranch): LimbStep => ({
  branch: way.branch,
  from,
  to: way.to,
  lengthMm: branch.lengthMm,
});

/** Heaviest way down from a node, without going back over `via`. */
interface Descent {
  readonly weight: number;
  readonly steps: readonly LimbStep[];
}

const NOTHING: Descent = { weight: 0, steps: [] };

/** What may be chained: a branch whose direction is chosen starts a limb of its own. */
export type MayChain = (branch: number) => boolean;

function descend(tree: BoardTree, node: number, via: number, mayChain: MayChain): Descent {
  let best = NOTHING;
  for (const way of tree.ways[node] ?? []) {
    const branch = tree.branches[way.branch];
    if (way.branch === via || branch === undefined || !mayChain(way.branch)) continue;
    const below = descend(tree, way.to, way.branch, mayChain);
    const weight = branch.weight + below.weight;
    if (weight > best.weight) best = { weight, steps: [stepOf(node, way, branch), ...below.steps] };
  }
  return best;
}

/**
 * The trunk: the heaviest path through the tree, from leaf to leaf. It starts at the end whose branch has more
 * wires, which the builder lays from. Found like a tree's diameter: the heaviest path from anywhere ends where
 * the heaviest path overall starts, because weights are positive.
 */
export function trunkOf(tree: BoardTree, mayChain: MayChain): readonly LimbStep[] {
  const out = descend(tree, tree.root, -1, mayChain);
  const far = out.steps.at(-1)?.to ?? tree.root;
  const path = descend(tree, far, -1, mayChain).steps;
  const wires = (step: LimbStep | undefined) =>
    step === undefined ? 0 : (tree.branches[step.branch]?.wires ?? 0);
  if (wires(path.at(-1)) <= wires(path[0])) return path;
  return path.toReversed().map((s) => ({ ...s, from: s.to, to: s.from }));
}

/** Everything that is not laid yet, cut into limbs; a limb always comes after the one that it hangs on. */
export function limbsBeyond(
  tree: BoardTree,
  laidBranches: ReadonlySet<number>,
  laidNodes: readonly number[],
  mayChain: MayChain,
): readonly Limb[] {
  const limbs: (Omit<Limb, "children" | "massMm" | "reachMm"> & Growing)[] = [];
  const hang = (
    node: number,
    parent: number | null,
    parentStep: number,
    taken: ReadonlySet<number>,
  ): void => {
    for (const way of tree.ways[node] ?? []) {
      const branch = tree.branches[way.branch];
      if (taken.has(way.branch) || branch === undefined) continue;
      const first = stepOf(node, way, branch);
      const steps = [first, ...descend(tree, way.to, way.branch, mayChain).steps];
      const lengthMm = lengthOf(steps);
      const reachMm = reachOf(tree, way.to, way.branch) + branch.lengthMm;
      const limb = {
        start: node,
        parent,
        parentStep,
        steps,
        lengthMm,
        children: [],
        massMm: lengthMm,
        reachMm,
      };
      const number = limbs.push(limb) - 1;
      if (parent !== null) limbs[parent]?.children.push(number);
      const on = new Set(steps.map((s) => s.branch));
      steps.forEach((step, i) => {
        hang(step.to, number, i, on);
      });
      if (parent !== null) {
        const above = limbs[parent];
        if (above !== undefined) above.massMm += limb.massMm;
      }
    }
  };
  for (const node of laidNodes) hang(node, null, 0, laidBranches);
  return limbs;
}

/** Parts of a limb that are not known until all that hangs on it is cut. */
interface Growing {
  readonly children: number[];
  massMm: number;
  readonly reachMm: number;
}

function reachOf(tree: BoardTree, node: number, via: number): number {
  const holder = tree.holders[node];
  let reach = holder === null || holder === undefined ? 0 : holder.depthMm + holder.widthMm / 2;
  for (const way of tree.ways[node] ?? []) {
    if (way.branch === via) continue;
    reach = Math.max(reach, (tree.branches[way.branch]?.lengthMm ?? 0) + reachOf(tree, way.to, way.branch));
  }
  return reach;
}

export const lengthOf = (steps: readonly LimbStep[]): number => steps.reduce((s, x) => s + x.lengthMm, 0);
