import {
  addPoints,
  compareText,
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
import { grained, splitLine } from "./split.ts";
import { tiesOf } from "./ties.ts";
import type { BoardTree, TreeBranch } from "./tree.ts";

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
  const at = (p: PointMm): PointMm => grained(addPoints(p, shift));
  const widthMm = Math.ceil(box.maxXMm + shift.xMm + marginMm - 1e-6);
  const heightMm = Math.ceil(box.maxYMm + shift.yMm + marginMm - 1e-6);
  const laid = tree.branches.map((branch, i) =>
    layParts(tree, branch, (drawing.lines[i] ?? []).map(at), tie_spacing_mm),
  );
  const branches = laid.flatMap((l) => l.branches).sort((p, q) => compareText(p.id, q.id));
  const nodes = tree.nodes.map(
    (node, i): PinboardNode => ({
      id: node.id,
      at: at(drawing.nodeAt[i] ?? { xMm: 0, yMm: 0 }),
      peg: node.breakout || bendsAt(tree, drawing, i),
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
    nodes: [...nodes, ...laid.flatMap((l) => l.joints)].sort((p, q) => compareText(p.id, q.id)),
    branches,
    holders: holdersOf(tree, drawing, at),
    bendPegs: branches.flatMap((b) => b.line.slice(1, -1)),
    crossings: crossings.length,
    overlaps,
    area: { value: area, lowerBound: bound, gap: bound === 0 ? 0 : (area - bound) / bound },
  };
}

/** The branches along one laid piece with their own lines and ties, and the nodes between them. */
function layParts(
  tree: BoardTree,
  branch: TreeBranch,
  line: readonly PointMm[],
  tieSpacingMm: number,
): { readonly branches: readonly PinboardBranch[]; readonly joints: readonly PinboardNode[] } {
  const split = splitLine(
    line,
    branch.parts.map((part) => part.source.lengthMm),
  );
  const ties = tiesOf(tree, branch, tieSpacingMm);
  let from = 0;
  const branches = branch.parts.map(({ source, forward }, i): PinboardBranch => {
    const own = split.parts[i] ?? [];
    const to = i === branch.parts.length - 1 ? Number.POSITIVE_INFINITY : from + source.lengthMm;
    const along = ties.filter((mm) => mm >= from && mm < to).map((mm) => mm - from);
    from += source.lengthMm;
    return {
      id: source.id,
      line: forward ? own : own.toReversed(),
      lengthMm: source.lengthMm,
      tiesMm: (forward ? along : along.map((mm) => source.lengthMm - mm).reverse()).map((mm) =>
        roundTo(mm, 0.1),
      ),
    };
  });
  const joints = branch.joints.map((id, i): PinboardNode => {
    const joint = split.joints[i];
    return { id, at: joint?.at ?? { xMm: 0, yMm: 0 }, peg: joint?.bends ?? false };
  });
  return { branches, joints };
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
