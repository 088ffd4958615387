import { z } from "zod";
import { PROBLEM_DEEDS, PROBLEM_SOURCES, problemAboutSchema } from "./problem-facts.ts";
import { type Route, route } from "./route.ts";
import { plainText, utcTime } from "./text.ts";

const name = plainText(120).min(1);

/** Which record says so, by whom and when: what a correction names. */
const source = { stream: z.string(), seq: z.number().int(), at: utcTime, person: z.string() };

const problemNoteSchema = z.object({
  ...source,
  did: z.enum(PROBLEM_DEEDS),
  says: z.string(),
  unit: z.string().nullable(),
  picture: z.string().nullable(),
});
export type ProblemNote = z.infer<typeof problemNoteSchema>;

export const PROBLEM_STATES = ["open", "decided", "ended"] as const;

/** A problem with its course, as the records have it. */
export const keptProblemSchema = z.object({
  ...source,
  problem: z.string(),
  book: z.string(),
  about: z.array(problemAboutSchema),
  from: z.enum(PROBLEM_SOURCES),
  says: z.string(),
  unit: z.string().nullable(),
  run: z.string().nullable(),
  picture: z.string().nullable(),
  /** What was seen, tried, measured and decided, in order. */
  notes: z.array(problemNoteSchema),
  /** `decided`: somebody said what is to be done, and it is not done yet. */
  state: z.enum(PROBLEM_STATES),
  ended: z
    .object({
      ...source,
      how: z.enum(["changed", "no-change"]),
      changeNo: z.number().int().nullable(),
      why: z.string(),
    })
    .nullable(),
  /** First release that has the change which ended it; null: it ended in none, or none has it yet. */
  revision: z.string().nullable(),
  /** How often somebody else saw it too, and how often after it had ended. */
  seen: z.number().int(),
  seenSince: z.number().int(),
});
export type KeptProblem = z.infer<typeof keptProblemSchema>;

/** What is wrong with a design, and how it ended; written as records, through `sendFacts`. */
export const PROBLEM_ROUTES = {
  problems: route({
    method: "get",
    path: "/api/problems",
    about:
      "Problems of a book with their course, open ones first, the last ones first; of all, or of those about one thing.",
    role: "viewer",
    query: z.strictObject({ book: name, about: name.optional() }),
    answer: z.array(keptProblemSchema),
  }),
} as const satisfies Readonly<Record<string, Route>>;
