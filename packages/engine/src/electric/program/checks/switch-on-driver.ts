import { type Finding, makeFinding } from "../../../model/index.ts";
import { controlsOf, type ProgramFacts } from "./facts.ts";

/**
 * A contact between a driver and a common is read by nobody and shorts the driver's work. In a matrix it leads to an
 * input as well; in series with a load it is part of the load's circuit.
 */
export function switchOnDriver({ traced }: ProgramFacts): readonly Finding[] {
  return traced.flatMap((contact) => {
    const { element, feeds } = contact;
    if (element.row.kind !== "contact" || controlsOf(contact, "input").length > 0) return [];
    const driver = controlsOf(contact, "driver")[0];
    if (driver === undefined || feeds[driver.side === "from" ? "to" : "from"].load) return [];
    return [makeFinding("switch-on-driver", "error", [element.itemId, driver.pointId])];
  });
}
