import type { BookRow } from "@pinwright/book";
import type { Gate } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import type { UnitState } from "./unit-state.ts";

/** What a unit must have behind it before it may ship. */
export interface Needed {
  /** Ids of steps. */
  readonly steps: readonly string[];
  readonly tests: readonly Pick<BookRow<"tests">, "id" | "purpose" | "kind" | "min" | "max">[];
  /** Places that must hold a unit. */
  readonly places: readonly string[];
}

/** A recall that has not ended. */
export interface OpenRecall {
  readonly recall: string;
  readonly part: string | null;
  readonly lot: string | null;
  readonly type: string | null;
  readonly revision: string | null;
}

/** Something that keeps a unit from being released. */
export interface Block {
  readonly gate: Gate;
  /** Unit that it is about: the unit itself or one inside it. */
  readonly unit: string;
  /** Step, test, defect, place or recall. */
  readonly of: string;
  /** Why: nothing is there, or what is there is not good. */
  readonly why: "missing" | "failed" | "open" | "not-retested" | "recalled";
  /** Nobody can lift it. */
  readonly firm: boolean;
  /** Somebody has lifted it, and says why. */
  readonly lifted: boolean;
}

/** Tests that protect whoever touches the machine: no one lifts them. */
const FIRM: ReadonlySet<string> = new Set(["bond", "insulation", "polarity", "interlock"]);

/** Whether a reading is within the design's limits; one that is only judged is what its builder said. */
export function isWithin(
  test: Pick<BookRow<"tests">, "min" | "max">,
  reading: { readonly value: number | null; readonly good: boolean },
): boolean {
  if (reading.value === null) return reading.good && test.min === null && test.max === null;
  return (
    reading.good &&
    (test.min === null || reading.value >= test.min) &&
    (test.max === null || reading.value <= test.max)
  );
}

/**
 * Everything that keeps a unit and what is inside it from being released, lifted or not. A test must have been passed after
 * the last defect was mended and after the last unit was fitted, or it says nothing of the unit as it is now.
 */
export function releaseBlocks(
  units: ReadonlyMap<string, UnitState>,
  unitIds: readonly string[],
  neededOf: (state: UnitState) => Needed,
  recalls: readonly OpenRecall[],
): readonly Block[] {
  return unitIds
    .flatMap((id) => {
      const state = units.get(id);
      return state === undefined ? [] : blocksOf(state, neededOf(state), recalls);
    })
    .sort((a, b) => compareText(a.unit, b.unit) || compareText(a.gate, b.gate) || compareText(a.of, b.of));
}

function blocksOf(state: UnitState, needed: Needed, recalls: readonly OpenRecall[]): Block[] {
  const blocks: Block[] = [];
  const block = (gate: Gate, of: string, why: Block["why"], firm = false): void => {
    const lifted = !firm && state.overrides.some((one) => one.gate === gate && one.of === of);
    blocks.push({ gate, unit: state.unit, of, why, firm, lifted });
  };
  for (const step of needed.steps) if (!state.steps.has(step)) block("step", step, "missing");
  const changed = lastChange(state);
  for (const test of needed.tests) {
    const last = state.readings.get(test.id)?.at(-1);
    const firm = FIRM.has(test.purpose);
    if (last === undefined) block("test", test.id, "missing", firm);
    else if (!isWithin(test, last)) block("test", test.id, "failed", firm);
    else if (last.source.at < changed) block("test", test.id, "not-retested", firm);
  }
  for (const defect of state.defects.values())
    if (defect.mended === null) block("defect", defect.defect, "open");
  const filled = new Set(state.inside.filter(({ until }) => until === null).map(({ place }) => place));
  for (const place of needed.places) if (!filled.has(place)) block("fit", place, "missing");
  for (const recall of recalls) if (isConcerned(state, recall)) block("recall", recall.recall, "recalled");
  return blocks;
}

/** When the unit last changed under its tests: a defect was mended, or something fitted or taken out. */
function lastChange(state: UnitState): string {
  let last = "";
  const at = (time: string): void => {
    if (time > last) last = time;
  };
  for (const { mended } of state.defects.values()) if (mended !== null) at(mended.source.at);
  for (const { from, until } of state.inside) {
    at(from.at);
    if (until !== null) at(until.at);
  }
  return last;
}

/** Whether a recall speaks of a unit: of its type and revision, or of a part or lot that went into it. */
export function isConcerned(state: UnitState, recall: OpenRecall): boolean {
  const { part, lot, type, revision } = recall;
  if (type !== null || revision !== null) {
    const isOfType = type === null || state.begun?.type === type;
    if (!isOfType || (revision !== null && state.begun?.revision !== revision)) return false;
    if (part === null && lot === null) return state.begun !== null;
  }
  return state.lots.some(
    (used) =>
      (part !== null || lot !== null) &&
      (part === null || used.part === part) &&
      (lot === null || used.lot === lot),
  );
}
