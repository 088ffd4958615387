import type { DayNumber } from "../../model/index.ts";
import { wrightTotal } from "../../steps/index.ts";
import type { Ledger } from "./ledger.ts";
import type { PlannedStage } from "./stage.ts";

/** Days that are looked through for room before a stage counts as full. */
const MOST_DAYS = 4000;

/** Work of one run at one stage. */
export interface StageWork {
  /** Minutes of the first machine, and what the average falls to when the number doubles. */
  readonly firstMinutes: number;
  readonly learningPct: number;
}

/** A run as it is scheduled: how many machines, and its work at each stage, in the order of the stages. */
export interface RunWork {
  readonly machines: number;
  readonly work: readonly StageWork[];
}

/** Machines that go through a stage together. */
export interface BatchDays {
  /** Counted from 0. */
  readonly first: number;
  readonly machines: number;
  readonly startDay: DayNumber;
  readonly endDay: DayNumber;
}

/** When a run is at a stage. */
export interface StageSchedule {
  readonly batches: readonly BatchDays[];
  /** Minutes by day. */
  readonly minutes: ReadonlyMap<DayNumber, number>;
}

/** Days of a run at every stage, in the order of the stages; null: there is no room. */
export type RunSchedule = readonly StageSchedule[] | null;

/** Minutes of a machine of a batch, on average. */
function minutesEach({ firstMinutes, learningPct }: StageWork, first: number, machines: number): number {
  if (learningPct >= 100 || firstMinutes === 0) return firstMinutes;
  const before = first === 0 ? 0 : wrightTotal(first, learningPct);
  return (firstMinutes * (wrightTotal(first + machines, learningPct) - before)) / machines;
}

/** First machine and size of each batch of a stage. */
const batchesOf = (machines: number, batch: number): readonly { first: number; machines: number }[] =>
  Array.from({ length: Math.ceil(machines / batch) }, (_, k) => ({
    first: k * batch,
    machines: Math.min(batch, machines - k * batch),
  }));

/** The batch of a stage that has a machine. */
const batchWith = (schedule: StageSchedule, machine: number): BatchDays | undefined => {
  const size = schedule.batches[0]?.machines ?? 1;
  return schedule.batches[Math.floor(machine / size)];
};

/** The stages that wait for each stage. */
const followers = (stages: readonly PlannedStage[]): readonly (readonly number[])[] =>
  stages.map((_, s) => stages.flatMap((later, place) => (later.after.includes(s) ? [place] : [])));

/**
 * As late as the ship day allows: each batch is done in time for the batches that wait for it, the last machine first.
 * @param earliest day before which there is no work
 * @returns null when that is not early enough
 */
export function scheduleBackward(
  stages: readonly PlannedStage[],
  run: RunWork,
  shipDay: DayNumber,
  earliest: DayNumber,
  ledger: Ledger,
): RunSchedule {
  const after = followers(stages);
  const result: StageSchedule[] = [];
  for (let s = stages.length - 1; s >= 0; s--) {
    const stage = stages[s];
    const work = run.work[s];
    if (stage === undefined || work === undefined) return null;
    const deadline = (first: number): DayNumber =>
      (after[s] ?? []).reduce((day, follower) => {
        const start = batchOf(result, follower, first)?.startDay ?? shipDay;
        return Math.min(day, start - 1 - stage.waitDays);
      }, shipDay);
    const batches: BatchDays[] = [];
    const minutes = new Map<DayNumber, number>();
    let day = Number.POSITIVE_INFINITY;
    for (const { first, machines } of batchesOf(run.machines, stage.batch).toReversed()) {
      day = Math.min(day, deadline(first));
      const each = minutesEach(work, first, machines);
      const placed = place(ledger, stage, minutes, { day, step: -1, last: earliest, machines, each });
      if (placed === null) return null;
      batches.unshift({ first, machines, startDay: placed.last, endDay: placed.first });
      day = placed.last;
    }
    result[s] = { batches, minutes };
  }
  return result;
}

const batchOf = (result: readonly StageSchedule[], s: number, machine: number): BatchDays | undefined => {
  const schedule = result[s];
  return schedule === undefined ? undefined : batchWith(schedule, machine);
};

/**
 * As early as can be: each batch begins when those that it waits for are done.
 * @param earliest day before which each stage cannot begin, in the order of the stages
 */
export function scheduleForward(
  stages: readonly PlannedStage[],
  run: RunWork,
  earliest: readonly DayNumber[],
  ledger: Ledger,
): RunSchedule {
  const result: StageSchedule[] = [];
  for (const [s, stage] of stages.entries()) {
    const work = run.work[s];
    if (work === undefined) return null;
    const batches: BatchDays[] = [];
    const minutes = new Map<DayNumber, number>();
    let day = earliest[s] ?? 0;
    for (const { first, machines } of batchesOf(run.machines, stage.batch)) {
      for (const p of stage.after) {
        const before = batchOf(result, p, first + machines - 1);
        if (before !== undefined) day = Math.max(day, before.endDay + 1 + (stages[p]?.waitDays ?? 0));
      }
      const each = minutesEach(work, first, machines);
      const placed = place(ledger, stage, minutes, { day, step: 1, last: day + MOST_DAYS, machines, each });
      if (placed === null) return null;
      batches.push({ first, machines, startDay: placed.first, endDay: placed.last });
      day = placed.last;
    }
    result.push({ batches, minutes });
  }
  return result;
}

interface Placing {
  readonly day: DayNumber;
  readonly step: 1 | -1;
  /** Day beyond which nothing is placed. */
  readonly last: DayNumber;
  readonly machines: number;
  readonly each: number;
}

/** Puts the work of a batch on days with room, from a day on or back; the first and last day that it is worked on. */
function place(
  ledger: Ledger,
  stage: PlannedStage,
  minutes: Map<DayNumber, number>,
  { day, step, last, machines, each }: Placing,
): { readonly first: DayNumber; readonly last: DayNumber } | null {
  let left = machines;
  let first: DayNumber | null = null;
  for (let d = day, n = 0; (last - d) * step >= 0 && n < MOST_DAYS; d += step, n++) {
    const done = ledger.take(stage, d, left, each);
    if (done.machines === 0) continue;
    first ??= d;
    if (done.minutes > 0) minutes.set(d, (minutes.get(d) ?? 0) + done.minutes);
    left -= done.machines;
    if (left <= 0) return { first, last: d };
  }
  return null;
}
