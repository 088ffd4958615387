import { blockersBeneath, carries, heldBy, type LiesOver, unitOf } from "../../fastening/index.ts";
import type { DriverReach, FastenerItem, Machine, Precedence } from "../../model/index.ts";

/**
 * What a fastener asks for: what stands in the way of its tools comes after what it goes with, unless it has to be
 * there before, which is a finding of its own; and what it carries comes after it.
 */
export function fastenerEdges(
  machine: Machine,
  fastener: FastenerItem,
  reach: DriverReach,
  over: LiesOver,
): readonly Precedence[] {
  if (reach.inWay.length === 0 && reach.nutInWay.length === 0 && !carries(fastener)) return [];
  const at = fastener.id;
  const beforeId = unitOf(machine, at);
  const edges: Precedence[] = [];
  const add = (afterIds: readonly string[], why: Precedence["why"]): void => {
    const beneath = blockersBeneath({ unitIds: afterIds }, beforeId, over);
    for (const afterId of afterIds)
      if (!beneath.includes(afterId)) edges.push({ beforeId, afterId, why, at });
  };
  add(reach.inWay, "hides");
  add(reach.nutInWay, "hides-nut");
  const carried = carries(fastener) ? heldBy(machine, fastener) : null;
  if (carried !== null) edges.push({ beforeId, afterId: carried, why: "stands", at });
  return edges;
}

/** What lies over something comes after it. */
export const coverEdges = (over: LiesOver): readonly Precedence[] =>
  [...over].flatMap(([beforeId, uppers]) =>
    uppers.map((afterId): Precedence => ({ beforeId, afterId, why: "covers", at: beforeId })),
  );
