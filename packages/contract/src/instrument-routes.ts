import { z } from "zod";
import { type Route, route } from "./route.ts";
import { bookId, plainText } from "./text.ts";

const name = plainText(120).min(1);

export const INSTRUMENT_TROUBLES = [
  "not-reached",
  "time-out",
  "ended",
  "too-long",
  "not-understood",
  "refused",
  "overload",
  "not-a-number",
  "not-measured",
  "busy",
] as const;
/**
 * Why an instrument gave nothing: nobody answers at its address; no answer in time; it ended the connection; its answer goes
 * on and on, or is not what was asked for; it says itself that something is wrong; what it measures is beyond its range or no
 * number; it does not measure this; too many wait for it already.
 */
export type InstrumentTrouble = (typeof INSTRUMENT_TROUBLES)[number];

const trouble = z.object({
  outcome: z.literal("trouble"),
  trouble: z.enum(INSTRUMENT_TROUBLES),
  /** What came from it or from the system, as it came. */
  says: z.string(),
});

/** What an instrument measures, and the least and greatest value that the shop uses it for. */
const measureSchema = z.object({
  unit: z.string(),
  min: z.number().nullable(),
  max: z.number().nullable(),
});

export const instrumentSchema = z.object({
  id: z.string(),
  label: z.string(),
  labelZh: z.string(),
  kind: z.enum(["scpi", "continuity"]),
  /** Station of a book; blank: every station. */
  station: z.string(),
  /** Last day of its calibration as year-month-day; blank: it needs none. */
  calibratedUntil: z.string(),
  measures: z.array(measureSchema),
});
export type InstrumentInfo = z.infer<typeof instrumentSchema>;

/**
 * Instruments of the shop. Where they are reached and what they are asked stands in the shop's tables alone: nobody who works
 * on the floor can name an address or a command.
 */
export const INSTRUMENT_ROUTES = {
  instruments: route({
    method: "get",
    path: "/api/instruments",
    about: "The instruments of the shop, with what they measure.",
    role: "viewer",
    answer: z.array(instrumentSchema),
  }),
  readInstrument: route({
    method: "post",
    path: "/api/instruments/:id/read",
    about: "Lets an instrument measure what a test of a book asks for.",
    role: "builder",
    body: z.strictObject({
      book: bookId,
      test: name,
      /** Step of a test that is a sequence. */
      step: z.number().int().min(1).max(1000).optional(),
    }),
    answer: z.discriminatedUnion("outcome", [
      z.object({
        outcome: z.literal("read"),
        value: z.number(),
        unit: z.string(),
        /** The answer of the instrument before it was brought into the unit. */
        raw: z.number(),
        /** Its calibration had run out when it read. */
        isOverdue: z.boolean(),
      }),
      trouble,
    ]),
  }),
  scanTester: route({
    method: "post",
    path: "/api/instruments/:id/scan",
    about: "Lets a continuity tester try every point against all others.",
    role: "builder",
    body: z.strictObject({
      /** Harness that is plugged in, which the scan then names. */
      unit: z
        .string()
        .regex(/^[A-Za-z0-9._-]{1,40}$/, "1 to 40 letters, digits, -, _ and .")
        .optional(),
    }),
    answer: z.discriminatedUnion("outcome", [
      z.object({
        outcome: z.literal("scanned"),
        /** The scan as a file of docs/tester-protocol.md. */
        scan: z.string(),
        isOverdue: z.boolean(),
      }),
      trouble,
    ]),
  }),
} as const satisfies Readonly<Record<string, Route>>;
