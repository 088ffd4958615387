import type { BookRow } from "@pinwright/book";
import {
  type BoardPoint,
  checkPinboard,
  type HarnessResult,
  type LineResult,
  layPinboard,
  type Pinboard,
  pinboardInput,
  settlePegs,
} from "@pinwright/engine";
import { addPoints, distance, roundTo, scalePoint, subtractPoints } from "@pinwright/kernel";

type Choice = BookRow<"choices">;

/** A peg or holder that is moved by hand. */
export interface PegMove {
  readonly harnessId: string;
  /** Tree node id. */
  readonly nodeId: string;
  /** Where the hand wants it, in board mm. */
  readonly xMm: number;
  readonly yMm: number;
}

/** The pinboard with a peg where the hand wants it, or as near as its branches reach. */
export interface PegTrial {
  readonly pinboard: Pinboard;
  /** Where it is now. */
  readonly at: BoardPoint;
  /** Crossings, overlaps and places without room for hands. */
  readonly troubles: number;
}

/** Places are kept to a hundredth of a millimetre: finer than a peg can be set. */
const GRAIN_MM = 0.01;
const BENDS = "bends:";

const written = ({ xMm, yMm }: BoardPoint): string => `${roundTo(xMm, GRAIN_MM)},${roundTo(yMm, GRAIN_MM)}`;

const choiceRow = (subject: string, value: string, held: Choice["held"]): Choice => ({
  kind: "peg",
  subject,
  value,
  held,
  by: "",
  reason: "",
  basis: "",
});

/** Branches that a node is an end of. */
const branchesAt = ({ branches }: HarnessResult, nodeId: string) =>
  branches.filter((branch) => branch.a === nodeId || branch.b === nodeId);

/**
 * A holder is carried round on its straight tail: it goes to the end of the tail in the direction of the hand,
 * seen from the next peg on the way to it.
 */
function onTail(harness: HarnessResult, { nodeId, ...hand }: PegMove): BoardPoint {
  const places = new Map(harness.pinboard.nodes.map((node) => [node.id, node]));
  let node = nodeId;
  let lengthMm = 0;
  const passed = new Set<string>();
  for (;;) {
    const ways = branchesAt(harness, node).filter((branch) => !passed.has(branch.id));
    const [way] = ways;
    const isJoint = node === nodeId || (ways.length === 1 && places.get(node)?.peg === false);
    if (way === undefined || !isJoint) break;
    passed.add(way.id);
    lengthMm += way.lengthMm;
    node = way.a === node ? way.b : way.a;
  }
  const from = places.get(node)?.at;
  const apart = from === undefined ? 0 : distance(from, hand);
  if (from === undefined || apart === 0 || lengthMm === 0) return hand;
  return addPoints(from, scalePoint(subtractPoints(hand, from), lengthMm / apart));
}

/** Lays the pinboard with one peg moved; every other one stays where it is as far as that can be. */
export function tryPeg(line: LineResult, move: PegMove): PegTrial | null {
  const harness = line.harnesses.get(move.harnessId);
  if (harness === undefined) return null;
  const subject = `${move.harnessId}|${move.nodeId}`;
  const wanted = move.nodeId.startsWith("landing:") ? onTail(harness, move) : move;
  const bent = new Set(
    branchesAt(harness, move.nodeId).map((branch) => `${move.harnessId}|${BENDS}${branch.id}`),
  );
  const input = pinboardInput(line.machine, harness.harness, harness.route, harness.branches);
  const pegs = new Map<string, Choice>();
  for (const kept of settlePegs(harness.pinboard))
    if (!bent.has(kept.subject)) pegs.set(kept.subject, choiceRow(kept.subject, kept.value, "settled"));
  for (const [own, row] of input.pegs) if (row.held === "pinned" && !bent.has(own)) pegs.set(own, row);
  pegs.set(subject, choiceRow(subject, written(wanted), "pinned"));
  const trial = { ...input, pegs };
  const pinboard = layPinboard(trial);
  const at = pinboard.nodes.find((node) => node.id === move.nodeId)?.at ?? wanted;
  return { pinboard, at, troubles: checkPinboard(trial, pinboard).length };
}

/** What the choices of pegs have to say so that a pinboard stays as it was tried. */
export function keepTrial(
  line: LineResult,
  move: PegMove,
  trial: PegTrial,
  why: { readonly by: string; readonly reason: string },
): readonly { readonly subject: string; readonly row: Omit<Choice, "kind" | "subject"> | null }[] {
  const own = `${move.harnessId}|`;
  const subject = `${own}${move.nodeId}`;
  const kept = new Map(settlePegs(trial.pinboard).map((peg) => [peg.subject, peg.value]));
  kept.set(subject, `${trial.at.xMm},${trial.at.yMm}`);
  const before = line.machine.choices.get("peg") ?? new Map<string, Choice>();
  const gone = [...before.keys()].filter((one) => one.startsWith(own) && !kept.has(one));
  const isPinned = (one: string): boolean => before.get(one)?.held === "pinned" && one !== subject;
  return [
    ...[...kept].flatMap(([one, value]) => {
      if (isPinned(one)) return [];
      const held = one === subject ? ("pinned" as const) : ("settled" as const);
      const given = one === subject ? why : { by: "", reason: "" };
      return [{ subject: one, row: { value, held, basis: "", ...given } }];
    }),
    ...gone.filter((one) => !isPinned(one)).map((one) => ({ subject: one, row: null })),
  ];
}
