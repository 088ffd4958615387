import type { Shop } from "@pinwright/book";
import { type Decimal, decimal, divideDecimal } from "@pinwright/kernel";
import { type DayNumber, labelsOf, type RunTiming, type StageBlock } from "../model/index.ts";
import type { WorkCalendar } from "./calendar.ts";
import type { NeedingRun } from "./needs/demand.ts";
import { type Bucket, bucketsOf } from "./schedule/buckets.ts";
import { Ledger } from "./schedule/ledger.ts";
import type { StageSchedule } from "./schedule/schedule-run.ts";
import {
  type RunToSchedule,
  readyDay,
  type ScheduledRun,
  scheduleRuns,
  startDay,
} from "./schedule/schedule-runs.ts";
import type { PlannedStage } from "./schedule/stage.ts";
import { type KnownWork, rateAt } from "./work.ts";

/** A run with its work, before it has days. */
export interface RunWithWork extends Pick<NeedingRun, "row" | "counts"> {
  /** Null: the row gives no such day. */
  readonly shipDay: DayNumber | null;
  readonly beginDay: DayNumber;
  readonly work: readonly KnownWork[];
}

/** What the schedule of all runs is. */
export interface Scheduled {
  readonly runs: readonly ScheduledRun[];
  /** By place of the run and of the stage. */
  readonly buckets: readonly (readonly (readonly Bucket[])[])[];
}

/** Days for all runs. @param partsDays by run and place of the stage; absent: nothing is waited for */
export function scheduleAll(
  shop: Shop,
  calendar: WorkCalendar,
  stages: readonly PlannedStage[],
  runs: readonly RunWithWork[],
  partsDays: ReadonlyMap<string, readonly DayNumber[]> = new Map(),
): Scheduled {
  const asked = runs.map(
    ({ row, work, shipDay, beginDay }): RunToSchedule => ({
      id: row.id,
      work: { machines: row.machines, work },
      shipDay,
      earliestDay: beginDay,
      partsDays: partsDays.get(row.id) ?? [],
    }),
  );
  const found = scheduleRuns(stages, asked, new Ledger(shop, calendar));
  const byId = new Map(found.map((run) => [run.id, run]));
  const ordered = runs.flatMap(({ row }) => byId.get(row.id) ?? []);
  return {
    runs: ordered,
    buckets: ordered.map(({ schedule }) => (schedule ?? []).map(({ batches }) => bucketsOf(batches))),
  };
}

/** The stages of a run as its chart shows them. */
export function blocksOf(
  stages: readonly PlannedStage[],
  { row, work }: RunWithWork,
  { schedule }: ScheduledRun,
): readonly StageBlock[] {
  return stages.flatMap((stage, s): readonly StageBlock[] => {
    const own = schedule?.[s];
    const first = own?.batches[0];
    const last = own?.batches.at(-1);
    if (own === undefined || first === undefined || last === undefined) return [];
    const minutes = [...own.minutes.values()].reduce((sum, m) => sum + m, 0);
    return [
      {
        runId: row.id,
        stageId: stage.id,
        labels: stage.labels,
        startDay: first.startDay,
        endDay: last.endDay,
        days: daysOf(own),
        people: stage.people,
        minutesDay: stage.minutesDay,
        minutesPerMachine: Math.round((minutes / row.machines) * 100) / 100,
        isKnown: work[s]?.isKnown ?? false,
      },
    ];
  });
}

function daysOf({ batches, minutes }: StageSchedule): StageBlock["days"] {
  const done = new Map<DayNumber, number>();
  for (const { endDay, machines } of batches) done.set(endDay, (done.get(endDay) ?? 0) + machines);
  return [...new Set([...done.keys(), ...minutes.keys()])]
    .sort((a, b) => a - b)
    .map((day) => ({ day, machines: done.get(day) ?? 0, minutes: minutes.get(day) ?? 0 }));
}

/** When a run is built, and what holds it. @param heldBy part that comes last, by place of the stage */
export function timingOf(
  stages: readonly PlannedStage[],
  { row, shipDay }: RunWithWork,
  { schedule, isLate, heldStage }: ScheduledRun,
  heldBy: ReadonlyMap<number, string>,
): RunTiming {
  const held = heldStage === null ? null : (heldBy.get(heldStage) ?? stages[heldStage]?.id ?? null);
  return {
    runId: row.id,
    labels: labelsOf(row, row.id),
    machines: row.machines,
    shipDay,
    startDay: startDay(schedule),
    readyDay: readyDay(schedule),
    isLate,
    heldBy: isLate ? (held ?? longestStage(stages, schedule)) : null,
  };
}

/** The stage that a run is at for the most days. */
function longestStage(stages: readonly PlannedStage[], schedule: ScheduledRun["schedule"]): string | null {
  let longest = -1;
  let id: string | null = null;
  for (const [s, own] of (schedule ?? []).entries()) {
    const days = (own.batches.at(-1)?.endDay ?? 0) - (own.batches[0]?.startDay ?? 0);
    if (days > longest) {
      longest = days;
      id = stages[s]?.id ?? null;
    }
  }
  return id;
}

const MINUTES = decimal(60);

/** Cost of a minute at each stage in the shop's own currency, without overhead, by its id. */
export const minuteCosts = (shop: Shop, stages: readonly PlannedStage[]): ReadonlyMap<string, Decimal> =>
  new Map(stages.map((stage) => [stage.id, divideDecimal(decimal(rateAt(stage, shop)), MINUTES)]));
