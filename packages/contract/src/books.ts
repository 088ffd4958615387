import { z } from "zod";
import { bookId, plainText, requestId, utcTime } from "./text.ts";

/** The shop's tables are kept like a book of their own. */
export const BOOK_KINDS = ["machine", "shop"] as const;
/** Id of the one shop of a server. */
export const SHOP_ID = "shop";

export const bookInfoSchema = z.object({
  id: z.string(),
  kind: z.enum(BOOK_KINDS),
  label: z.string(),
  labelZh: z.string(),
  /** Number of the last change set. */
  changeNo: z.number().int(),
  createdAt: utcTime,
  changedAt: utcTime,
  archived: z.boolean(),
});
export type BookInfo = z.infer<typeof bookInfoSchema>;

/** All cells of a book: table, row id, column. */
export const bookRowsSchema = z.object({
  book: bookInfoSchema,
  tables: z.record(z.string(), z.record(z.string(), z.record(z.string(), z.string()))),
});
export type BookRows = z.infer<typeof bookRowsSchema>;

/** What a new book starts from. */
export const newBookSchema = z.strictObject({
  id: bookId,
  label: plainText(200).min(1),
  labelZh: plainText(200).default(""),
  from: z.enum(["blank", "first-light", "tidewatch"]),
});
export type NewBook = z.infer<typeof newBookSchema>;

export const bookPatchSchema = z.strictObject({ archived: z.boolean() });

/** A state of a book with a name, which never changes again. */
export const snapshotSchema = z.object({
  id: z.string(),
  name: z.string(),
  changeNo: z.number().int(),
  personName: z.string(),
  at: utcTime,
  /** SHA-256 of what it holds. */
  hash: z.string(),
});
export type Snapshot = z.infer<typeof snapshotSchema>;

export const newSnapshotSchema = z.strictObject({ name: plainText(120).min(1) });

/** Body of a request that needs nothing but its id. */
export const retryableSchema = z.strictObject({ id: requestId });

export const faultSchema = z.object({
  code: z.string(),
  file: z.string(),
  row: z.number().nullable(),
  column: z.string().nullable(),
  value: z.string().nullable(),
  expected: z.string(),
  nearest: z.string().nullable(),
});

/** What reading a file gave, before or after it was taken in. */
export const importResultSchema = z.object({
  /** The book that it became or would change; null when it could not be read at all. */
  book: z.string().nullable(),
  /** Number of the change set; null for a rehearsal or when nothing differs. */
  no: z.number().int().nullable(),
  added: z.number().int(),
  changed: z.number().int(),
  removed: z.number().int(),
  /** Files that come with it: drawings, outlines and models. */
  files: z.number().int(),
  faults: z.array(faultSchema),
});
export type ImportResult = z.infer<typeof importResultSchema>;

/** A spreadsheet or CSV with headings of its own, as far as it was read. */
export const foreignSheetSchema = z.object({
  name: z.string(),
  /** Row of the file in which the headings stand; row `i` of `rows` is row `headerRow + 1 + i` of the file. */
  headerRow: z.number().int(),
  header: z.array(z.string()),
  rows: z.array(z.array(z.string())),
  /** What could not be read of it. */
  faults: z.array(faultSchema),
});
export type ForeignSheet = z.infer<typeof foreignSheetSchema>;

/** How the headings of a foreign sheet were matched to a table's columns, kept for the next time. */
export const mappingSchema = z.strictObject({
  table: z.string().max(80),
  header: z.array(z.string().max(200)).max(256),
  /** For each heading the column it goes to; empty: not taken. */
  columns: z.array(z.string().max(80)).max(256),
});
export type Mapping = z.infer<typeof mappingSchema>;
