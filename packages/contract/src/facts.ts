import { z } from "zod";
import { canonicalJson } from "./canonical.ts";
import { PROBLEM_FACTS } from "./problem-facts.ts";
import { plainText, utcTime } from "./text.ts";

/** Id of a unit: a machine, board, harness or mechanism with a serial number, or of a stream, step, test, part. */
const name = plainText(120).min(1);
const words = plainText(2000);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, "64 hexadecimal digits");
const minutes = z.number().min(0).max(100_000);

/** What a unit is. */
export const UNIT_KINDS = ["machine", "board", "harness", "mechanism"] as const;
export type UnitKind = (typeof UNIT_KINDS)[number];

/** Where something is on a drawing. */
const spot = z.strictObject({
  panel: name.optional(),
  item: name.optional(),
  point: name.optional(),
  xMm: z.number().optional(),
  yMm: z.number().optional(),
});

/** What can block a release. */
export const GATES = ["defect", "step", "test", "fit", "recall"] as const;
export type Gate = (typeof GATES)[number];

/**
 * What happened on the floor, once and for all. A mistake is put right by a `correction`, which names the fact that it
 * replaces; nothing is ever changed or taken away.
 */
export const factBodySchema = z.discriminatedUnion("kind", [
  /** A serial number was given out. Only the server writes it. */
  z.strictObject({
    kind: z.literal("begun"),
    unit: name,
    what: z.enum(UNIT_KINDS),
    /** Machine of the book, board type, harness or mechanism type. */
    type: name,
    book: name,
    revision: name,
    run: name.optional(),
    options: z.array(name).max(50).default([]),
  }),
  z.strictObject({ kind: z.literal("fitted"), unit: name, into: name, place: name }),
  z.strictObject({ kind: z.literal("removed"), unit: name, from: name, place: name, why: words }),
  z.strictObject({
    kind: z.literal("lot-used"),
    unit: name,
    part: name,
    lot: name,
    quantity: z.number().min(0).max(1e6).optional(),
  }),
  z.strictObject({
    kind: z.literal("step-done"),
    unit: name,
    step: name,
    station: name.optional(),
    minutes: minutes.optional(),
    /** Fasteners, wires or parts that were counted. */
    count: z.number().int().min(0).max(100_000).optional(),
  }),
  z.strictObject({
    kind: z.literal("reading"),
    unit: name,
    test: name,
    /** What was read; absent where it is only judged. */
    value: z.number().optional(),
    good: z.boolean(),
    instrument: name.optional(),
    station: name.optional(),
    minutes: minutes.optional(),
  }),
  z.strictObject({ kind: z.literal("noted"), unit: name, says: words.min(1) }),
  z.strictObject({
    kind: z.literal("defect"),
    unit: name,
    /** Made up where it was found. */
    defect: name,
    what: name,
    says: words.default(""),
    where: spot.default({}),
    station: name.optional(),
    /** Hash of a picture that is kept as a file. */
    picture: sha256.optional(),
  }),
  z.strictObject({
    kind: z.literal("mended"),
    unit: name,
    defect: name,
    cause: name,
    says: words.default(""),
    minutes: minutes.optional(),
  }),
  z.strictObject({ kind: z.literal("handed"), unit: name, stage: name, site: name.optional() }),
  z.strictObject({ kind: z.literal("sent"), unit: name, transport: name, to: name }),
  z.strictObject({ kind: z.literal("arrived"), unit: name, transport: name, site: name }),
  z.strictObject({
    kind: z.literal("alternate"),
    unit: name,
    part: name,
    instead: name,
    /** Allowed by the book, or a concession that somebody gave. */
    allowed: z.enum(["book", "concession"]),
    why: words.min(1),
  }),
  z.strictObject({
    kind: z.literal("override"),
    unit: name,
    gate: z.enum(GATES),
    /** The step, test, defect or place that no longer blocks. */
    of: name,
    why: words.min(1),
  }),
  /** A unit may ship. Only the server writes it. */
  z.strictObject({
    kind: z.literal("released"),
    unit: name,
    heads: z.array(z.tuple([name, z.number(), sha256])),
  }),
  z.strictObject({
    kind: z.literal("recall"),
    /** Made up by whoever calls back. */
    recall: name,
    part: name.optional(),
    lot: name.optional(),
    type: name.optional(),
    revision: name.optional(),
    why: words.min(1),
  }),
  z.strictObject({ kind: z.literal("recall-ended"), recall: name, why: words.min(1) }),
  z.strictObject({
    kind: z.literal("correction"),
    stream: name,
    seq: z.number().int().min(1),
    why: words.min(1),
  }),
  ...PROBLEM_FACTS,
]);
export type FactBody = z.infer<typeof factBodySchema>;
export type FactKind = FactBody["kind"];

/** One record of a stream: who saw what, when, behind which record. */
export const factSchema = z.strictObject({
  stream: name,
  /** From 1, without a gap. */
  seq: z.number().int().min(1),
  /** Hash of the record before; 64 noughts before the first. */
  before: sha256,
  /** Time of the device. */
  at: utcTime,
  /** Who was signed in, by id. */
  person: name,
  body: factBodySchema,
  /** SHA-256 of `factText`. */
  hash: sha256,
});
export type Fact = z.infer<typeof factSchema>;

/** Stream of what the server itself writes: serial numbers and releases. */
export const SERVER_STREAM = "server";

/** What the first record of a stream is linked to. */
export const NO_FACT = "0".repeat(64);

/** The text whose hash links a record to the one before: everything in it but the hash itself. */
export const factText = ({ stream, seq, before, at, person, body }: Omit<Fact, "hash">): string =>
  canonicalJson({ stream, seq, before, at, person, body });
