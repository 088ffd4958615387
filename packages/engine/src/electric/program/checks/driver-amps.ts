import { roundTo } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../../model/index.ts";
import { loadAmps } from "../load.ts";
import type { ProgramFacts } from "./facts.ts";

/** A driver must stand the current of all that it switches on at once: the loads that are wired to it. */
export function driverAmps({ machine, solution, loadsOf }: ProgramFacts): readonly Finding[] {
  return [...loadsOf.values()].flatMap((loads) => {
    const driver = loads[0]?.control;
    const rated = driver?.element.row.amp ?? null;
    if (driver === undefined || rated === null) return [];
    const amps = loads.reduce((sum, { load }) => sum + (loadAmps(machine, load.element, solution) ?? 0), 0);
    if (amps <= rated) return [];
    return [
      makeFinding("driver-amps", "error", [driver.pointId, ...loads.map(({ load }) => load.element.itemId)], {
        rated_a: rated,
        load_a: roundTo(amps, 0.001),
        loads: loads.length,
      }),
    ];
  });
}
