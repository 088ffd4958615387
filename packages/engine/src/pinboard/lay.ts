import {
  directionDeg,
  normaliseDeg,
  type PointMm,
  roundTo,
  subtractPoints,
  turnDeg,
} from "@pinwright/kernel";
import type { Pinboard, PinboardBranch, PinboardHolder, PinboardNode } from "../model/index.ts";
import { leastAreaMm2 } from "./area-bound.ts";
import { startHolder } from "./base.ts";
import { type Drawing, drawingOf } from "./drawing.ts";
import type { PinboardInput } from "./input.ts";
import type { Grip, Item } from "./item.ts";
import type { Bench, Layout } from "./layout.ts";
import { measure, type Quality } from "./measure.ts";
import { addBranchItems } from "./placing.ts";
import { improveAsInMachine, isFlat, layAsInMachine } from "./planar.ts";
import { tiesOf } from "./ties.ts";
import { type BoardTree, boardTree } from "./tree.ts";
import { unfold } from "./unfolded.ts";

/** Coordinates are rounded to this: fine enough that a line of many bends keeps its length within 0.001 mm. */
const GRAIN_MM = 0.0001;
/** How much larger a board may be for showing the harness as it lies in the machine. Common practice, no source. */
const PLANAR_AREA_FACTOR = 1.3;

/** A first planar layout with more troubles than this share of its branches is not worth improving. */
const HOPEFUL_SHARE = 0.2;

interface Option {
  readonly kind: Pinboard["kind"];
  readonly drawing: Drawing;
  readonly quality: Quality;
}

/**
 * Lays the pinboard of one harness: flat, true to scale, every line as long as its branch. As it lies in the
 * machine when that can be built on the bench, else unfolded round a straight trunk. Pure and deterministic;
 * the order of nodes and branches in the input carries no meaning.
 */
export function layPinboard(input: PinboardInput): Pinboard {
  const tree = boardTree(input);
  const { board_margin_mm: marginMm, hand_room_mm: handRoomMm } = input.numbers;
  const bench: Bench = {
    widthMm: input.harness.board_width_mm - 2 * marginMm,
    heightMm: input.harness.board_height_mm - 2 * marginMm,
    origin: null,
  };
  const option = (kind: Pinboard["kind"], layout: Layout): Option => {
    const drawing = drawingOf(tree, layout);
    return { kind, drawing, quality: measure(itemsOf(tree, drawing), handRoomMm) };
  };
  let best = option("unfolded", unfold({ tree, bench, handRoomMm, chosenDeg: new Map() }));
  if (isFlat(tree)) {
    const layout = layAsInMachine(tree, bench, handRoomMm);
    if (troubles(option("planar", layout)) <= troubles(best) + tree.branches.length * HOPEFUL_SHARE) {
      improveAsInMachine(layout);
      const planar = option("planar", layout);
      if (isBetter(planar, best, bench)) best = planar;
    }
  }
  return finish(input, tree, best);
}

const troubles = ({ quality }: Option): number =>
  quality.crossings.length + quality.overlaps + quality.tight.length;

/** Everything on a drawing that takes room. */
export function itemsOf(tree: BoardTree, drawing: Drawing): Item[] {
  const items: Item[] = [];
  tree.branches.forEach((branch, i) => {
    const line = drawing.lines[i] ?? [];
    const step = { branch: i, from: branch.a, to: branch.b, lengthMm: branch.lengthMm };
    const before = line.at(-2) ?? line[0];
    const end = line.at(-1);
    const arrives = before === undefined || end === undefined ? 0 : directionDeg(subtractPoints(end, before));
    addBranchItems(tree, step, line, arrives, items);
    items.push(...startHolder(tree, step, line));
  });
  return items;
}

/** Compares by what stops a builder first: crossings, overlaps, the bench, hands, and then the board's area. */
function isBetter(p: Option, q: Option, bench: Bench): boolean {
  const hard = (o: Option): readonly number[] => [
    o.quality.crossings.length,
    o.quality.overlaps,
    fits(o.quality, bench) ? 0 : 1,
    o.quality.tight.length,
  ];
  const a = hard(p);
  const b = hard(q);
  for (const [i, value] of a.entries()) {
    if (value !== b[i]) return value < (b[i] ?? 0);
  }
  return weighedArea(p) < weighedArea(q);
}

const weighedArea = (o: Option): number => {
  const { box } = o.quality;
  const area = (box.maxXMm - box.minXMm) * (box.maxYMm - box.minYMm);
  return o.kind === "planar" ? area / PLANAR_AREA_FACTOR : area;
};

const fits = ({ box }: Quality, bench: Bench): boolean =>
  box.maxXMm - box.minXMm <= bench.widthMm && box.maxYMm - box.minYMm <= bench.heightMm;

function finish(input: PinboardInput, tree: BoardTree, chosen: Option): Pinboard {
  const { board_margin_mm: marginMm, hand_room_mm: handRoomMm, tie_spacing_mm } = input.numbers;
  const { box, crossings, overlaps, tight } = chosen.quality;
  const shift = { xMm: marginMm - box.minXMm, yMm: marginMm - box.minYMm };
  const at = (p: PointMm): PointMm => ({
    xMm: roundTo(p.xMm + shift.xMm, GRAIN_MM),
    yMm: roundTo(p.yMm + shift.yMm, GRAIN_MM),
  });
  const widthMm = Math.ceil(box.maxXMm + shift.xMm + marginMm - 1e-6);
  const heightMm = Math.ceil(box.maxYMm + shift.yMm + marginMm - 1e-6);
  const branches = tree.branches.map(
    (branch, i): PinboardBranch => ({
      id: branch.source.id,
      line: (chosen.drawing.lines[i] ?? []).map(at),
      lengthMm: branch.lengthMm,
      tiesMm: tiesOf(tree, branch, tie_spacing_mm).map((mm) => roundTo(mm, 0.1)),
    }),
  );
  const holders = tree.holders.flatMap((h) => (h === null ? [] : [h]));
  const crowded = tight.some((r) => r.otherNode !== null);
  const area = widthMm * heightMm;
  const bound = Math.min(area, leastAreaMm2(holders, tree.branches, crowded ? 0 : handRoomMm, marginMm));
  const first = tree.nodes[0]?.place;
  return {
    harnessId: input.harness.id,
    widthMm,
    heightMm,
    kind: chosen.kind,
    side: first?.side ?? "top",
    nodes: tree.nodes.map(
      (node, i): PinboardNode => ({
        id: node.id,
        at: at(chosen.drawing.nodeAt[i] ?? { xMm: 0, yMm: 0 }),
        peg: node.breakout || bendsAt(tree, chosen.drawing, i),
      }),
    ),
    branches,
    holders: holdersOf(tree, chosen.drawing, at),
    bendPegs: branches.flatMap((b) => b.line.slice(1, -1)),
    crossings: crossings.length,
    overlaps,
    area: { value: area, lowerBound: bound, gap: bound === 0 ? 0 : (area - bound) / bound },
  };
}

/** A change of direction from which on a peg has to hold the bundle. */
const LEAST_BEND_DEG = 0.5;

function bendsAt(tree: BoardTree, drawing: Drawing, node: number): boolean {
  const ways = tree.ways[node] ?? [];
  if (ways.length !== 2) return false;
  const away = ways.map((way) => {
    const line = drawing.lines[way.branch] ?? [];
    const ordered = tree.branches[way.branch]?.a === node ? line : line.toReversed();
    const [a, b] = ordered;
    return a === undefined || b === undefined ? 0 : directionDeg(subtractPoints(b, a));
  });
  return Math.abs(Math.abs(turnDeg(away[0] ?? 0, away[1] ?? 0)) - 180) > LEAST_BEND_DEG;
}

function holdersOf(tree: BoardTree, drawing: Drawing, at: (p: PointMm) => PointMm): PinboardHolder[] {
  const grips = itemsOf(tree, drawing).filter((i): i is Grip => i.kind === "grip");
  return grips
    .sort((p, q) => p.node - q.node)
    .flatMap((g) => {
      const holder = tree.holders[g.node];
      const place = drawing.nodeAt[g.node];
      if (holder === null || holder === undefined || place === undefined) return [];
      return [
        {
          landingId: holder.landingId,
          at: at(place),
          towardDeg: roundTo(normaliseDeg(g.rectangle.rotationDeg - 90), 1e-6),
          widthMm: holder.widthMm,
          depthMm: holder.depthMm,
        },
      ];
    });
}
