import type { Shop } from "@pinwright/book";
import type { DayNumber } from "../model/index.ts";
import { dayNumber } from "./days.ts";

/** Hours of a bench that is not there, for what waits beside the work: common practice, no source. */
const USUAL_HOURS = 8;

/** 1970-01-01 was a Thursday. */
const DAYS_BEFORE = 3;

/** 0 on a Monday, 6 on a Sunday. */
export const weekdayOf = (day: DayNumber): number => (((day + DAYS_BEFORE) % 7) + 7) % 7;

/** The Monday of its week. */
export const mondayOf = (day: DayNumber): DayNumber => day - weekdayOf(day);

/** When a shop works: its usual week, and the days on which a site does not keep to it. */
export class WorkCalendar {
  readonly #workDays: number;
  readonly #hours: ReadonlyMap<string, number>;

  constructor(shop: Shop) {
    // A shop that never works would never finish anything.
    this.#workDays = Math.min(7, Math.max(1, Math.round(shop.numbers.work_days)));
    this.#hours = new Map(
      shop.tables.calendars.flatMap(({ site, day, hours }) => {
        const number = dayNumber(day);
        return number === null ? [] : [[`${site} ${number}`, hours] as const];
      }),
    );
  }

  /** Hours that are worked on a day at a site. @param usual those of a working day */
  hours(siteId: string | null, day: DayNumber, usual = USUAL_HOURS): number {
    const own = siteId === null ? undefined : this.#hours.get(`${siteId} ${day}`);
    return own ?? (weekdayOf(day) < this.#workDays ? usual : 0);
  }

  /** The same day, or the last working day before it. */
  workDayUpTo(siteId: string | null, day: DayNumber): DayNumber {
    let d = day;
    for (let i = 0; i < MOST_CLOSED && this.hours(siteId, d) <= 0; i++) d--;
    return d;
  }

  /** The same day, or the first working day after it. */
  workDayFrom(siteId: string | null, day: DayNumber): DayNumber {
    let d = day;
    for (let i = 0; i < MOST_CLOSED && this.hours(siteId, d) <= 0; i++) d++;
    return d;
  }

  /** So many working days before, or after where they are negative. */
  before(siteId: string | null, day: DayNumber, workDays: number): DayNumber {
    const step = workDays < 0 ? 1 : -1;
    let d = day;
    for (let i = 0; i < Math.abs(workDays); i++)
      d = step < 0 ? this.workDayUpTo(siteId, d - 1) : this.workDayFrom(siteId, d + 1);
    return d;
  }
}

/** Days in a row that a shop may be closed before its calendar is no longer followed. */
const MOST_CLOSED = 400;

/**
 * Whole days that pass, beyond the night, while something waits: what is done at the end of a day can go on the next
 * morning when it has waited the hours between.
 */
export function extraDays(waitHours: number, hoursDay: number): number {
  return Math.max(0, Math.ceil((waitHours - (24 - hoursDay)) / 24));
}
