import type { DayNumber } from "../../model/index.ts";
import { mondayOf } from "../calendar.ts";
import type { BatchDays } from "./schedule-run.ts";

/** Most times at which the parts of one stage of a run are asked for. */
const MOST_BUCKETS = 8;

/** Machines that a stage begins with in some weeks. */
export interface Bucket {
  /** First day on which it begins with one of them. */
  readonly startDay: DayNumber;
  /** Machines that it has begun with before, and up to the last of them. */
  readonly from: number;
  readonly to: number;
}

/**
 * The machines of a stage by the week in which it begins with them, so that a long run does not ask for all its parts
 * on its first day. A run over many weeks is cut into a few stretches.
 */
export function bucketsOf(batches: readonly BatchDays[]): readonly Bucket[] {
  const [first] = batches;
  const last = batches.at(-1);
  if (first === undefined || last === undefined) return [];
  const origin = mondayOf(first.startDay);
  const weeks = (mondayOf(last.startDay) - origin) / 7 + 1;
  const width = 7 * Math.max(1, Math.ceil(weeks / MOST_BUCKETS));
  const buckets: Bucket[] = [];
  let stretch = -1;
  for (const { first: machine, machines, startDay } of batches) {
    const own = Math.floor((mondayOf(startDay) - origin) / width);
    const before = buckets.at(-1);
    if (before !== undefined && own === stretch)
      buckets[buckets.length - 1] = { ...before, to: machine + machines };
    else buckets.push({ startDay, from: machine, to: machine + machines });
    stretch = own;
  }
  return buckets;
}
