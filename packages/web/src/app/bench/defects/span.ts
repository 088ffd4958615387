/** Times that are looked at. */
export const SPANS = ["week", "month", "quarter", "year", "all"] as const;
export type Span = (typeof SPANS)[number];

const DAYS: Readonly<Record<Exclude<Span, "all">, number>> = { week: 7, month: 30, quarter: 90, year: 365 };
const DAY_MS = 86_400_000;

/** Beginning of the day at the reader's place. @param nowMs ms since 1970 */
export function dayStart(nowMs: number): Date {
  const day = new Date(nowMs);
  day.setHours(0, 0, 0, 0);
  return day;
}

/** What is asked of the server for a time: from the beginning of its first day on. @param nowMs ms since 1970 */
export const spanQuery = (span: Span, nowMs: number): { readonly from?: string } =>
  span === "all" ? {} : { from: dayStart(nowMs - (DAYS[span] - 1) * DAY_MS).toISOString() };
