import { type Finding, makeFinding } from "../../model/index.ts";
import { mateOf } from "../net-index.ts";
import type { WireFacts } from "./facts.ts";

/**
 * `pin-unwired`: a live contact of a board or device that belongs to no net and is not marked spare.
 * `inline-half-open`: a cavity of an in-line connector that is wired on one half only.
 */
export function pinUnwired({ machine, index }: WireFacts): readonly Finding[] {
  const spare = machine.choices.get("spare");
  const found: Finding[] = [];
  for (const point of machine.points.values()) {
    if (index.endsByPoint.has(point.id)) continue;
    if ([point.id, point.landingId, point.itemId].some((id) => spare?.has(id))) continue;
    const mate = mateOf(machine, point.id);
    if (mate !== null) {
      if (index.endsByPoint.has(mate))
        found.push(makeFinding("inline-half-open", "warning", [point.id, mate]));
    } else if (point.use === "live") {
      found.push(makeFinding("pin-unwired", "warning", [point.id]));
    }
  }
  return found;
}
