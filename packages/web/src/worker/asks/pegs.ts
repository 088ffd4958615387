import type { CellChange } from "@pinwright/book";
import { choiceChanges, type WantedChoice } from "../edits/choices.ts";
import type { Model } from "../model.ts";
import { type BoardShape, boardShape } from "../pegs/board-shape.ts";
import { freePegs, keepTrial, type PegMove, tryPeg } from "../pegs/peg-trial.ts";

/** A pinboard while one of its pegs is in the hand. */
export interface TriedPeg {
  readonly shape: BoardShape;
  readonly at: { readonly xMm: number; readonly yMm: number };
  /** Pairs of things that cross or overlap. */
  readonly troubles: number;
}

/** The pinboard with a peg moved, not kept. */
export function pegTrial({ line }: Model, move: PegMove): TriedPeg | null {
  const harness = line.harnesses.get(move.harnessId);
  const trial = tryPeg(line, move);
  if (harness === undefined || trial === null) return null;
  const { at, pinboard } = trial;
  return {
    shape: boardShape(line.machine, harness, pinboard),
    at,
    troubles: pinboard.crossings + pinboard.overlaps,
  };
}

/** The changes that pin a peg where it was moved to, and keep every other one where it then is. */
export function pinPeg(
  { line, tables }: Model,
  { move, by, reason }: { readonly move: PegMove; readonly by: string; readonly reason: string },
): readonly CellChange[] {
  const trial = tryPeg(line, move);
  if (trial === null) return [];
  const wanted = keepTrial(line, move, trial, { by, reason });
  return choiceChanges(
    tables,
    wanted.map((one): WantedChoice => ({ kind: "peg", ...one })),
  );
}

/** The changes that let the program place pegs again: `nodeId` null stands for all of a harness. */
export function unpinPegs(
  { line, tables }: Model,
  { harnessId, nodeId }: { readonly harnessId: string; readonly nodeId: string | null },
): readonly CellChange[] {
  return choiceChanges(
    tables,
    freePegs(line, harnessId, nodeId).map((one): WantedChoice => ({ kind: "peg", ...one })),
  );
}
