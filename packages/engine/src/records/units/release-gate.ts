import type { BookRow } from "@pinwright/book";
import type { Block, Gate } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import { isConcerned, type OpenRecall } from "./recall.ts";
import type { Source, UnitState } from "./unit-state.ts";

/** What a place takes. */
export interface Taken {
  /** Board type or harness. */
  readonly type: string;
  /** A test that protects people is done on it: it cannot be left out. */
  readonly firm: boolean;
}

/** What a unit must have behind it before it may ship. */
export interface Needed {
  /** Ids of steps. */
  readonly steps: readonly string[];
  /** Steps of them that are done again after a mend, with the kinds of defects whose mends these are. */
  readonly again?: ReadonlyMap<string, ReadonlySet<string>>;
  readonly tests: readonly Pick<BookRow<"tests">, "id" | "purpose" | "kind" | "min" | "max">[];
  /** Places that must hold a unit. */
  readonly places: readonly string[];
  /** What each of these places takes; one that is not named takes whatever is fitted. */
  readonly takes?: ReadonlyMap<string, Taken>;
  /** Parts that are in it by the book. */
  readonly parts?: ReadonlySet<string>;
  /** Parts that may be taken instead of others without asking, as `part instead`; absent: nobody asks. */
  readonly alternates?: ReadonlySet<string>;
  /** The book has nothing of its type: nobody knows what it needs. */
  readonly isUnknown?: boolean;
}

/** Tests that protect whoever touches the machine: no one lifts them. */
const FIRM: ReadonlySet<string> = new Set(["bond", "insulation", "polarity", "interlock"]);

/** Whether tests for a purpose protect whoever touches the machine. */
export const isFirm = ({ purpose }: Pick<BookRow<"tests">, "purpose">): boolean => FIRM.has(purpose);

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
 * Everything that keeps units from being released, lifted or not: `unitIds` are the unit and all that is inside it, in any
 * order. A test must have been passed after the last defect was mended and after the last unit was fitted, or it says
 * nothing of the unit as it is now; a test that protects people, also after any mend further inside.
 * @param root unit that is to be released; what it had behind it when it was released before is not asked again, whatever
 * the book asks since. Absent: everything is asked.
 */
export function releaseBlocks(
  units: ReadonlyMap<string, UnitState>,
  unitIds: readonly string[],
  neededOf: (state: UnitState) => Needed,
  recalls: readonly OpenRecall[],
  root?: string,
): readonly Block[] {
  const heads = root === undefined ? undefined : units.get(root)?.released?.heads;
  /** Whether a record came after the release; everything did where there was none. */
  const isNew = ({ stream, seq }: Source): boolean => seq > (heads?.get(stream) ?? 0);
  return unitIds
    .flatMap((id) => {
      const state = units.get(id);
      if (state === undefined) return [];
      return new Judge(units, state, neededOf(state), isNew, heads !== undefined && wasIn(id)).blocks(
        recalls,
      );
    })
    .sort((a, b) => compareText(a.unit, b.unit) || compareText(a.gate, b.gate) || compareText(a.of, b.of));

  /** Whether a unit was what is released, or inside it, when it was released. */
  function wasIn(id: string): boolean {
    const seen = new Set<string>();
    for (let at = id; at !== root; ) {
      const fitting = units.get(at)?.within.find(({ until }) => until === null);
      if (fitting === undefined || isNew(fitting.from) || seen.has(at)) return false;
      seen.add(at);
      at = fitting.unit;
    }
    return true;
  }
}

/** Judges one unit. */
class Judge {
  readonly #units: ReadonlyMap<string, UnitState>;
  readonly #state: UnitState;
  readonly #needed: Needed;
  readonly #isNew: (source: Source) => boolean;
  /** It was released as part of what is judged: only what changed since is asked. */
  readonly #wasReleased: boolean;
  readonly #blocks: Block[] = [];

  constructor(
    units: ReadonlyMap<string, UnitState>,
    state: UnitState,
    needed: Needed,
    isNew: (source: Source) => boolean,
    wasReleased: boolean,
  ) {
    this.#units = units;
    this.#state = state;
    this.#needed = needed;
    this.#isNew = isNew;
    this.#wasReleased = wasReleased;
  }

  blocks(recalls: readonly OpenRecall[]): readonly Block[] {
    const state = this.#state;
    const needed = this.#needed;
    if (state.begun === null) this.#block("fit", state.unit, "unknown", true);
    else if (needed.isUnknown === true) this.#asked("fit", state.begun.type, "unknown", true, false);
    for (const step of needed.steps) this.#step(step);
    const changed = lastChange(state);
    const changedInside = needed.tests.some(isFirm) ? this.#lastMendInside() : "";
    for (const test of needed.tests)
      this.#test(test, isFirm(test) && changedInside > changed ? changedInside : changed);
    for (const defect of state.defects.values())
      if (defect.mended === null) this.#block("defect", defect.defect, "open");
    for (const place of needed.places) this.#place(place);
    this.#alternates();
    for (const recall of recalls)
      if (isConcerned(state, recall, needed.parts)) this.#block("recall", recall.recall, "recalled");
    return this.#blocks;
  }

  #step(step: string): void {
    const done = this.#state.steps.get(step);
    if (done === undefined) {
      this.#asked("step", step, "missing", false, this.#isStruck("step", step));
      return;
    }
    const kinds = this.#needed.again?.get(step);
    const mended = latest(mendsOf(this.#state, (what) => kinds?.has(what) === true));
    if (done.source.at < mended) this.#block("step", step, "not-retested", false, mended);
  }

  #test(test: Needed["tests"][number], changed: string): void {
    const { readings, struck } = this.#state;
    const last = readings.get(test.id)?.at(-1);
    const firm = isFirm(test);
    // A bad reading that was taken back leaves no good one behind: the test is done again.
    const takenBack = struck.filter(
      (record) => record.gate === "test" && record.of === test.id && !isWithin(test, record),
    );
    const struckAt = latest(takenBack.map(({ source }) => source.at));
    const isStruck = this.#isStruck("test", test.id);
    if (last === undefined) this.#asked("test", test.id, "missing", firm, isStruck, struckAt);
    else if (!isWithin(test, last))
      this.#asked("test", test.id, "failed", firm, isStruck || this.#isNew(last.source), last.source.at);
    else if (last.source.at < changed || last.source.at <= struckAt)
      this.#block("test", test.id, "not-retested", firm, changed > struckAt ? changed : struckAt);
  }

  #place(place: string): void {
    const taken = this.#needed.takes?.get(place);
    const firm = taken?.firm ?? false;
    const here = this.#state.inside.filter((one) => one.place === place);
    const fitted = here.find(({ until }) => until === null);
    if (fitted === undefined) {
      const isOut = here.some(({ until }) => until !== null && this.#isNew(until));
      this.#asked("fit", place, "missing", firm, isOut);
      return;
    }
    const begun = this.#units.get(fitted.unit)?.begun;
    const { at } = fitted.from;
    if (begun === undefined || begun === null)
      this.#asked("fit", place, "unknown", firm, this.#isNew(fitted.from), at);
    else if (taken !== undefined && begun.type !== taken.type)
      this.#asked("fit", place, "wrong", firm, this.#isNew(fitted.from), at);
  }

  /** A part that was taken instead of another as if the book allowed it, which it does not: a lead allows it, or lifts it. */
  #alternates(): void {
    const { alternates } = this.#state;
    const allowed = this.#needed.alternates;
    if (allowed === undefined) return;
    const conceded = new Set(
      alternates.flatMap((one) => (one.allowed === "concession" ? [`${one.part} ${one.instead}`] : [])),
    );
    const wrong = new Map<string, Source>();
    for (const { part, instead, source } of alternates)
      if (!allowed.has(`${part} ${instead}`) && !conceded.has(`${part} ${instead}`)) wrong.set(part, source);
    for (const [part, source] of wrong)
      this.#asked("fit", part, "wrong", false, this.#isNew(source), source.at);
  }

  #isStruck(gate: "step" | "test", of: string): boolean {
    return this.#state.struck.some((record) => record.gate === gate && record.of === of);
  }

  /** When something inside was last mended, at any depth. */
  #lastMendInside(): string {
    const mends: string[] = [];
    const seen = new Set([this.#state.unit]);
    const todo = [...this.#state.inside];
    for (let at = todo.pop(); at !== undefined; at = todo.pop()) {
      const inner = this.#units.get(at.unit);
      if (at.until !== null || inner === undefined || seen.has(at.unit)) continue;
      seen.add(at.unit);
      todo.push(...inner.inside);
      mends.push(...mendsOf(inner, ALL));
    }
    return latest(mends);
  }

  /** A block for something that the book asks; of what was released it counts only if it changed since, or was lifted. */
  #asked(gate: Gate, of: string, why: Block["why"], firm: boolean, changed: boolean, since = ""): void {
    if (!this.#wasReleased || changed || this.#isLifted(gate, of, firm, since))
      this.#block(gate, of, why, firm, since);
  }

  /** @param since what was lifted before does not speak of what is there now */
  #block(gate: Gate, of: string, why: Block["why"], firm = false, since = ""): void {
    const lifted = this.#isLifted(gate, of, firm, since);
    this.#blocks.push({ gate, unit: this.#state.unit, of, why, firm, lifted });
  }

  #isLifted(gate: Gate, of: string, firm: boolean, since: string): boolean {
    if (firm) return false;
    return this.#state.overrides.some((one) => one.gate === gate && one.of === of && one.source.at >= since);
  }
}

/** The last of some times; blank: there is none. */
const latest = (times: readonly string[]): string => [...times].sort().at(-1) ?? "";

/** When defects of some kinds were mended. */
const mendsOf = ({ defects }: UnitState, isWanted: (what: string) => boolean): readonly string[] =>
  [...defects.values()].flatMap(({ what, mended }) => (isWanted(what) ? (mended?.source.at ?? []) : []));

const ALL = (): boolean => true;

/** When the unit last changed under its tests: a defect was mended, or something fitted or taken out. */
const lastChange = (state: UnitState): string =>
  latest([...mendsOf(state, ALL), ...state.inside.flatMap(({ from, until }) => [from.at, until?.at ?? ""])]);
