import { directionDeg, distance, type PointMm, roundTo, subtractPoints, turnDeg } from "@pinwright/kernel";
import type { Finding, Pinboard, Severity } from "../model/index.ts";
import { type Drawing, itemsOf } from "./drawing.ts";
import type { PinboardInput } from "./input.ts";
import { measure, type Room } from "./measure.ts";
import { type AskedPegs, askedPegs } from "./pegs.ts";
import { type BoardTree, boardTree, type TreeBranch } from "./tree.ts";

type Numbers = Finding["numbers"];

const finding = (
  rule: string,
  severity: Severity,
  subjects: readonly string[],
  numbers: Numbers,
): Finding => ({ rule, severity, subjects, numbers, accepted: null });

const tenth = (mm: number): number => roundTo(mm, 0.1);

/**
 * Everything that is wrong with a pinboard: crossings and overlaps, a board larger than the bench, holders too
 * near for hands, tails too short to load, choices of pegs that could not be kept. Numbers are quantised to
 * 0.1 mm. (Bundles that no tie closes round are told by the bundles' own check.)
 */
export function checkPinboard(input: PinboardInput, pinboard: Pinboard): readonly Finding[] {
  const tree = boardTree(input);
  const drawing = drawingFrom(tree, pinboard);
  return [
    ...checkBench(input, pinboard),
    ...checkRoom(input, tree, drawing),
    ...checkTails(input, tree),
    ...checkPegs(input, tree, drawing),
  ];
}

function drawingFrom(tree: BoardTree, pinboard: Pinboard): Drawing {
  const nodes = new Map(pinboard.nodes.map((n) => [n.id, n.at]));
  const lines = new Map(pinboard.branches.map((b) => [b.id, b.line]));
  const bent = new Set(pinboard.nodes.filter((n) => n.peg).map((n) => n.id));
  const lineOf = (branch: TreeBranch): readonly PointMm[] =>
    branch.parts.flatMap(({ source, forward }, i) => {
      const own = lines.get(source.id) ?? [];
      const ordered = forward ? own : own.toReversed();
      const endsInBend = bent.has(branch.joints[i] ?? "") || i === branch.parts.length - 1;
      return ordered.slice(i === 0 ? 0 : 1, endsInBend ? undefined : -1);
    });
  return {
    nodeAt: tree.nodes.map((n) => nodes.get(n.id) ?? { xMm: 0, yMm: 0 }),
    lines: tree.branches.map(lineOf),
  };
}

function checkBench({ harness }: PinboardInput, pinboard: Pinboard): Finding[] {
  const { widthMm, heightMm } = pinboard;
  if (widthMm <= harness.board_width_mm && heightMm <= harness.board_height_mm) return [];
  return [
    finding("pinboard-too-large", "error", [harness.id], {
      width_mm: widthMm,
      height_mm: heightMm,
      bench_width_mm: harness.board_width_mm,
      bench_height_mm: harness.board_height_mm,
    }),
  ];
}

/** Crossings and overlaps by pair; too little room for hands once for the harness, with its tightest place. */
function checkRoom(input: PinboardInput, tree: BoardTree, drawing: Drawing): Finding[] {
  const harnessId = input.harness.id;
  const { crossings, tight } = measure(itemsOf(tree, drawing), input.numbers.hand_room_mm);
  const branchId = (i: number | null): string => (i === null ? "" : (tree.branches[i]?.id ?? ""));
  const landingId = (i: number | null): string => (i === null ? "" : (tree.holders[i]?.landingId ?? ""));
  const pair = (r: Room): readonly string[] => [
    landingId(r.node),
    r.otherNode === null ? branchId(r.otherBranch) : landingId(r.otherNode),
  ];
  const overlaps = tight.filter((r) => r.distanceMm <= 0);
  const near = tight.filter((r) => r.distanceMm > 0);
  const found = [
    ...crossings.map(([p, q]) =>
      finding("pinboard-crossing", "error", [harnessId, branchId(p), branchId(q)], {}),
    ),
    ...overlaps.map((r) => finding("pinboard-overlap", "error", [harnessId, ...pair(r)], {})),
  ];
  const worst = near.reduce<Room | null>((w, r) => (w === null || r.distanceMm < w.distanceMm ? r : w), null);
  if (worst === null) return found;
  const numbers = {
    room_mm: tenth(worst.distanceMm),
    wanted_mm: tenth(worst.wantedMm),
    holders: new Set(near.map((r) => r.node)).size,
  };
  return [...found, finding("pinboard-hand-room", "warning", [harnessId, ...pair(worst)], numbers)];
}

/** A tail shorter than a hand needs to load its housing. */
function checkTails(input: PinboardInput, tree: BoardTree): Finding[] {
  const wanted = input.numbers.hand_room_mm;
  return tree.branches.flatMap((branch) => {
    const landing = tree.holders[branch.b]?.landingId ?? tree.holders[branch.a]?.landingId;
    if (landing === undefined || branch.lengthMm >= wanted) return [];
    return [
      finding("pinboard-tail-short", "warning", [landing, branch.id, input.harness.id], {
        tail_mm: branch.lengthMm,
        wanted_mm: wanted,
      }),
    ];
  });
}

/** How far a peg may stand from where it was asked for and still count as kept, mm and degrees. */
const KEPT_MM = 0.05;
const KEPT_DEG = 0.1;

function checkPegs(input: PinboardInput, tree: BoardTree, drawing: Drawing): Finding[] {
  const asked: AskedPegs = askedPegs(input, tree);
  const found: Finding[] = [
    ...asked.unreadable.map((s) => finding("pinboard-peg-unreadable", "error", [s, input.harness.id], {})),
    ...asked.unknown.map((s) => finding("pinboard-peg-unknown", "note", [s, input.harness.id], {})),
  ];
  for (const [node, at] of asked.nodeAt) {
    const off = distance(at, drawing.nodeAt[node] ?? at);
    if (off <= KEPT_MM) continue;
    found.push(
      finding("pinboard-peg-moved", "warning", [tree.nodes[node]?.id ?? "", input.harness.id], {
        off_mm: tenth(off),
        asked_x_mm: at.xMm,
        asked_y_mm: at.yMm,
        settled: asked.settled.has(node),
      }),
    );
  }
  for (const [branch, deg] of asked.directionOf) {
    const [a, b] = drawing.lines[branch] ?? [];
    if (a === undefined || b === undefined) continue;
    const off = Math.abs(turnDeg(directionDeg(subtractPoints(b, a)), deg));
    if (off <= KEPT_DEG) continue;
    found.push(
      finding(
        "pinboard-direction-lost",
        "warning",
        [tree.nodes[tree.branches[branch]?.b ?? -1]?.id ?? "", input.harness.id],
        {
          off_deg: tenth(off),
          asked_deg: deg,
        },
      ),
    );
  }
  return found;
}
