import type { OrderReason } from "../../model/index.ts";

/**
 * What it costs to give a reason up, each so much more than the one before that no few of a lesser kind outweigh it:
 * common practice, no source. A wish yields to a wire that is threaded in, that to a part that is put in askew, that
 * to a tool that does not get there.
 */
export const REASON_WEIGHTS: Readonly<Record<OrderReason, number>> = {
  rule: 1,
  wired: 4,
  covers: 16,
  "hides-nut": 32,
  hides: 64,
  stands: 1e6,
  built: 1e6,
};
