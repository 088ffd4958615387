import type { BookRow } from "@pinwright/book";
import {
  type BoardPoint,
  type LineResult,
  layPinboard,
  type Pinboard,
  pinboardInput,
  settlePegs,
} from "@pinwright/engine";
import { roundTo, subtractPoints } from "@pinwright/kernel";
import { carry } from "./carry.ts";

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
}

/** As fine as the engine keeps places: a holder that is a hundredth too near would bend its tail. */
const GRAIN_MM = 0.0001;
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

const PLACE = /^(-?[\d.]+),(-?[\d.]+)$/;

/** Places in a kept value, moved: `x,y`, or several of them. */
const movedBy = (value: string, by: BoardPoint): string =>
  value
    .split(" ")
    .map((text) => {
      const [, x, y] = PLACE.exec(text) ?? [];
      return x === undefined || y === undefined
        ? text
        : written({ xMm: Number(x) + by.xMm, yMm: Number(y) + by.yMm });
    })
    .join(" ");

/** Lays the pinboard with one peg moved; every other one stays where it is as far as that can be. */
export function tryPeg(line: LineResult, move: PegMove): PegTrial | null {
  const harness = line.harnesses.get(move.harnessId);
  if (harness === undefined) return null;
  const subject = `${move.harnessId}|${move.nodeId}`;
  const carried = carry(harness, move.nodeId, move);
  const before = harness.pinboard.nodes.find((node) => node.id === move.nodeId)?.at ?? carried.at;
  const by = subtractPoints(carried.at, before);
  const own = `${move.harnessId}|`;
  /** Bends of the branch that leads to the bulk of the harness are laid anew. */
  const bent = new Set(
    harness.branches
      .filter(({ id, a, b }) => (a === move.nodeId || b === move.nodeId) && !carried.branches.has(id))
      .map((branch) => `${own}${BENDS}${branch.id}`),
  );
  const hangsOn = (kept: string): boolean => {
    const id = kept.slice(own.length);
    return id.startsWith(BENDS) ? carried.branches.has(id.slice(BENDS.length)) : carried.nodes.has(id);
  };
  const input = pinboardInput(line.machine, harness.harness, harness.route, harness.branches);
  const pegs = new Map<string, Choice>();
  for (const kept of settlePegs(harness.pinboard)) {
    if (bent.has(kept.subject)) continue;
    const value = hangsOn(kept.subject) ? movedBy(kept.value, by) : kept.value;
    pegs.set(kept.subject, choiceRow(kept.subject, value, "settled"));
  }
  for (const [kept, row] of input.pegs) if (row.held === "pinned" && !bent.has(kept)) pegs.set(kept, row);
  pegs.set(subject, choiceRow(subject, written(carried.at), "pinned"));
  const trial = { ...input, pegs };
  const pinboard = layPinboard(trial);
  const at = pinboard.nodes.find((node) => node.id === move.nodeId)?.at ?? carried.at;
  return { pinboard, at };
}

/** A row of the choices of pegs as it should be; null: gone. */
export interface WantedPeg {
  readonly subject: string;
  readonly row: Omit<Choice, "kind" | "subject"> | null;
}

/** What the choices of pegs have to say so that a pinboard stays as it was tried. */
export function keepTrial(
  line: LineResult,
  move: PegMove,
  trial: PegTrial,
  why: { readonly by: string; readonly reason: string },
): readonly WantedPeg[] {
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

/**
 * What the choices of pegs have to say so that the program places one peg again: its own row goes, and kept rows
 * of others follow where it had taken them along. Null stands for all pegs of the harness.
 */
export function freePegs(line: LineResult, harnessId: string, nodeId: string | null): readonly WantedPeg[] {
  const harness = line.harnesses.get(harnessId);
  const own = `${harnessId}|`;
  if (harness === undefined) return [];
  const input = pinboardInput(line.machine, harness.harness, harness.route, harness.branches);
  const freed = (subject: string): boolean =>
    nodeId === null ||
    subject === `${own}${nodeId}` ||
    harness.branches.some(
      ({ id, a, b }) => (a === nodeId || b === nodeId) && subject === `${own}${BENDS}${id}`,
    );
  const pegs = new Map([...input.pegs].filter(([subject]) => !freed(subject)));
  const kept = new Map(settlePegs(layPinboard({ ...input, pegs })).map((peg) => [peg.subject, peg.value]));
  return [...input.pegs].flatMap(([subject, row]): readonly WantedPeg[] => {
    if (freed(subject)) return [{ subject, row: null }];
    const value = kept.get(subject);
    if (row.held === "pinned" || value === undefined || value === row.value) return [];
    return [{ subject, row: { ...row, value } }];
  });
}
