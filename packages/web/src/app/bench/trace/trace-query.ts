import { escapeFormula } from "@pinwright/book/csv";
import type { QueryIn, UnitSummary } from "@pinwright/contract";

/** What is looked for, as the form and the address have it; blank: nothing is said. */
const TRACE_FIELDS = ["part", "lot", "type", "revision", "person", "instrument", "from", "to"] as const;
export type TraceField = (typeof TRACE_FIELDS)[number];
export type TraceQuery = Readonly<Record<TraceField, string>>;

const BLANK: TraceQuery = {
  ...{ part: "", lot: "", type: "", revision: "" },
  ...{ person: "", instrument: "", from: "", to: "" },
};

/** What an address asks for. */
export function queryOf(params: URLSearchParams): TraceQuery {
  const query: Record<TraceField, string> = { ...BLANK };
  for (const field of TRACE_FIELDS) query[field] = (params.get(field) ?? "").trim();
  return query;
}

/** How an address asks for it. */
export const paramsOf = (query: TraceQuery): Record<string, string> =>
  Object.fromEntries(TRACE_FIELDS.flatMap((field) => (query[field] === "" ? [] : [[field, query[field]]])));

/** Whether anything is looked for. */
export const isAsked = (query: TraceQuery): boolean => TRACE_FIELDS.some((field) => query[field] !== "");

const DAY = /^\d{4}-\d\d-\d\d$/u;

/** The moment at which a day of this place begins, so many days later; undefined where it is no day. */
function startOf(day: string, later = 0): string | undefined {
  if (!DAY.test(day)) return undefined;
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  const at = new Date(year, month - 1, date + later);
  return Number.isNaN(at.getTime()) ? undefined : at.toISOString();
}

/** What the server is asked: days of this place become moments, the last day with all of it. */
export function serverQuery(query: TraceQuery): QueryIn<"trace"> {
  const { from, to, ...rest } = query;
  const asked: Record<string, string> = {};
  for (const [field, value] of Object.entries(rest)) if (value !== "") asked[field] = value;
  const [begin, end] = [startOf(from), startOf(to, 1)];
  return {
    ...asked,
    ...(begin === undefined ? {} : { from: begin }),
    ...(end === undefined ? {} : { to: end }),
  };
}

/** A recall speaks of these only. */
const OF_RECALL: ReadonlySet<TraceField> = new Set(["part", "lot", "type", "revision"]);

/** Whether what is looked for can be called back as it is. */
export const canRecall = (query: TraceQuery): boolean =>
  isAsked(query) && TRACE_FIELDS.every((field) => query[field] === "" || OF_RECALL.has(field));

/** A name for a recall that nobody else makes up: the day, and a few characters. */
export const recallName = (today: Date, madeUp: string): string =>
  `rc-${today.toISOString().slice(0, 10).replaceAll("-", "")}-${madeUp.slice(-4)}`;

/** Cells as RFC 4180 has them. What would be a formula in a spreadsheet is text. */
export const csvText = (rows: readonly (readonly string[])[]): string =>
  rows
    .map((row) => `${row.map((cell) => `"${escapeFormula(cell).replaceAll('"', '""')}"`).join(",")}\r\n`)
    .join("");

/** A unit that is concerned, with what is known of it. */
export interface Concerned {
  readonly unit: string;
  readonly isDirect: boolean;
  /** Undefined: it is of another book. */
  readonly summary: UnitSummary | undefined;
}
