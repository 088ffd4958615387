import { type PointMm, subtractPoints } from "@pinwright/kernel";
import type { Pinboard } from "../model/index.ts";
import { layInCones } from "./cones.ts";
import { type Drawing, drawingOf, itemsOf } from "./drawing.ts";
import { finishBoard } from "./finish.ts";
import { HeldPegs } from "./held.ts";
import type { PinboardInput } from "./input.ts";
import type { Layout } from "./layout.ts";
import { measure, type Quality } from "./measure.ts";
import { type AskedPegs, askedPegs } from "./pegs.ts";
import { improveAsInMachine, isFlat, layAsInMachine, liesAsInMachine } from "./planar.ts";
import type { Bench } from "./task.ts";
import { type BoardTree, boardTree } from "./tree.ts";
import { layBeside, unfold } from "./unfolded.ts";

/** How much larger a board may be for showing the harness as it lies in the machine. Common practice, no source. */
const PLANAR_AREA_FACTOR = 1.3;
/** A first planar layout with more troubles than this share of its branches is not worth improving. */
const HOPEFUL_SHARE = 0.2;

interface Option {
  readonly drawing: Drawing;
  readonly quality: Quality;
  /** What a builder can follow at a glance; lanes that are merely turned out of each other's way are neither. */
  readonly look: "straight trunk" | "as in the machine" | "turned";
}

/**
 * Lays the pinboard of one harness: flat, true to scale, every line as long as its branch. As it lies in the
 * machine when that can be built on the bench as well, else unfolded round a straight trunk; pegs that choices
 * hold stay where they are. Pure and deterministic; the order of nodes and branches in the input carries no
 * meaning. What is wrong with the board is told by `checkPinboard`.
 */
export function layPinboard(input: PinboardInput): Pinboard {
  const tree = boardTree(input);
  const asked = askedPegs(input, tree);
  const task = taskOf(input, tree, asked);
  if (asked.nodeAt.size < 2) {
    const best = layFreely(task);
    const held = holdOne(best.drawing, asked);
    return finishBoard(input, tree, held ?? best.drawing, moved(task, held, best.quality), held !== null);
  }
  const base = new HeldPegs(tree, asked, task.handRoomMm).lay();
  const origin = { xMm: input.numbers.board_margin_mm, yMm: input.numbers.board_margin_mm };
  const layout = layBeside({ ...task, bench: { ...task.bench, origin } }, base);
  const drawing = drawingOf(tree, layout);
  return finishBoard(input, tree, drawing, measure(itemsOf(tree, drawing), task.handRoomMm), true);
}

interface Task {
  readonly tree: BoardTree;
  readonly bench: Bench;
  readonly handRoomMm: number;
  readonly chosenDeg: ReadonlyMap<number, number>;
}

function taskOf(input: PinboardInput, tree: BoardTree, asked: AskedPegs): Task {
  const { board_margin_mm: marginMm, hand_room_mm: handRoomMm } = input.numbers;
  return {
    tree,
    bench: {
      widthMm: input.harness.board_width_mm - 2 * marginMm,
      heightMm: input.harness.board_height_mm - 2 * marginMm,
      origin: null,
    },
    handRoomMm,
    chosenDeg: asked.directionOf,
  };
}

/** Lays a harness of which no peg, or only one, is held: the best of the ways there are. */
function layFreely(task: Task): Option {
  const { tree, bench, handRoomMm } = task;
  let best = optionOf(task, unfold(task), "straight trunk");
  if (task.chosenDeg.size === 0 && isFlat(tree)) {
    const layout = layAsInMachine(tree, bench, handRoomMm);
    if (troubles(optionOf(task, layout, "turned")) <= troubles(best) + tree.branches.length * HOPEFUL_SHARE) {
      improveAsInMachine(layout);
      const lies = liesAsInMachine(tree, drawingOf(tree, layout));
      best = better(best, optionOf(task, layout, lies ? "as in the machine" : "turned"), bench);
    }
  }
  if (best.quality.crossings.length === 0) return best;
  return better(best, optionOf(task, layInCones(tree, bench, handRoomMm), "turned"), bench);
}

function optionOf({ tree, handRoomMm }: Task, layout: Layout, look: Option["look"]): Option {
  const drawing = drawingOf(tree, layout);
  return { drawing, quality: measure(itemsOf(tree, drawing), handRoomMm), look };
}

const troubles = ({ quality }: Option): number =>
  quality.crossings.length + quality.overlaps + quality.tight.length;

/** The better of two by what stops a builder first: crossings, overlaps, the bench; then the look, hands, area. */
function better(p: Option, q: Option, bench: Bench): Option {
  const merits = ({ quality, look }: Option): readonly number[] => [
    quality.crossings.length,
    quality.overlaps,
    fits(quality, bench) ? 0 : 1,
    look === "turned" ? 1 : 0,
    quality.tight.length,
    areaMm2(quality) / (look === "as in the machine" ? PLANAR_AREA_FACTOR : 1),
  ];
  const a = merits(p);
  const b = merits(q);
  const decides = a.findIndex((value, i) => value !== b[i]);
  return decides < 0 || (a[decides] ?? 0) <= (b[decides] ?? 0) ? p : q;
}

const areaMm2 = ({ box }: Quality): number => (box.maxXMm - box.minXMm) * (box.maxYMm - box.minYMm);

const fits = ({ box }: Quality, bench: Bench): boolean =>
  box.maxXMm - box.minXMm <= bench.widthMm && box.maxYMm - box.minYMm <= bench.heightMm;

/** The whole drawing moved so that the one held peg is where it was asked for; null when none is held. */
function holdOne(drawing: Drawing, asked: AskedPegs): Drawing | null {
  const [held] = asked.nodeAt;
  const from = held === undefined ? undefined : drawing.nodeAt[held[0]];
  if (held === undefined || from === undefined) return null;
  const by = subtractPoints(held[1], from);
  const move = (p: PointMm): PointMm => ({ xMm: p.xMm + by.xMm, yMm: p.yMm + by.yMm });
  return { nodeAt: drawing.nodeAt.map(move), lines: drawing.lines.map((line) => line.map(move)) };
}

const moved = ({ tree, handRoomMm }: Task, drawing: Drawing | null, before: Quality): Quality =>
  drawing === null ? before : measure(itemsOf(tree, drawing), handRoomMm);
