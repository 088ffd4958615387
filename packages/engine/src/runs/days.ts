import type { DayNumber } from "../model/index.ts";

const DAY_MS = 86_400_000;
const FORM = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Days since 1970-01-01 of a date as year-month-day; null when there is no such day. */
export function dayNumber(text: string): DayNumber | null {
  const found = FORM.exec(text);
  if (found === null) return null;
  const ms = Date.UTC(Number(found[1]), Number(found[2]) - 1, Number(found[3]));
  const day = Math.round(ms / DAY_MS);
  return dayText(day) === text ? day : null;
}

/** The date of a day as year-month-day. */
export const dayText = (day: DayNumber): string => new Date(day * DAY_MS).toISOString().slice(0, 10);
