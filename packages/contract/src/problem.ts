import { z } from "zod";
import { conflictSchema } from "./changes.ts";
import { blockSchema } from "./gate.ts";

/** Reasons why a request is refused. A code is never used again for something else. */
export const PROBLEM_CODES = [
  "bad-request",
  "bad-json",
  "too-large",
  "not-signed-in",
  "not-allowed",
  "forged",
  "wrong-secret",
  "too-many-tries",
  "not-found",
  "taken",
  "conflict",
  "nothing-to-undo",
  "nothing-to-redo",
  "busy",
  "unreadable",
  "wrong-method",
  "internal",
] as const;
export type ProblemCode = (typeof PROBLEM_CODES)[number];

/** Every answer that is not a success: what is wrong, where, and what to do. */
export const problemSchema = z.object({
  code: z.enum(PROBLEM_CODES),
  /** In English; the app says it in the reader's language by the code. */
  message: z.string(),
  /** Places in what was sent: `changes.3.to`, and what was expected there. */
  places: z.array(z.object({ at: z.string(), expected: z.string() })).optional(),
  conflicts: z.array(conflictSchema).optional(),
  /** What keeps a unit from being released and is not lifted. */
  blocks: z.array(blockSchema).optional(),
});
export type Problem = z.infer<typeof problemSchema>;
