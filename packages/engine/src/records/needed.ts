import { compareText } from "@pinwright/kernel";
import { stuffingPlan } from "../boards/index.ts";
import type { LineResult } from "../model/index.ts";
import type { Needed, UnitState } from "./units/index.ts";

type TestRow = LineResult["machine"]["book"]["tables"]["tests"][number];

const NOTHING: Needed = { steps: [], tests: [], places: [] };

/** Id of the continuity test of a harness: every point against all others. It is derived, not a row of the book. */
export const continuityTest = (harnessId: string): string => `continuity:${harnessId}`;

/** Tests in the order in which they are done: least risk first, as the book orders them, then by id. */
export const inOrderOfRisk = (tests: readonly TestRow[]): readonly TestRow[] =>
  [...tests].sort((a, b) => a.order - b.order || compareText(a.id, b.id));

/** Tests of the book that a unit of a kind and type takes, in the order of risk. */
export function testsOf(line: LineResult, what: string, type: string): readonly TestRow[] {
  const { book, options } = line.machine;
  const applies = (row: TestRow): boolean =>
    row.options.length === 0 || row.options.some((option) => options.has(option));
  const isOf = (row: TestRow): boolean => {
    switch (what) {
      case "machine":
        return row.scope === "machine";
      case "board":
        return row.scope === "board" && row.board_type === type;
      case "harness":
        return row.scope === "harness" && row.harness === type;
      default:
        return row.scope === "mechanism" && row.mechanism_type === type;
    }
  };
  return inOrderOfRisk(book.tables.tests.filter((row) => isOf(row) && applies(row)));
}

/** Steps at the bench of a harness, which the book has no rows for. */
const HARNESS_STEPS = ["cut", "lay-up", "tug"] as const;

/** Id of a stage of stuffing as a step. */
export const stageStep = (stage: number): string => `stage-${stage}`;

/**
 * Work at the bench of a board or a harness that the book has no rows for, in its order: the kit of a board and each stage
 * of stuffing it; cutting, laying up and tugging of a harness. A board of which the book tells no parts comes stuffed.
 */
export function benchSteps(line: LineResult, what: string, type: string): readonly string[] {
  if (what === "harness") return HARNESS_STEPS;
  const { placements } = line.machine.book.tables;
  if (what !== "board" || !placements.some((row) => row.board_type === type)) return [];
  const { stages } = stuffingPlan(line.machine, type, 1, "hand");
  return ["kit", ...stages.map(({ number }) => stageStep(number))];
}

/** Bench steps as they are needed: all of them once one is recorded. A unit that was built elsewhere has none. */
function begunBenchSteps(line: LineResult, what: string, type: string, state: UnitState): readonly string[] {
  if (state.steps.size === 0) return [];
  const own = benchSteps(line, what, type);
  return own.some((step) => state.steps.has(step)) ? own : [];
}

/**
 * What a unit must have behind it, from the line of its book with the unit's own options: a machine all its steps, tests,
 * boards and harnesses; a mechanism its bench steps; a harness that every point was tried against all others. Of the work at
 * the bench of a board or a harness, whatever was begun must be done to its end.
 * @param line the line with the options of the unit
 */
export function neededFor(line: LineResult, state: UnitState): Needed {
  const { begun } = state;
  if (begun === null) return NOTHING;
  const tests = testsOf(line, begun.what, begun.type);
  const { steps } = line.steps;
  switch (begun.what) {
    case "machine":
      return {
        steps: steps.filter(({ kind }) => kind !== "bench").map(({ id }) => id),
        tests,
        places: [
          ...[...line.machine.items.values()].filter(({ kind }) => kind === "board").map(({ id }) => id),
          ...line.harnesses.keys(),
        ].sort(compareText),
      };
    case "mechanism":
      return {
        steps: steps
          .filter((step) => step.mechanismTypeId === begun.type && step.kind === "bench")
          .map(({ id }) => id),
        tests,
        places: [],
      };
    case "harness":
      return {
        steps: begunBenchSteps(line, begun.what, begun.type, state),
        tests: [
          { id: continuityTest(begun.type), purpose: "other", kind: "sequence", min: null, max: null },
          ...tests,
        ],
        places: [],
      };
    case "board":
      return { steps: begunBenchSteps(line, begun.what, begun.type, state), tests, places: [] };
  }
}
