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
import { type Drawing, itemsOf } from "./drawing.ts";
import type { PinboardInput } from "./input.ts";
import type { Grip } from "./item.ts";
import type { Quality } from "./measure.ts";
import { liesAsInMachine } from "./planar.ts";
import { tiesOf } from "./ties.ts";
import type { BoardTree } from "./tree.ts";

/** Coordinates are rounded to this: fine enough that a line of many bends keeps its length within 0.001 mm. */
const GRAIN_MM = 0.0001;

/**
 * Reads a pinboard out of a chosen drawing. `held` says that its pegs stand where they are on the board; else the
 * drawing is moved into the board's lower left corner.
 */
export function finishBoard(
  input: PinboardInput,
  tree: BoardTree,
  drawing: Drawing,
  quality: Quality,
  held: boolean,
): Pinboard {
  const { board_margin_mm: marginMm, hand_room_mm: handRoomMm, tie_spacing_mm } = input.numbers;
  const { box, crossings, overlaps, tight } = quality;
  const shift = held ? { xMm: 0, yMm: 0 } : { xMm: marginMm - box.minXMm, yMm: marginMm - box.minYMm };
  const at = (p: PointMm): PointMm => ({
    xMm: roundTo(p.xMm + shift.xMm, GRAIN_MM),
    yMm: roundTo(p.yMm + shift.yMm, GRAIN_MM),
  });
  const widthMm = Math.ceil(box.maxXMm + shift.xMm + marginMm - 1e-6);
  const heightMm = Math.ceil(box.maxYMm + shift.yMm + marginMm - 1e-6);
  const branches = tree.branches.map(
    (branch, i): PinboardBranch => ({
      id: branch.source.id,
      line: (drawing.lines[i] ?? []).map(at),
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
    kind: liesAsInMachine(tree, drawing) ? "planar" : "unfolded",
    side: first?.side ?? "top",
    nodes: tree.nodes.map(
      (node, i): PinboardNode => ({
        id: node.id,
        at: at(drawing.nodeAt[i] ?? { xMm: 0, yMm: 0 }),
        peg: node.breakout || bendsAt(tree, drawing, i),
      }),
    ),
    branches,
    holders: holdersOf(tree, drawing, at),
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
          towardDeg: roundTo(normaliseDeg(g.rectangle.rotationDeg - 90), 0.01),
          widthMm: holder.widthMm,
          depthMm: holder.depthMm,
        },
      ];
    });
}
