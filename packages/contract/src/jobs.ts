import { z } from "zod";
import { releaseName } from "./releases.ts";
import { plainText, requestId } from "./text.ts";

/** What can be made of a comparison: facts of the draft with its sheets, and the two sheets of a change. */
export const COMPARE_SHEETS = ["facts", "change-note", "retrofit-kit"] as const;
export type CompareSheet = (typeof COMPARE_SHEETS)[number];

/** Sheets to make. Empty lists mean all. */
export const sheetRequestSchema = z.strictObject({
  id: requestId,
  harnessIds: z.array(z.string().max(80)).max(2000),
  kinds: z.array(z.string().max(40)).max(50),
  formats: z.array(z.enum(["pdf", "svg", "dxf", "xlsx", "csv"])).max(5),
  language: z.enum(["en", "zh", "both"]),
  /** Machines that are made together, for the sheets that panels are cut and boards are kitted from. */
  machines: z.number().int().min(1).max(100_000).default(1),
  /** Sheets of the book's runs; then those of the machine are made only when `kinds` names some. */
  runs: z
    .strictObject({
      /** Empty: all. */
      kinds: z.array(z.string().max(40)).max(10),
      /** Only what is for this run; absent: all runs. */
      run: plainText(120).min(1).optional(),
      /** Day that the plan is made for. */
      today: z.iso.date(),
    })
    .optional(),
  /** What differs between two revisions; then only that is made. */
  compare: z
    .strictObject({
      from: releaseName,
      /** Absent: the book as it is now. */
      to: releaseName.optional(),
      make: z.array(z.enum(COMPARE_SHEETS)).min(1).max(COMPARE_SHEETS.length),
      today: z.iso.date(),
    })
    .optional(),
});
/** As it is sent: what has a usual value may be left out. */
export type SheetRequest = z.input<typeof sheetRequestSchema>;

export const JOB_STATES = ["waiting", "running", "done", "cancelled", "failed"] as const;

export const jobSchema = z.object({
  id: z.string(),
  book: z.string(),
  /** Number of the change set that the sheets are made from. */
  changeNo: z.number().int(),
  state: z.enum(JOB_STATES),
  done: z.number().int(),
  total: z.number().int(),
  /** What is made just now, or why it failed. */
  now: z.string(),
  files: z.array(
    z.object({ name: z.string(), title: z.string(), bytes: z.number().int(), body: z.string() }),
  ),
});
export type Job = z.infer<typeof jobSchema>;
