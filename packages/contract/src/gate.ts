import { z } from "zod";
import { GATES } from "./facts.ts";
import { utcTime } from "./text.ts";

/**
 * Why something keeps a unit: nothing is there; the last reading is not good; a defect is not mended; the unit changed or a
 * bad reading was taken back since the test; a recall speaks of it; what stands there never got a serial number; what
 * stands there is of another type than the place takes.
 */
export const BLOCK_REASONS = [
  "missing",
  "failed",
  "open",
  "not-retested",
  "recalled",
  "unknown",
  "wrong",
] as const;
export type BlockReason = (typeof BLOCK_REASONS)[number];

/** Something that keeps a unit from being released. */
export const blockSchema = z.object({
  gate: z.enum(GATES),
  /** Unit that it is about: the unit itself or one inside it. */
  unit: z.string(),
  /** Step, test, defect, place or recall. */
  of: z.string(),
  why: z.enum(BLOCK_REASONS),
  /** Nobody can lift it. */
  firm: z.boolean(),
  /** Somebody has lifted it, and says why. */
  lifted: z.boolean(),
});
export type Block = z.infer<typeof blockSchema>;

/** Whether a unit may ship, and what keeps it. */
export const unitGateSchema = z.object({
  unit: z.string(),
  /** Everything that keeps it and what is inside it, what was lifted included. */
  blocks: z.array(blockSchema),
  /** When and by whom it was released last; null: never. It may ship only while nothing stands that is not lifted. */
  released: z.object({ at: utcTime, person: z.string() }).nullable(),
  /** Whether it was released and nothing stands since: it may ship. */
  shippable: z.boolean(),
});
export type UnitGate = z.infer<typeof unitGateSchema>;
