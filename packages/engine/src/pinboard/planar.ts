import { boxOf, directionDeg, type PointMm, subtractPoints, turnDeg } from "@pinwright/kernel";
import { rootBase } from "./base.ts";
import type { Drawing } from "./drawing.ts";
import { Layout } from "./layout.ts";
import { type Limb, type LimbStep, limbsBeyond } from "./limb.ts";
import type { Bench, Candidate } from "./task.ts";
import { type BoardTree, realVector } from "./tree.ts";

/** What a builder would give for one degree off the direction that the branch has in the machine. */
const DISLIKE_OFF_DEG = 0.1;
/** Limbs that may be laid while a layout is improved, for each limb there is, and in all. */
const SEARCH_STEPS_PER_LIMB = 30;
const SEARCH_STEPS_MOST = 3000;
const ANGLE_STEP_DEG = 15;

/** Whether all of a harness lies on one side of one panel, so that it can be drawn as it lies. */
export function isFlat(tree: BoardTree): boolean {
  const first = tree.nodes[0]?.place;
  return (
    first !== undefined &&
    tree.nodes.every((n) => n.place.panelId === first.panelId && n.place.side === first.side)
  );
}

/**
 * Lays a flat harness as it lies in the machine, with the lengths of the board: every branch in its real
 * direction (mirrored in x for an underside), turned away from it in steps only where things would be in each
 * other's way. The whole is turned by 90° when only that fits the bench. Nothing is improved yet.
 */
export function layAsInMachine(tree: BoardTree, bench: Bench, handRoomMm: number): Layout {
  const turnedDeg = fitsUpright(tree, bench) ? 0 : 90;
  const limbs = limbsBeyond(tree, new Set(), [tree.root], () => false);
  const real = limbs.map((limb) => realDirection(tree, limb));
  const candidates = limbs.map((limb, i) => {
    const own = real[i] ?? null;
    const before = limb.parent === null ? -turnedDeg : (real[limb.parent] ?? null);
    const turn = own === null || before === null ? null : turnDeg(before, own);
    return turnedCandidates(limb.lengthMm, turn);
  });
  const layout = new Layout({
    tree,
    base: rootBase(tree.root),
    limbs,
    bench,
    handRoomMm,
    candidates: (limb) => candidates[limb] ?? [],
  });
  layout.layAll();
  return layout;
}

/** Lays again what is in trouble. */
export function improveAsInMachine(layout: Layout): void {
  layout.improve(Math.min(SEARCH_STEPS_MOST, SEARCH_STEPS_PER_LIMB * layout.limbs.length));
}

function fitsUpright(tree: BoardTree, bench: Bench): boolean {
  const box = boxOf(tree.nodes.map((n) => n.place));
  if (box === null) return true;
  const width = box.maxXMm - box.minXMm;
  const height = box.maxYMm - box.minYMm;
  return height <= bench.heightMm || height > bench.widthMm || width > bench.heightMm;
}

/** The given turn first, then others, the nearest before the farther; in no order when none is given. */
export function turnedCandidates(lengthMm: number, turn: number | null): readonly Candidate[] {
  const list: Candidate[] = [];
  const middle = turn ?? 90;
  for (let off = -180 + ANGLE_STEP_DEG; off <= 180; off += ANGLE_STEP_DEG) {
    const dislike = turn === null ? 0 : Math.abs(off) * DISLIKE_OFF_DEG;
    list.push({ legs: [{ turnDeg: middle + off, lengthMm }], dislike });
  }
  return list.sort((p, q) => p.dislike - q.dislike);
}

/** Directions this close are the same for a builder. */
const SAME_DEG = 1;

/**
 * Whether a drawing shows a flat harness as it lies in the machine: every lane in its real direction, the whole
 * perhaps turned by a multiple of 90°. Tails may point elsewhere; holders are spread out for hands anyway.
 */
export function liesAsInMachine(tree: BoardTree, drawing: Drawing): boolean {
  if (!isFlat(tree)) return false;
  let turned: number | null = null;
  for (const [i, branch] of tree.branches.entries()) {
    const real = branch.kind === "tail" ? null : realVector(tree, branch, branch.a);
    if (real === null) continue;
    for (const [k, b] of (drawing.lines[i] ?? []).entries()) {
      const a = drawing.lines[i]?.[k - 1];
      if (a === undefined) continue;
      const turn = turnDeg(directionDeg(real), directionDeg(subtractPoints(b, a)));
      turned ??= Math.round(turn / 90) * 90;
      if (Math.abs(turnDeg(turned, turn)) > SAME_DEG) return false;
    }
  }
  return true;
}

/** The direction of a limb in the machine, degrees; a tail that only goes on from a lane runs straight on. */
function realDirection(tree: BoardTree, limb: Limb): number | null {
  const first = limb.steps[0];
  const branch = first === undefined ? undefined : tree.branches[first.branch];
  if (first === undefined || branch === undefined) return null;
  const along = straightOn(tree, first) ?? realVector(tree, branch, first.from);
  return along === null ? null : directionDeg(along);
}

/** How a tail runs that is the only way on from a lane; null for every other branch. */
function straightOn(tree: BoardTree, { branch, from, to }: LimbStep): PointMm | null {
  const joint = tree.nodes[from]?.kind === "waypoint" ? from : to;
  const ways = tree.ways[joint] ?? [];
  const other = ways.find((w) => w.branch !== branch);
  const lane = other === undefined ? undefined : tree.branches[other.branch];
  if (tree.branches[branch]?.kind !== "tail" || ways.length !== 2) return null;
  if (other === undefined || lane?.kind !== "lane") return null;
  return realVector(tree, lane, joint === from ? other.to : joint);
}
