import { type Day, dayOf, weekday } from "./days.ts";
import type { Plan } from "./run-tab.ts";

export type Block = Plan["stages"][number];

/** A stage with the work of all runs at it, in the order in which the work begins. */
export interface StageRow {
  readonly stageId: string;
  readonly label: string;
  readonly labelZh: string;
  readonly people: number;
  readonly blocks: readonly Block[];
}

/** Stages at which a run works, in the order in which it begins there; the work of others at them comes along. */
export function stageRows(blocks: readonly Block[], runId: string): readonly StageRow[] {
  const own = blocks.filter((block) => block.runId === runId);
  return own
    .toSorted((a, b) => a.startDay - b.startDay || a.endDay - b.endDay)
    .map(({ stageId, labels, people }) => ({
      stageId,
      label: labels.en,
      labelZh: labels.zh,
      people,
      blocks: blocks.filter((block) => block.stageId === stageId),
    }));
}

/** First and last day of a chart: the work of a run, its ship day and today when it is near, with a little air. */
export function spanOf(
  blocks: readonly Block[],
  runId: string,
  also: readonly (Day | null)[],
): { readonly from: Day; readonly to: Day } | null {
  const own = blocks.filter((block) => block.runId === runId);
  if (own.length === 0) return null;
  const from = Math.min(...own.map(({ startDay }) => startDay));
  const to = Math.max(...own.map(({ endDay }) => endDay));
  const air = Math.max(2, Math.round((to - from) * 0.04));
  const near = also.filter((day) => day !== null && day > from - 30 && day < to + 60) as readonly Day[];
  return { from: Math.min(from, ...near) - air, to: Math.max(to, ...near) + air };
}

/** Whether nobody works on a day, by the working days of a week and the calendars of the sites. */
export function isOff(day: Day, workDays: number, holidays: ReadonlySet<Day>): boolean {
  return weekday(day) >= workDays || holidays.has(day);
}

export const holidayDays = (holidays: readonly string[]): ReadonlySet<Day> =>
  new Set(holidays.flatMap((text) => dayOf(text) ?? []));

/** Days in a row, as stretches from first to last. */
export function stretches(days: readonly Day[]): readonly (readonly [Day, Day])[] {
  const found: [Day, Day][] = [];
  for (const day of days) {
    const last = found.at(-1);
    if (last !== undefined && last[1] === day - 1) last[1] = day;
    else found.push([day, day]);
  }
  return found;
}

/** Share of the people's time that a run takes on the days on which it works at a stage; null: nobody is there. */
export function usedShare({ days, minutesDay }: Block): number | null {
  if (minutesDay <= 0 || days.length === 0) return null;
  return days.reduce((sum, { minutes }) => sum + minutes, 0) / (days.length * minutesDay);
}
