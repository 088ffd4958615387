import { compareText } from "@pinwright/kernel";
import type { DayNumber } from "../../model/index.ts";
import type { Ledger } from "./ledger.ts";
import { type RunSchedule, type RunWork, scheduleBackward, scheduleForward } from "./schedule-run.ts";
import type { PlannedStage } from "./stage.ts";

/** A run that wants its days. */
export interface RunToSchedule {
  readonly id: string;
  readonly work: RunWork;
  /** Null: it has no ship day, and is built as soon as can be. */
  readonly shipDay: DayNumber | null;
  /** Neither work nor orders before. */
  readonly earliestDay: DayNumber;
  /** Day before which each stage lacks parts, in the order of the stages. */
  readonly partsDays: readonly DayNumber[];
}

export interface ScheduledRun {
  readonly id: string;
  /** Null: a stage has no room at all. */
  readonly schedule: RunSchedule;
  readonly isLate: boolean;
  /** Place of the stage that lacks its parts when it would have to begin; null: the work itself takes too long. */
  readonly heldStage: number | null;
}

/**
 * Days for all runs on the benches that they share. Those that can be ready in time are as late as their ship days
 * allow, the last to ship first; after them those that cannot, as early as can be, the first to ship first.
 */
export function scheduleRuns(
  stages: readonly PlannedStage[],
  runs: readonly RunToSchedule[],
  ledger: Ledger,
): readonly ScheduledRun[] {
  const byShipDay = (a: RunToSchedule, b: RunToSchedule): number =>
    (a.shipDay ?? Number.POSITIVE_INFINITY) - (b.shipDay ?? Number.POSITIVE_INFINITY) ||
    compareText(a.id, b.id);
  const sorted = [...runs].sort(byShipDay);
  const found = new Map<string, ScheduledRun>();
  for (const run of sorted.toReversed()) {
    const { schedule, held } = inTime(stages, run, ledger);
    found.set(run.id, { id: run.id, schedule, isLate: schedule === null, heldStage: held });
  }
  for (const run of sorted) {
    const before = found.get(run.id);
    if (before === undefined || !before.isLate) continue;
    const earliest = stages.map((_, s) => Math.max(run.earliestDay, run.partsDays[s] ?? run.earliestDay));
    const schedule = scheduleForward(stages, run.work, earliest, ledger);
    // Without a ship day nothing is late; it may also be that the benches were fuller backward than they had to be.
    const ready = readyDay(schedule);
    const isLate = run.shipDay !== null && (ready === null || ready > run.shipDay);
    found.set(run.id, { ...before, schedule, isLate, heldStage: isLate ? before.heldStage : null });
  }
  return sorted.flatMap((run) => found.get(run.id) ?? []);
}

interface InTime {
  readonly schedule: RunSchedule;
  readonly held: number | null;
}

function inTime(stages: readonly PlannedStage[], run: RunToSchedule, ledger: Ledger): InTime {
  const { shipDay, earliestDay, partsDays } = run;
  if (shipDay === null || shipDay < earliestDay) return { schedule: null, held: null };
  const mark = ledger.mark;
  const schedule = scheduleBackward(stages, run.work, shipDay, earliestDay, ledger);
  const late = (s: number): number =>
    (partsDays[s] ?? 0) - (schedule?.[s]?.batches[0]?.startDay ?? Number.POSITIVE_INFINITY);
  const held = stages
    .map((_, s) => s)
    .filter((s) => late(s) > 0)
    .sort((a, b) => late(b) - late(a))[0];
  if (schedule !== null && held === undefined) return { schedule, held: null };
  ledger.undo(mark);
  return { schedule: null, held: held ?? null };
}

/** First day of work. */
export const startDay = (schedule: RunSchedule): DayNumber | null =>
  least((schedule ?? []).flatMap(({ batches }) => batches[0]?.startDay ?? []));

/** Day on which the last machine is through the last stage. */
export const readyDay = (schedule: RunSchedule): DayNumber | null => {
  const ends = (schedule ?? []).flatMap(({ batches }) => batches.at(-1)?.endDay ?? []);
  return ends.length === 0 ? null : ends.reduce((a, b) => Math.max(a, b));
};

const least = (days: readonly DayNumber[]): DayNumber | null =>
  days.length === 0 ? null : days.reduce((a, b) => Math.min(a, b));
