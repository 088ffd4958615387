import type { TreeNode } from "../model/index.ts";
import type { BoardTree, TreeBranch } from "./tree.ts";

/**
 * Tie spacing by the diameter of the bundle, mm: NASA-STD-8739.4 chapter 9, from memory (reference figure 5.9),
 * which also asks for a tie on both sides of every breakout.
 */
const SPACING_BY_DIAMETER: readonly { readonly toMm: number; readonly spacingMm: number }[] = [
  { toMm: 6.4, spacingMm: 19 },
  { toMm: 12.7, spacingMm: 38 },
  { toMm: 25.4, spacingMm: 51 },
  { toMm: Number.POSITIVE_INFINITY, spacingMm: 76 },
];

/**
 * Distance between ties, mm. The table is written for flight; a shop says with `tie_spacing_mm` how closely it
 * ties at all, which is also what routing counts its minutes with, so the larger of the two holds.
 */
export function tieSpacingMm(diameterMm: number, shopSpacingMm: number): number {
  const row = SPACING_BY_DIAMETER.find((r) => diameterMm <= r.toMm);
  return Math.max(row?.spacingMm ?? 0, shopSpacingMm);
}

/** Distance of the ties of a breakout from its peg. Common practice, no source. */
const TIE_FROM_BREAKOUT_MM = 15;

/** How a branch ends: at a breakout, with a tie beside it; running on; or at a holder, which needs none. */
type BranchEnd = "breakout" | "runs-on" | "holder";

const branchEnd = (node: TreeNode | undefined): BranchEnd =>
  node === undefined || node.kind === "landing" ? "holder" : node.breakout ? "breakout" : "runs-on";

/** Share of a spacing that lies between the end of the span and its outermost tie. */
const FREE: Readonly<Record<BranchEnd, number>> = { breakout: 0, "runs-on": 0.5, holder: 1 };

/**
 * Where the ties of a branch stand, mm from its start: one at each breakout, and evenly between them so that no
 * two are further apart than the spacing. A single wire needs no tie; nothing is clamped where a bundle flexes.
 */
export function tiesOf(tree: BoardTree, branch: TreeBranch, shopSpacingMm: number): readonly number[] {
  const { lengthMm, radiusMm, straight, wires } = branch;
  if (straight || wires < 2) return [];
  const ends = [branchEnd(tree.nodes[branch.a]), branchEnd(tree.nodes[branch.b])] as const;
  const inset = ends.map((end) => (end === "breakout" ? Math.min(TIE_FROM_BREAKOUT_MM, lengthMm / 3) : 0));
  const from = inset[0] ?? 0;
  const span = lengthMm - from - (inset[1] ?? 0);
  const free = FREE[ends[0]] + FREE[ends[1]];
  const fixed = ends.filter((end) => end === "breakout").length;
  const spacing = tieSpacingMm(2 * radiusMm, shopSpacingMm);
  const needed = Math.ceil(span / spacing - 1e-9) + 1 - free;
  const count = Math.max(fixed, Math.ceil(needed - 1e-9));
  if (count <= 0) return [];
  const intervals = count - 1 + free;
  const step = intervals > 0 ? span / intervals : 0;
  return Array.from({ length: count }, (_, i) => from + (FREE[ends[0]] + i) * step);
}
