import type { KeptUnit } from "@pinwright/contract";
import {
  continuityTest,
  PULLING_DEFECTS,
  releaseBlocks,
  type StepRecord,
  type UnitState,
} from "@pinwright/engine";
import type { ViewEntry } from "../../worker/protocol.ts";

export type Work = ViewEntry<"floorWork">;
export type Test = Work["tests"][number];
export type Place = Work["places"][number];

/** Work at the bench of boards and harnesses that the book has no row for. */
const OWN_STEPS = ["kit", "cut", "lay-up"] as const;
type OwnStep = (typeof OWN_STEPS)[number];
const TUG = "tug";

/** One thing that fills the screen. */
export type Task =
  /** A step of the book. */
  | { readonly kind: "step"; readonly key: string; readonly step: string }
  /** Units with numbers of their own go into their places. */
  | { readonly kind: "fit"; readonly key: string; readonly places: readonly Place[] }
  | { readonly kind: "own"; readonly key: string; readonly step: OwnStep }
  /** A stage of stuffing. */
  | { readonly kind: "stage"; readonly key: string; readonly step: string; readonly stage: number }
  /** A tug on every contact comes first: one that is not latched passes continuity. */
  | { readonly kind: "tug"; readonly key: string; readonly step: string; readonly unit: string }
  /** Every point against all others. */
  | { readonly kind: "continuity"; readonly key: string; readonly unit: string; readonly test: string }
  | { readonly kind: "test"; readonly key: string; readonly unit: string; readonly test: Test };

const STAGE = /^stage-(\d+)$/u;

/** Number of a stage of stuffing; null: the step is none. */
export function stageOf(step: string): number | null {
  const stage = STAGE.exec(step)?.[1];
  return stage === undefined ? null : Number(stage);
}

const step = (id: string): Task => ({ kind: "step", key: `step ${id}`, step: id });
const own = (id: OwnStep): Task => ({ kind: "own", key: `own ${id}`, step: id });
/** A bench step of boards or harnesses that is done on all of them together. */
function atBench(id: string): readonly Task[] {
  const ownStep = OWN_STEPS.find((one) => one === id);
  if (ownStep !== undefined) return [own(ownStep)];
  const stage = stageOf(id);
  return stage === null ? [] : [{ kind: "stage", key: id, step: id, stage }];
}
const testOn = (unit: string, test: Test): Extract<Task, { kind: "test" }> => ({
  kind: "test",
  key: `test ${unit} ${test.id}`,
  unit,
  test,
});

/**
 * Everything that units of one kind and type take, in the order in which it is done. Of a batch every step is done on all of
 * them before the next, and every unit is tested through before the next one.
 * @param hereIds steps that are done at this station; null: all
 */
export function tasksOf(
  { what, type }: Pick<KeptUnit, "what" | "type">,
  work: Work,
  unitIds: readonly string[],
  hereIds: ReadonlySet<string> | null,
): readonly Task[] {
  const tests = unitIds.flatMap((unit) => work.tests.map((test) => testOn(unit, test)));
  const isHere = (id: string): boolean => hereIds === null || hereIds.has(id);
  switch (what) {
    case "board":
      return [...work.benchSteps.flatMap(atBench), ...tests];
    case "harness":
      return [
        ...work.benchSteps.flatMap(atBench),
        ...unitIds.flatMap((unit): readonly Task[] => [
          { kind: "tug", key: `tug ${unit}`, step: TUG, unit },
          { kind: "continuity", key: `continuity ${unit}`, unit, test: continuityTest(type) },
          ...work.tests.map((test) => testOn(unit, test)),
        ]),
      ];
    case "mechanism":
      return [...work.stepIds.map(step), ...tests];
    case "machine":
      return [
        ...work.stepIds
          .filter(isHere)
          .flatMap((id) => [...testsIn(work, id, tests), step(id), ...fitsIn(work, id)]),
        ...lastFits(work, hereIds),
        ...(work.testStepIds.length === 0 ? tests : []),
      ];
  }
}

/** What protects whoever touches the machine is tried before anything else, in the first step that tests it. */
const PROTECTS: ReadonlySet<string> = new Set(["bond", "insulation", "polarity", "interlock"]);

/**
 * Tests of a machine that belong to a step: they come before its tick, which says that all of it is done. The first step of
 * testing has everything up to the last test that protects the builder, the last step all others: what comes after them,
 * such as the crate, is done on a machine that was tested.
 */
function testsIn(
  { testStepIds }: Work,
  stepId: string,
  tests: readonly Extract<Task, { kind: "test" }>[],
): readonly Task[] {
  const [first, last] = [testStepIds[0], testStepIds.at(-1)];
  if (stepId !== first && stepId !== last) return [];
  if (first === last) return tests;
  const until = tests.findLastIndex(({ test }) => PROTECTS.has(test.purpose)) + 1;
  return stepId === first ? tests.slice(0, until) : tests.slice(until);
}

function fitsIn({ places }: Work, stepId: string): readonly Task[] {
  const here = places.filter((place) => place.stepId === stepId);
  return here.length === 0 ? [] : [{ kind: "fit", key: `fit ${stepId}`, places: here }];
}

/** Places that no step fills are filled before the first test. */
function lastFits({ places }: Work, hereIds: ReadonlySet<string> | null): readonly Task[] {
  const rest = places.filter(({ stepId }) => stepId === null);
  return rest.length === 0 || hereIds !== null ? [] : [{ kind: "fit", key: "fit rest", places: rest }];
}

/** Unit that stands at a place now. */
export const standingAt = (state: UnitState | undefined, placeId: string): string | null =>
  state?.inside.find(({ place, until }) => place === placeId && until === null)?.unit ?? null;

/** How a step was done; a tug counts only if it is later than the last mend that pulled contacts. */
export function stepDone(state: UnitState | undefined, step: string): StepRecord | undefined {
  const record = state?.steps.get(step);
  if (record === undefined || step !== TUG) return record;
  const isOlder = [...(state?.defects.values() ?? [])].some(
    ({ what, mended }) => mended !== null && PULLING_DEFECTS.has(what) && mended.source.at > record.source.at,
  );
  return isOlder ? undefined : record;
}

/** Keys of the tasks that nothing more has to be done for. */
export function doneTasks(
  tasks: readonly Task[],
  work: Work,
  unitIds: readonly string[],
  states: ReadonlyMap<string, UnitState>,
): ReadonlySet<string> {
  const blocked = new Set(
    releaseBlocks(states, unitIds, () => work.needed, [])
      .filter(({ gate }) => gate === "test")
      .map(({ unit, of }) => `${unit} ${of}`),
  );
  const isTested = (unit: string, test: string): boolean =>
    states.has(unit) && !blocked.has(`${unit} ${test}`);
  const isDone = (task: Task): boolean => {
    switch (task.kind) {
      case "step":
      case "own":
      case "stage":
        return unitIds.every((unit) => states.get(unit)?.steps.has(task.step) === true);
      case "tug":
        return stepDone(states.get(task.unit), task.step) !== undefined;
      case "fit":
        return unitIds.every((unit) =>
          task.places.every(({ id }) => standingAt(states.get(unit), id) !== null),
        );
      case "continuity":
        return isTested(task.unit, task.test);
      case "test":
        return isTested(task.unit, task.test.id);
    }
  };
  return new Set(tasks.filter(isDone).map(({ key }) => key));
}

/**
 * Tasks that are missing before units are complete, wherever they are done. Work at the bench counts once some of it was
 * recorded: a board or harness that was made elsewhere has none here.
 */
export function missingTasks(
  tasks: readonly Task[],
  done: ReadonlySet<string>,
  unitIds: readonly string[],
  states: ReadonlyMap<string, UnitState>,
): { readonly missing: readonly Task[]; readonly isBegun: boolean } {
  const isBenchWork = ({ kind }: Task): boolean => kind === "own" || kind === "stage" || kind === "tug";
  const isBegun = tasks.some(
    (task) =>
      isBenchWork(task) &&
      "step" in task &&
      unitIds.some((unit) => states.get(unit)?.steps.has(task.step) === true),
  );
  const missing = tasks.filter((task) => !done.has(task.key) && (isBegun || !isBenchWork(task)));
  return { missing, isBegun: isBegun || !tasks.some(isBenchWork) };
}

/** Defects of a unit that nobody has mended. */
export const openDefects = (state: UnitState | undefined) =>
  [...(state?.defects.values() ?? [])].filter(({ mended }) => mended === null);
