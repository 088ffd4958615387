import type { OrderReason, Precedence, Severity } from "../../model/index.ts";

/**
 * What it costs to give a reason up, each so much more than the one before that no few of a lesser kind outweigh it:
 * common practice, no source. A wish yields to a wire that is threaded in, that to a part that is put in askew, that
 * to a tool that does not get there.
 */
const REASON_WEIGHTS: Readonly<Record<OrderReason, number>> = {
  rule: 1,
  wired: 4,
  covers: 16,
  "hides-nut": 32,
  hides: 64,
  stands: 1e6,
  built: 1e6,
};

/** A bundle that only runs beneath something can be threaded in later; one that ends there cannot be soldered so. */
const PASSING = 2;

/** Beginning of what shows that a harness ends beneath something, not only runs there; as nodes of routes are named. */
export const LANDING = "landing:";

/** Whether it is only that a bundle runs beneath something, so that it can be threaded in when that stands already. */
export const isThreaded = ({ why, at }: Precedence): boolean => why === "wired" && !at.startsWith(LANDING);

/** What it costs to give an edge up. */
export const weightOf = (edge: Precedence): number => (isThreaded(edge) ? PASSING : REASON_WEIGHTS[edge.why]);

/**
 * How bad it is that an edge had to be given up. Null: not at all, for a bundle is threaded in beneath what stands
 * there; hands that have to reach beneath it are another matter.
 */
export function severityOf(edge: Precedence): Severity | null {
  if (edge.why !== "wired") return "error";
  return isThreaded(edge) ? null : "warning";
}
