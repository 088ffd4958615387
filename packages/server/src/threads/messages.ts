import {
  blockSchema,
  COMPARE_SHEETS,
  checkSheetSchema,
  type Fact,
  faultSchema,
  foreignSheetSchema,
  printChangesSchema,
  releaseItemSchema,
  releaseSchema,
  sendOutSchema,
  sheetRequestSchema,
  streamHeadSchema,
  UNIT_KINDS,
} from "@pinwright/contract";
import type { BuiltRecords } from "@pinwright/engine";
import { RUN_SHEET_KINDS, SHEET_KINDS } from "@pinwright/sheets";
import { z } from "zod";

/** Tables of a book; see `TableJson`. */
const tables = z.array(
  z.object({ name: z.string(), json: z.custom<Uint8Array>((value) => value instanceof Uint8Array) }),
);

/** Files that parts are made from. */
const drawings = z.array(
  z.object({ name: z.string(), bytes: z.custom<Uint8Array>((value) => value instanceof Uint8Array) }),
);

const facts = z.custom<readonly Fact[]>(Array.isArray);

/** What was built and what failed on it. */
const built = z.custom<BuiltRecords>((value) => typeof value === "object" && value !== null);

/** Everything that the release of a unit is judged by. The facts were parsed when they were read. */
const gateCaseSchema = z.object({
  unit: z.string(),
  /** Of the unit and of what is or was inside it. */
  facts,
  /** Recalls, their ends and corrections. */
  recalls: facts,
  /** The line of each book that these units are of. */
  lines: z.array(
    z.object({
      book: z.string(),
      /** Revision that they are built to. */
      revision: z.string(),
      /** Another one when anything that the line comes from is another. */
      key: z.string(),
      /** Options; none: the usual ones. */
      options: z.array(z.string()),
      /** Null where the line may be known from before. */
      tables: tables.nullable(),
      shop: tables.nullable(),
    }),
  ),
  /** Tests of a book as they were when a unit was begun, where they are others now, and what these speak of. */
  past: z.array(z.object({ book: z.string(), revision: z.string(), key: z.string(), tables })),
});
export type GateCase = z.infer<typeof gateCaseSchema>;

const unitLabel = z.object({
  unit: z.string(),
  what: z.enum(UNIT_KINDS),
  type: z.string(),
  book: z.string(),
  revision: z.string(),
});

const instrument = z.object({ label: z.string(), label_zh: z.string(), calibratedUntil: z.string() });

/** A sheet of the floor's records, and what it is made from. */
const recordSheetOrder = z.discriminatedUnion("sheet", [
  z.object({
    sheet: z.literal("certificate"),
    given: gateCaseSchema,
    heads: z.array(streamHeadSchema),
    instruments: z.array(z.tuple([z.string(), instrument])),
  }),
  z.object({ sheet: z.literal("crate"), given: gateCaseSchema }),
  z.object({
    sheet: z.literal("labels"),
    book: z.string(),
    tables,
    shop: tables,
    units: z.array(unitLabel),
    paper: z.enum(["a4", "roll"]),
    start: z.number(),
    widthMm: z.number().optional(),
    heightMm: z.number().optional(),
  }),
  z.object({
    sheet: z.literal("transport"),
    book: z.string(),
    tables,
    shop: tables,
    facts,
    transport: z.string().nullable(),
  }),
]);
export type RecordSheetOrder = z.infer<typeof recordSheetOrder>;

const bytes = z.custom<Uint8Array>((value) => value instanceof Uint8Array);
/** The two parts of a sheet that a release keeps. */
const keptSheetParts = z.object({ body: bytes, frame: bytes });

/** Bytes of facts that a release keeps, and what was written when it was made. */
const revisionFacts = z.object({
  name: z.string(),
  note: z.string(),
  facts: bytes,
});

/** What two revisions are compared from. */
const compareCaseSchema = z.object({
  from: revisionFacts,
  /** Null: the book as it is now. */
  to: revisionFacts.nullable(),
  /** Another one when anything of the book as it is now is another. */
  key: z.string(),
  make: z.array(z.enum(COMPARE_SHEETS)),
  today: z.string(),
  /** Units of the book that were begun, as far as stock and work in progress are told from them. */
  units: z.array(
    z.object({
      unit: z.string(),
      what: z.enum(UNIT_KINDS),
      type: z.string(),
      revision: z.string(),
      within: z.string(),
      isReleased: z.boolean(),
    }),
  ),
});
export type CompareCase = z.infer<typeof compareCaseSchema>;

/** Work that is done in another thread. */
export const taskSchema = z.discriminatedUnion("kind", [
  /** Reads a book from a folder, a `.zip` or an `.xlsx`. */
  z.object({ kind: z.literal("read"), path: z.string(), name: z.string() }),
  /** Reads a spreadsheet or CSV with any headings. */
  z.object({ kind: z.literal("read-foreign"), path: z.string(), name: z.string() }),
  /** Writes a book, or the shop, to a file. */
  z.object({
    kind: z.literal("write"),
    path: z.string(),
    format: z.enum(["zip", "xlsx"]),
    tables,
    drawings,
  }),
  /** Makes the ZIP of a pack that is sent out. */
  z.object({
    kind: z.literal("send-out"),
    path: z.string(),
    tables,
    shop: tables,
    order: sendOutSchema,
    creator: z.string(),
    drawings,
  }),
  /** Makes a first-article check as a PDF. */
  z.object({
    kind: z.literal("check-sheet"),
    path: z.string(),
    tables,
    shop: tables,
    sheet: checkSheetSchema,
    creator: z.string(),
  }),
  /** Says what keeps a unit from being released. */
  z.object({ kind: z.literal("gate"), given: gateCaseSchema }),
  /** Makes a sheet of the floor's records as a PDF. */
  z.object({
    kind: z.literal("record-sheet"),
    path: z.string(),
    language: z.enum(["en", "zh", "both"]),
    date: z.string(),
    creator: z.string(),
    /** Names of people by their ids. */
    people: z.array(z.tuple([z.string(), z.string()])),
    order: recordSheetOrder,
  }),
  /** Makes all that a release holds as numbered files in a folder. */
  z.object({
    kind: z.literal("release"),
    folder: z.string(),
    tables,
    shop: tables,
    name: z.string(),
    date: z.string(),
    creator: z.string(),
    address: z.string(),
    built,
  }),
  /** Writes what faults of a machine are found with into a file. */
  z.object({
    kind: z.literal("fault-file"),
    path: z.string(),
    given: z.object({
      tables,
      shop: tables,
      /** Options of the machine; none: the usual ones. */
      options: z.array(z.string()),
      /** Blank: the one that the book gives itself. */
      revision: z.string(),
      built,
    }),
  }),
  /** Writes all that is shown of a service book into a folder. */
  z.object({
    kind: z.literal("service-book"),
    folder: z.string(),
    /** The composed book, when it was made before. */
    kept: z.object({ body: z.string(), frame: z.string() }).nullable(),
    /** What it is made from; null when it was made before. */
    given: z
      .object({
        /** Another one whenever anything that the line comes from is another. */
        key: z.string(),
        tables,
        shop: tables,
        /** Options of the machine; none: the usual ones. */
        options: z.array(z.string()),
        language: z.enum(["en", "zh"]),
        revision: z.string(),
        state: z.enum(["draft", "released"]),
        date: z.string(),
        creator: z.string(),
        address: z.string(),
        unit: z
          .object({
            serial: z.string(),
            /** Address of its page; blank: none. */
            address: z.string(),
            alternates: z.array(
              z.object({
                part: z.string(),
                instead: z.string(),
                allowed: z.enum(["book", "concession"]),
                why: z.string(),
              }),
            ),
          })
          .nullable(),
      })
      .nullable(),
  }),
  /** Says what changed on a sheet between two releases. */
  z.object({
    kind: z.literal("print-changes"),
    /** Harness of the sheet, or `machine`. */
    of: z.string(),
    before: bytes,
    after: bytes,
    old: keptSheetParts,
    /** Null: the newest has no such sheet. */
    now: keptSheetParts.nullable(),
    language: z.enum(["en", "zh"]),
  }),
  /** Makes what is asked of a comparison as numbered files in a folder. */
  z.object({
    kind: z.literal("compare"),
    folder: z.string(),
    tables,
    shop: tables,
    compare: compareCaseSchema,
    language: z.enum(["en", "zh", "both"]),
    creator: z.string(),
  }),
  /** Makes sheets as numbered files in a folder, and `all.zip` of them. */
  z.object({
    kind: z.literal("sheets"),
    folder: z.string(),
    tables,
    shop: tables,
    harnessIds: z.array(z.string()),
    kinds: z.array(z.enum(SHEET_KINDS)),
    formats: sheetRequestSchema.shape.formats,
    language: z.enum(["en", "zh", "both"]),
    creator: z.string(),
    /** Revision that the title block says; blank: what the machine says. */
    revision: z.string(),
    /** Address of the server on the network; blank: none. */
    address: z.string(),
    machines: sheetRequestSchema.shape.machines,
    runs: z
      .object({ kinds: z.array(z.enum(RUN_SHEET_KINDS)), run: z.string().nullable(), today: z.string() })
      .nullable(),
    /** Most bytes of all files together. */
    mostBytes: z.number(),
  }),
]);
export type Task = z.infer<typeof taskSchema>;

/** What the other thread answers. */
export const resultSchemas = {
  read: z.object({
    /** Null when nothing in the file is a book. */
    tables: tables.nullable(),
    /** The shop that is in the file; null when there is none. */
    shop: tables.nullable(),
    drawings,
    faults: z.array(faultSchema),
  }),
  "read-foreign": z.object({ sheets: z.array(foreignSheetSchema) }),
  write: z.object({}),
  "send-out": z.object({}),
  "check-sheet": z.object({}),
  "fault-file": z.object({}),
  "service-book": z.object({ title: z.string(), pages: z.number(), bytes: z.number() }),
  sheets: z.object({}),
  compare: z.object({}),
  "print-changes": printChangesSchema.pick({ pages: true, groups: true }),
  release: z.object({
    items: z.array(releaseItemSchema.omit({ hash: true, bytes: true }).extend({ path: z.string() })),
    findings: releaseSchema.shape.findings,
    accepted: releaseSchema.shape.accepted,
  }),
  "record-sheet": z.object({
    /** Keys of lines whose tables must be given; nothing was made then. */
    cold: z.array(z.string()),
    /** What the file is called. */
    name: z.string(),
  }),
  gate: z.object({
    /** Keys of lines whose tables must be given; the rest is empty then. */
    cold: z.array(z.string()),
    blocks: z.array(blockSchema),
  }),
} as const satisfies Readonly<Record<Task["kind"], z.ZodType>>;
export type ResultOf<K extends Task["kind"]> = z.infer<(typeof resultSchemas)[K]>;

const progress = z.object({
  type: z.literal("progress"),
  done: z.number(),
  total: z.number(),
  now: z.string(),
  /** A file that was made: number of its file in the folder. */
  file: z
    .object({ name: z.string(), title: z.string(), bytes: z.number(), body: z.string(), path: z.string() })
    .optional(),
});
export type Progress = z.infer<typeof progress>;
export type MadeFile = NonNullable<Progress["file"]>;

export const messageSchema = z.discriminatedUnion("type", [
  progress,
  z.object({ type: z.literal("done"), result: z.unknown() }),
  /** The task cannot be done with what was given, which whoever asked is told. */
  z.object({ type: z.literal("refused"), message: z.string() }),
]);
export type Message = z.infer<typeof messageSchema>;
