import { z } from "zod";
import { factSchema, UNIT_KINDS } from "./facts.ts";
import { unitGateSchema } from "./gate.ts";
import { type Route, route } from "./route.ts";
import { bookId, plainText, utcTime } from "./text.ts";

const name = plainText(120).min(1);
const optionalName = name.optional();
const whole = (usual: number, max: number) => z.coerce.number().int().min(0).max(max).default(usual);

export const ASIDE_REASONS = [
  "hash",
  "fork",
  "link",
  "gap",
  "revoked",
  "not-allowed",
  "server-only",
] as const;
/**
 * Why a fact is kept but does not count: its hash is not that of its text; another fact stands at its place in the stream;
 * it is not linked to the one before; one before it is not here yet; who wrote it may not come in any more, or may not do
 * this; it is one that only the server writes.
 */
export type AsideReason = (typeof ASIDE_REASONS)[number];

export const streamHeadSchema = z.object({ stream: z.string(), seq: z.number().int(), hash: z.string() });
export type StreamHead = z.infer<typeof streamHeadSchema>;

export const arrivedFactSchema = z.object({
  /** Its place in the order of arrival. */
  no: z.number().int(),
  receivedAt: utcTime,
  fact: factSchema,
  aside: z.enum(ASIDE_REASONS).nullable(),
});
export type ArrivedFact = z.infer<typeof arrivedFactSchema>;

export const STREAM_FAULTS = ["changed", "missing", "inserted", "head", "look-up"] as const;

/** A place where the records are not as they were written. */
export const streamFaultSchema = z.object({
  stream: z.string(),
  seq: z.number().int(),
  /**
   * The row, or nothing where one was; one too many; the end of the stream is not where it was; the fact is not found by
   * what it says, or counts where it should not.
   */
  what: z.enum(STREAM_FAULTS),
});
export type StreamFault = z.infer<typeof streamFaultSchema>;

/** Most bytes of a picture. */
export const PICTURE_BYTES = 2 * 1024 * 1024;

export const keptUnitSchema = z.object({
  unit: z.string(),
  what: z.enum(UNIT_KINDS),
  type: z.string(),
  book: z.string(),
  revision: z.string(),
  run: z.string(),
});
export type KeptUnit = z.infer<typeof keptUnitSchema>;

/** Most facts that are sent at once. */
export const MOST_FACTS = 500;

export const newUnitsSchema = z.strictObject({
  book: bookId,
  /** Release that they are built to; absent: the newest of the book, or the book as it is when there is none. */
  revision: plainText(120).min(1).optional(),
  what: z.enum(UNIT_KINDS),
  /** Board type, harness or mechanism type; of a machine the book itself. */
  type: name,
  run: optionalName,
  options: z.array(name).max(50).default([]),
  count: z.number().int().min(1).max(1000),
});

/** What is asked and recorded on the floor. */
export const RECORD_ROUTES = {
  sendFacts: route({
    method: "post",
    path: "/api/facts",
    about:
      "Takes in what a device recorded, in the order of its stream. What is there already is answered as before; what contradicts is kept aside.",
    role: "builder",
    body: z.strictObject({ facts: z.array(factSchema).min(1).max(MOST_FACTS) }),
    answer: z.object({
      heads: z.array(streamHeadSchema),
      aside: z.array(z.object({ stream: z.string(), seq: z.number().int(), why: z.enum(ASIDE_REASONS) })),
    }),
  }),
  facts: route({
    method: "get",
    path: "/api/facts",
    about: "Facts after a number, in the order of arrival.",
    role: "viewer",
    query: z.strictObject({ after: whole(0, 2 ** 31 - 1), limit: whole(500, 2000) }),
    answer: z.array(arrivedFactSchema),
  }),
  streams: route({
    method: "get",
    path: "/api/streams",
    about: "Where each stream stands: the number and hash of its last fact that counts.",
    role: "viewer",
    answer: z.array(streamHeadSchema),
  }),
  units: route({
    method: "get",
    path: "/api/units",
    about: "Units that were begun.",
    role: "viewer",
    query: z.strictObject({
      what: z.enum(UNIT_KINDS).optional(),
      type: optionalName,
      book: optionalName,
      run: optionalName,
    }),
    answer: z.array(keptUnitSchema),
  }),
  addUnits: route({
    method: "post",
    path: "/api/units",
    about: "Gives out serial numbers.",
    role: "lead",
    body: newUnitsSchema,
    answer: z.array(keptUnitSchema),
  }),
  unitFacts: route({
    method: "get",
    path: "/api/units/:unit",
    about: "Everything that was recorded of a unit and of what is or was inside it, in the order of arrival.",
    role: "viewer",
    answer: z.array(arrivedFactSchema),
  }),
  unitGate: route({
    method: "get",
    path: "/api/units/:unit/gate",
    about: "What keeps a unit and what is inside it from being released, and whether it was.",
    role: "viewer",
    answer: unitGateSchema,
  }),
  releaseUnit: route({
    method: "post",
    path: "/api/units/:unit/release",
    about:
      "Releases a unit. Refused as a conflict with the blocks that stand; one that is released already is answered as before.",
    role: "lead",
    body: z.strictObject({}),
    answer: z.object({ fact: arrivedFactSchema, gate: unitGateSchema }),
  }),
  asideFacts: route({
    method: "get",
    path: "/api/records-aside",
    about: "Facts that are kept and do not count, with why, after a number, in the order of arrival.",
    role: "viewer",
    query: z.strictObject({ after: whole(0, 2 ** 31 - 1), limit: whole(500, 2000) }),
    answer: z.array(arrivedFactSchema),
  }),
  checkRecords: route({
    method: "get",
    path: "/api/records-check",
    about:
      "Reads every record again: rows that were changed, dropped or inserted behind the application's back, and where each stream ends. A head from a certificate can be given to be held against its stream.",
    role: "lead",
    query: z.strictObject({
      stream: optionalName,
      seq: z.coerce
        .number()
        .int()
        .min(1)
        .max(2 ** 31 - 1)
        .optional(),
      hash: z
        .string()
        .regex(/^[0-9a-f]{64}$/, "64 hexadecimal digits")
        .optional(),
    }),
    answer: z.object({ faults: z.array(streamFaultSchema), heads: z.array(streamHeadSchema) }),
  }),
  putPicture: route({
    method: "post",
    path: "/api/pictures",
    about:
      "Keeps a picture of a defect (JPEG, PNG or WebP, at most 2 MiB) under its hash; sent twice it is one.",
    role: "builder",
    takesFile: true,
    answer: z.object({ sha256: z.string() }),
  }),
  picture: route({
    method: "get",
    path: "/api/pictures/:sha256",
    about: "A picture by its hash.",
    role: "viewer",
  }),
  trace: route({
    method: "get",
    path: "/api/trace",
    about:
      "Units that something went into or somebody worked on, and all that they are or were in. What is given must all hold.",
    role: "viewer",
    query: z.strictObject({
      part: optionalName,
      lot: optionalName,
      type: optionalName,
      revision: optionalName,
      person: optionalName,
      instrument: optionalName,
      from: utcTime.optional(),
      to: utcTime.optional(),
    }),
    answer: z.array(z.object({ unit: z.string(), isDirect: z.boolean() })),
  }),
  readings: route({
    method: "get",
    path: "/api/readings",
    about: "The last readings of a test, oldest first.",
    role: "viewer",
    query: z.strictObject({ test: name, limit: whole(1000, 100_000) }),
    answer: z.array(
      z.object({
        no: z.number().int(),
        unit: z.string(),
        value: z.number().nullable(),
        good: z.boolean(),
        /** Blank: nobody said with what it was read. */
        instrument: z.string(),
        at: utcTime,
      }),
    ),
  }),
} as const satisfies Readonly<Record<string, Route>>;
