import { z } from "zod";
import { UNIT_KINDS } from "./facts.ts";
import { keptUnitSchema } from "./record-routes.ts";
import { type Route, route } from "./route.ts";
import { plainText, utcTime } from "./text.ts";

/** Where a unit stands, in one line of a list. */
export const unitSummarySchema = keptUnitSchema.extend({
  stage: z.string(),
  site: z.string(),
  /** Sent off and not yet counted in. */
  onTheWay: z.object({ transport: z.string(), to: z.string() }).nullable(),
  /** The unit that it is in now, and its place there. */
  within: z.object({ unit: z.string(), place: z.string() }).nullable(),
  openDefects: z.number().int(),
  /** Tests whose last reading is not good. */
  failedTests: z.array(z.string()),
  /** Open recalls that concern it or what is in it now. */
  recalls: z.array(z.string()),
  releasedAt: utcTime.nullable(),
  /** Time of the last record of it. */
  lastAt: utcTime,
});
export type UnitSummary = z.infer<typeof unitSummarySchema>;

const saidSchema = z.object({ at: utcTime, person: z.string(), why: z.string() });

/** A recall, with how many units it concerns: those that it speaks of and those that they are in now. */
export const recallSchema = z.object({
  recall: z.string(),
  part: z.string().nullable(),
  lot: z.string().nullable(),
  type: z.string().nullable(),
  revision: z.string().nullable(),
  begun: saidSchema,
  ended: saidSchema.nullable(),
  units: z.number().int(),
  /** Of them: released, so that they may be with their owners. */
  released: z.number().int(),
});
export type Recall = z.infer<typeof recallSchema>;

/** Minutes that the floor recorded for a step on units of a type. */
export const stepMinutesSchema = z.object({
  what: z.enum(UNIT_KINDS),
  type: z.string(),
  step: z.string(),
  count: z.number().int(),
  medianMinutes: z.number(),
  leastMinutes: z.number(),
  mostMinutes: z.number(),
});
export type StepMinutes = z.infer<typeof stepMinutesSchema>;

const book = plainText(120).min(1);

/** What the office looks at of everything that was recorded. */
export const BENCH_ROUTES = {
  unitSummaries: route({
    method: "get",
    path: "/api/unit-summaries",
    about: "Where each unit of a book stands: stage, site, what holds it, whether it was released.",
    role: "viewer",
    query: z.strictObject({ book }),
    answer: z.array(unitSummarySchema),
  }),
  recalls: route({
    method: "get",
    path: "/api/recalls",
    about: "Recalls, open ones first, each with how many units it concerns.",
    role: "viewer",
    answer: z.array(recallSchema),
  }),
  stepMinutes: route({
    method: "get",
    path: "/api/step-minutes",
    about:
      "Minutes that the floor recorded for each step of a book: how often, the median, the least and the most.",
    role: "viewer",
    query: z.strictObject({ book }),
    answer: z.array(stepMinutesSchema),
  }),
  personNames: route({
    method: "get",
    path: "/api/person-names",
    about: "Names of everyone who has or had an account, by the id that records have.",
    role: "viewer",
    answer: z.array(z.object({ id: z.string(), name: z.string() })),
  }),
} as const satisfies Readonly<Record<string, Route>>;
