import { ALL_TABLES, LIMITS, MACHINE_TABLE, OUTLINE_TABLE } from "@pinwright/book";
import { z } from "zod";
import { plainText, requestId, utcTime } from "./text.ts";

const TABLES: readonly string[] = [...Object.keys(ALL_TABLES), MACHINE_TABLE, OUTLINE_TABLE];

/** Text of a cell as stored: a table's cell, or a whole drawing. NUL cannot be stored everywhere. */
const cellText = (maxChars: number) =>
  z
    .string()
    .max(maxChars)
    .refine((text) => !text.includes("\u0000"), "no NUL character")
    .refine((text) => !/\p{Surrogate}/u.test(text), "well-formed Unicode");

const cellPlace = {
  table: z.enum(TABLES),
  row: z
    .string()
    .min(1)
    .max(200)
    .regex(/^[^\p{Cc}\p{Cs}]+$/u, "no control characters nor half characters"),
  column: z
    .string()
    .min(1)
    .max(80)
    .regex(/^[^\p{Cc}\p{Cs}]+$/u, "no control characters nor half characters"),
};

/** One cell that gets another text; see `CellChange` of the book. */
export const cellChangeSchema = z
  .strictObject({ ...cellPlace, from: cellText(LIMITS.outlineBytes), to: cellText(LIMITS.outlineBytes) })
  .refine((change) => change.table === OUTLINE_TABLE || change.to.length <= LIMITS.cellChars, {
    message: `at most ${LIMITS.cellChars} characters in a cell`,
    path: ["to"],
  });

/** Most cells of one change set that comes through the API; imports are one set of any size. */
export const CHANGES_PER_SET = 50_000;

/** A set of changes that a person makes at once. */
export const changeRequestSchema = z.strictObject({
  id: requestId,
  /** What was done, in the words of the screen that did it. */
  note: plainText(200).default(""),
  changes: z.array(cellChangeSchema).min(1).max(CHANGES_PER_SET),
});
export type ChangeRequest = z.infer<typeof changeRequestSchema>;

/** What made a change set. */
export const CHANGE_KINDS = ["edit", "undo", "redo", "import", "restore"] as const;
export type ChangeKind = (typeof CHANGE_KINDS)[number];

/** A change set without its cells, as history lists it. */
export const changeHeadSchema = z.object({
  no: z.number().int().min(1),
  id: z.string(),
  kind: z.enum(CHANGE_KINDS),
  person: z.string(),
  personName: z.string(),
  at: utcTime,
  note: z.string(),
  /** Number of the set that this one takes back or makes again. */
  reverses: z.number().int().nullable(),
  /** Number of the set that took this one back. */
  undoneBy: z.number().int().nullable(),
  cells: z.number().int(),
});
export type ChangeHead = z.infer<typeof changeHeadSchema>;

export const changeSetSchema = changeHeadSchema.extend({
  changes: z.array(z.object({ ...cellPlace, table: z.string(), from: z.string(), to: z.string() })),
});
export type ChangeSet = z.infer<typeof changeSetSchema>;

export const conflictSchema = z.object({
  ...cellPlace,
  table: z.string(),
  from: z.string(),
  to: z.string(),
  found: z.string(),
  reason: z.enum(["cell", "row-gone", "row-used"]),
  /** Who changed the cell last, and in which set; absent when that is not known. */
  by: z.object({ no: z.number().int(), personName: z.string(), at: utcTime }).optional(),
});
export type Conflict = z.infer<typeof conflictSchema>;

/** Answer to a change that was made: its number, and that of the book now. */
export const acknowledgedSchema = z.object({
  no: z.number().int(),
  /** True when this request had been acknowledged before. */
  repeated: z.boolean(),
});
export type Acknowledged = z.infer<typeof acknowledgedSchema>;
