import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../../model/index.ts";
import type { ProgramFacts } from "./facts.ts";

/**
 * One driver on two coils or motors, or on a coil and a lamp, fires both at once. Lamps in parallel are a string, and
 * the windings of one coil belong together: those are meant.
 */
export function driverShared({ loadsOf }: ProgramFacts): readonly Finding[] {
  return [...loadsOf.values()].flatMap((loads) => {
    const driver = loads[0]?.control;
    const items = [...new Set(loads.map(({ load }) => load.element.itemId))].sort(compareText);
    const strong = loads.some(
      ({ load }) => load.element.row.kind === "coil" || load.element.row.kind === "motor",
    );
    if (driver === undefined || items.length < 2 || !strong) return [];
    return [makeFinding("driver-shared", "warning", [driver.pointId, ...items], { loads: items.length })];
  });
}
