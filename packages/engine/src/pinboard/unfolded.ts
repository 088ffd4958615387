import { crossProduct, directionDeg, turnDeg } from "@pinwright/kernel";
import { trunkBase } from "./base.ts";
import { PRICE } from "./crowding.ts";
import { Layout } from "./layout.ts";
import { type Limb, type LimbStep, lengthOf, limbsBeyond, type MayChain, trunkOf } from "./limb.ts";
import { type Leg, legalBendMm } from "./placing.ts";
import type { Base, Bench, Candidate } from "./task.ts";
import { type BoardTree, realVector } from "./tree.ts";

/** Directions are taken in this step: a drawing with few angles is read at a glance. */
const ANGLE_STEP_DEG = 15;
/** What a builder would give for one degree off the right angle (more on a long limb), one bend, the wrong side. */
const DISLIKE_SLANT_DEG = 0.15;
const DISLIKE_SLANT_DEG_M = 0.6;
const DISLIKE_BEND = 14;
const DISLIKE_SIDE = 2;
/** Limbs shorter than this are never bent. */
const LEAST_BENT_MM = 150;
/** Where a limb may turn to run along its parent, measured from the parent. */
const TURN_AT_MM = [75, 110, 150, 200, 260, 340] as const;
/** Room beside the trunk that a folded trunk leaves for tails at its turns. */
const TURN_ROOM_MM = 140;

/** Where more branches meet than that step has room for, the steps are finer. */
const FINE_STEPS: readonly { readonly fromWays: number; readonly stepDeg: number }[] = [
  { fromWays: 24, stepDeg: 5 },
  { fromWays: 12, stepDeg: 7.5 },
];

/** Turns in steps; those that run into the line that a limb hangs on only where that line may end there. */
function turnsDeg(ways: number, isEnd: boolean): readonly number[] {
  const stepDeg = FINE_STEPS.find((s) => ways >= s.fromWays)?.stepDeg ?? ANGLE_STEP_DEG;
  const all = Array.from({ length: 360 / stepDeg }, (_, i) => (i + 1) * stepDeg - 180);
  const least = Math.min(30, 2 * stepDeg);
  return isEnd ? all : all.filter((deg) => Math.abs(deg) >= least && Math.abs(deg) <= 180 - least);
}

/** Limbs that may be laid while a layout is improved, for each limb there is. */
const SEARCH_STEPS_PER_LIMB = 20;
/** The same for making room where a layout cannot be built, where hands have no room, and for each folded trunk. */
const BUILD_STEPS_PER_LIMB = 60;
const ROOM_STEPS_PER_LIMB = 8;
const FOLD_STEPS_PER_LIMB = 8;

export interface UnfoldTask {
  readonly tree: BoardTree;
  readonly bench: Bench;
  readonly handRoomMm: number;
  /** Branches whose direction on the board is chosen, degrees. */
  readonly chosenDeg: ReadonlyMap<number, number>;
}

/**
 * Lays a harness flat with true lengths: the heaviest path as a straight trunk, folded when the bench is too
 * short for it, and every side branch at right angles where there is room, else at the nearest angle that has.
 */
export function unfold(task: UnfoldTask): Layout {
  const { tree, bench } = task;
  const mayChain: MayChain = (branch) => !task.chosenDeg.has(branch);
  const trunk = trunkOf(tree, mayChain);
  let best = hang(task, trunkBase(tree, trunk, STRAIGHT), mayChain);
  const folds = foldedTrunks(tree, trunk, bench);
  if (folds.length > 0) best.improve(FOLD_STEPS_PER_LIMB * best.limbs.length);
  let least = best.total();
  for (const legs of folds) {
    const layout = hang(task, trunkBase(tree, trunk, legs), mayChain);
    layout.improve(FOLD_STEPS_PER_LIMB * layout.limbs.length);
    const price = layout.total() + (legs.length - 1) * DISLIKE_BEND;
    if (price >= least) continue;
    least = price;
    best = layout;
  }
  refine(best);
  return best;
}

/** Improves a layout; then makes room where it cannot be built yet, and then where hands have none. */
function refine(layout: Layout): void {
  const limbs = layout.limbs.length;
  layout.improve(SEARCH_STEPS_PER_LIMB * limbs);
  layout.makeRoom(PRICE.overlap, BUILD_STEPS_PER_LIMB * limbs);
  layout.makeRoom(PRICE.room, ROOM_STEPS_PER_LIMB * limbs);
  layout.improve(ROOM_STEPS_PER_LIMB * limbs);
}

const STRAIGHT: readonly Leg[] = [{ turnDeg: 0, lengthMm: 0 }];

/** Lays what is not held beside pegs that are. */
export function layBeside(task: UnfoldTask, base: Base): Layout {
  const layout = hang(task, base, (branch) => !task.chosenDeg.has(branch));
  refine(layout);
  return layout;
}

/** Lays all that is not in the base, each limb where it costs least at its turn. */
function hang(task: UnfoldTask, base: Base, mayChain: MayChain): Layout {
  const { tree, bench, handRoomMm } = task;
  const limbs = limbsBeyond(tree, new Set(base.lineOf.keys()), [...base.nodeAt.keys()], mayChain);
  const candidates = limbs.map((limb) => limbCandidates(task, base, limbs, limb));
  const layout = new Layout({
    tree,
    base,
    limbs,
    bench,
    handRoomMm,
    candidates: (limb) => candidates[limb] ?? [],
  });
  layout.layAll();
  return layout;
}

/** For a trunk that is longer than the bench: trunks folded in 2, 3 … rows of several pitches. */
function foldedTrunks(
  tree: BoardTree,
  trunk: readonly LimbStep[],
  bench: Bench,
): readonly (readonly Leg[])[] {
  const first = trunk[0];
  const last = trunk.at(-1);
  const ends = [first?.from, last?.to].reduce<number>(
    (sum, node) => sum + (node === undefined ? 0 : (tree.holders[node]?.depthMm ?? 0)),
    0,
  );
  const lengthMm = lengthOf(trunk);
  if (lengthMm + ends <= bench.widthMm) return [];
  const shapes: (readonly Leg[])[] = [];
  for (let rows = 2; rows <= 6; rows++) {
    for (const share of [1, 0.75, 0.5]) {
      const pitchMm = (bench.heightMm / rows) * share;
      const rowMm = (lengthMm - (rows - 1) * pitchMm) / rows;
      if (rowMm < pitchMm || rowMm + ends + TURN_ROOM_MM > bench.widthMm) continue;
      const legs = foldedTrunk(tree, trunk, rows, rowMm, pitchMm);
      if (legs !== null) shapes.push(legs);
    }
    if (shapes.length > 2) break;
  }
  return shapes;
}

function foldedTrunk(
  tree: BoardTree,
  trunk: readonly LimbStep[],
  rows: number,
  rowMm: number,
  pitchMm: number,
): readonly Leg[] | null {
  const wanted: { atMm: number; turnDeg: number }[] = [];
  for (let row = 1; row < rows; row++) {
    const end = row * rowMm + (row - 1) * pitchMm;
    const turn = row % 2 === 1 ? 90 : -90;
    wanted.push({ atMm: end, turnDeg: turn }, { atMm: end + pitchMm, turnDeg: turn });
  }
  return legsWithBends(tree, trunk, 0, wanted);
}

/** Legs with bends as near to the wanted places as branches allow; null when two bends would fall together. */
function legsWithBends(
  tree: BoardTree,
  steps: readonly LimbStep[],
  firstTurnDeg: number,
  wanted: readonly { readonly atMm: number; readonly turnDeg: number }[],
): readonly Leg[] | null {
  const legs: Leg[] = [];
  let turn = firstTurnDeg;
  let from = 0;
  for (const bend of wanted) {
    const at = legalBendMm(tree, steps, bend.atMm);
    if (at === null || at < from + LEAST_LEG_MM) return null;
    legs.push({ turnDeg: turn, lengthMm: at - from });
    turn = bend.turnDeg;
    from = at;
  }
  const rest = lengthOf(steps) - from;
  if (rest < LEAST_LEG_MM) return null;
  return [...legs, { turnDeg: turn, lengthMm: rest }];
}

/** Straight parts shorter than this are no use between two pegs. Common practice, no source. */
const LEAST_LEG_MM = 40;

function limbCandidates(
  task: UnfoldTask,
  base: Base,
  limbs: readonly Limb[],
  limb: Limb,
): readonly Candidate[] {
  const { tree } = task;
  const first = limb.steps[0];
  if (first === undefined) return [];
  const chosen = task.chosenDeg.get(first.branch);
  if (chosen !== undefined) {
    const fixedDeg = tree.branches[first.branch]?.a === first.from ? chosen : chosen + 180;
    return [{ legs: [{ turnDeg: 0, lengthMm: limb.lengthMm }], dislike: 0, fixedDeg }];
  }
  const side = realSide(tree, base, limbs, limb);
  const slantDeg = DISLIKE_SLANT_DEG + (DISLIKE_SLANT_DEG_M * limb.lengthMm) / 1000;
  const ways = tree.ways[limb.start]?.length ?? 0;
  const turns = turnsDeg(ways, limb.parent === null && base.isHeld);
  const list: Candidate[] = [];
  for (const turn of turns) {
    const wrong = side !== 0 && Math.sign(turn) !== side ? DISLIKE_SIDE : 0;
    const slant = Math.abs(Math.abs(turn) - 90) * slantDeg;
    list.push({ legs: [{ turnDeg: turn, lengthMm: limb.lengthMm }], dislike: slant + wrong });
    if (limb.lengthMm < LEAST_BENT_MM || Math.abs(turn) !== 90) continue;
    for (const atMm of TURN_AT_MM) {
      for (const turnDeg of [90, -90]) {
        const legs = legsWithBends(tree, limb.steps, turn, [{ atMm, turnDeg }]);
        if (legs !== null) list.push({ legs, dislike: wrong + DISLIKE_BEND });
        list.push(...foldedLimb(task, limb, turn, atMm, turnDeg, wrong));
      }
    }
  }
  return list.sort((p, q) => p.dislike - q.dislike);
}

/** A long limb that runs out, along, and back again. */
function foldedLimb(
  task: UnfoldTask,
  limb: Limb,
  turn: number,
  atMm: number,
  turnDeg: number,
  dislike: number,
): Candidate[] {
  const { tree, bench } = task;
  const along = limb.lengthMm - atMm;
  if (along < bench.widthMm / 2) return [];
  const list: Candidate[] = [];
  for (const pitchMm of [100, 160, 240]) {
    for (const back of [turnDeg, -turnDeg]) {
      const row = (along - pitchMm) / 2;
      const legs = legsWithBends(tree, limb.steps, turn, [
        { atMm, turnDeg },
        { atMm: atMm + row, turnDeg: back },
        { atMm: atMm + row + pitchMm, turnDeg: back },
      ]);
      if (legs !== null) list.push({ legs, dislike: dislike + 3 * DISLIKE_BEND });
    }
  }
  return list;
}

/** The side on which a limb leaves in the machine: 1 left, −1 right of the line it hangs on, 0 not known. */
function realSide(tree: BoardTree, base: Base, limbs: readonly Limb[], limb: Limb): -1 | 0 | 1 {
  const first = limb.steps[0];
  const above = limb.parent === null ? undefined : limbs[limb.parent]?.steps[limb.parentStep];
  const branch = first === undefined ? undefined : tree.branches[first.branch];
  if (first === undefined || branch === undefined) return 0;
  const own = realVector(tree, branch, first.from);
  const arriving = above ?? arrivingStep(tree, base, limb.start);
  const before = arriving === null ? undefined : tree.branches[arriving.branch];
  if (own === null || arriving === null || before === undefined) return 0;
  const along = realVector(tree, before, arriving.from);
  if (along === null) return 0;
  const side = crossProduct(along, own);
  return side > 1e-6 ? 1 : side < -1e-6 ? -1 : 0;
}

/** The laid branch that arrives at a node of the base in the base's own direction. */
function arrivingStep(tree: BoardTree, base: Base, node: number): Pick<LimbStep, "branch" | "from"> | null {
  const at = base.nodeAt.get(node);
  const runs = base.directionAt.get(node) ?? 0;
  if (at === undefined) return null;
  for (const way of tree.ways[node] ?? []) {
    const from = base.nodeAt.get(way.to);
    if (!base.lineOf.has(way.branch) || from === undefined) continue;
    const direction = directionDeg({ xMm: at.xMm - from.xMm, yMm: at.yMm - from.yMm });
    if (Math.abs(turnDeg(direction, runs)) < 45) return { branch: way.branch, from: way.to };
  }
  return null;
}
