/** Days since 1970-01-01, as plans count them. */
export type Day = number;

const DAY_MS = 86_400_000;
const MONDAY_FIRST = 3;

/** The date of a day as year-month-day. */
export const dayText = (day: Day): string => new Date(day * DAY_MS).toISOString().slice(0, 10);

/** Day of a date; null when it is none. */
export function dayOf(text: string): Day | null {
  const ms = Date.parse(`${text}T00:00:00Z`);
  return Number.isNaN(ms) ? null : Math.round(ms / DAY_MS);
}

/** Place in the week, Monday being 0. 1970-01-01 was a Thursday. */
export const weekday = (day: Day): number => (((day + MONDAY_FIRST) % 7) + 7) % 7;

/** Day and month alone, for the axis of a chart: `05-17`. */
export const shortDay = (day: Day): string => dayText(day).slice(5);
