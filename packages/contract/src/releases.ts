import { z } from "zod";
import { plainText, requestId, utcTime } from "./text.ts";

/** Name of a release: what stands in the revision field of a title block. */
export const releaseName = plainText(12)
  .min(1)
  .regex(/^[\p{L}\p{N}][\p{L}\p{N}._-]*$/u, "letters, digits, dot, dash and underscore");

const sha256 = z.string().regex(/^[0-9a-f]{64}$/, "64 hexadecimal digits");
const count = z.number().int().min(0);

/** A finding that somebody accepted, as it stood when the release was made. */
export const acceptedSchema = z.object({
  rule: z.string(),
  severity: z.enum(["error", "warning", "note"]),
  subjects: z.array(z.string()),
  by: z.string(),
  reason: z.string(),
});

/** A book as it was released: a name, a state, what was found and accepted, and one hash for all that it holds. */
export const releaseSchema = z.object({
  book: z.string(),
  name: z.string(),
  /** The how manieth of the book, from 1. */
  no: z.number().int().min(1),
  /** Number of the change set that it is of. */
  changeNo: z.number().int(),
  at: utcTime,
  personName: z.string(),
  note: z.string(),
  /** Version of the program that made what it holds. */
  program: z.string(),
  /** Open findings of each severity; errors that nobody accepted are none. */
  findings: z.object({ error: count, warning: count, note: count }),
  accepted: z.array(acceptedSchema),
  /** SHA-256 of its manifest, which names the hash of everything that it holds. */
  hash: sha256,
});
export type Release = z.infer<typeof releaseSchema>;

/** What a release holds: `tables` (the book), `shop`, `results`, `body` and `frame` (a sheet in two parts), `file`. */
export const RELEASE_ITEM_KINDS = ["tables", "shop", "results", "body", "frame", "file"] as const;

export const releaseItemSchema = z.object({
  kind: z.enum(RELEASE_ITEM_KINDS),
  id: z.string(),
  hash: sha256,
  bytes: count,
  /** Of a sheet: what it is, for lists; of a file: its name and type. */
  about: z.record(z.string(), z.string()),
});
export type ReleaseItem = z.infer<typeof releaseItemSchema>;

/** What is written of a release when it is made; its SHA-256 is the hash of the release. */
export const releaseManifestSchema = releaseSchema.omit({ hash: true }).extend({
  format: z.literal("pinwright-release"),
  version: z.literal(1),
  items: z.array(releaseItemSchema),
});

/** First digits of a body hash that a print holds. */
export const PRINT_DIGITS = 12;

/** Something that is no longer what was released. */
export const releaseFaultSchema = z.object({
  book: z.string(),
  release: z.string(),
  /** Kind and id of an item; blank: the release itself. */
  item: z.string(),
  what: z.enum(["changed", "missing", "look-up"]),
});
export type ReleaseFault = z.infer<typeof releaseFaultSchema>;

export const newReleaseSchema = z.strictObject({
  id: requestId,
  name: releaseName,
  note: plainText(2000).default(""),
});

/** A release that is being made. */
export const releaseJobSchema = z.object({
  id: z.string(),
  book: z.string(),
  name: z.string(),
  state: z.enum(["waiting", "running", "done", "cancelled", "failed"]),
  done: count,
  total: count,
  /** What is made just now, or why it failed. */
  now: z.string(),
  release: releaseSchema.nullable(),
});
export type ReleaseJob = z.infer<typeof releaseJobSchema>;

/** A sheet that a release holds. */
export const releasedSheetSchema = z.object({
  /** `<harness>.<kind>.<language>`. */
  id: z.string(),
  /** Harness, or `machine`. */
  of: z.string(),
  kind: z.string(),
  language: z.enum(["en", "zh"]),
  title: z.string(),
  number: z.string(),
  pages: count,
  bodyHash: sha256,
});
export type ReleasedSheet = z.infer<typeof releasedSheetSchema>;

/** What is known of a print by its code. */
export const printStateSchema = z.object({
  /**
   * `draft`: no release has a sheet that says this; the book as it is now can have one of this name, which may say this or
   * not. `unknown`: neither a release nor the book as it is now has a sheet of this name that says this.
   */
  is: z.enum(["current", "superseded", "draft", "unknown"]),
  book: z.string(),
  sheet: z.string(),
  /** Releases that have exactly this sheet, the newest first. */
  releases: z.array(z.string()),
  /** Newest release of the book; null: none. */
  newest: releaseSchema.nullable(),
  /** The sheet as the newest release has it; null: it has none of this name. */
  now: releasedSheetSchema.nullable(),
  /** Number of the last change of the book, and how many come after the newest release. */
  changeNo: z.number().int(),
  changesSince: count,
});
export type PrintState = z.infer<typeof printStateSchema>;
