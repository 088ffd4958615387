import { roundTo } from "@pinwright/kernel";
import { makeFinding } from "../../model/index.ts";
import { bundleRuleMm } from "../bundle-rule.ts";
import { loopOver } from "../loop.ts";
import type { RouteRule } from "./facts.ts";

/**
 * `crossing-bend`: in some pose the loop over a hinge or a gap is bent more tightly than `bend_multiple` diameters of
 * the bundle of all harnesses there (rule of thumb × laid factor). The tightest pose is told.
 */
export const crossingBend: RouteRule = ({ machine, crossings, wiresIn }) =>
  [...crossings.values()].flatMap(({ crossing, lengthMm, shut }) => {
    const wires = wiresIn.get(crossing.id) ?? [];
    if (crossing.kind === "hole" || lengthMm === null || shut === null || wires.length === 0) return [];
    const diameterMm = bundleRuleMm(wires, machine.shop.numbers.laid_factor);
    const leastMm = machine.shop.numbers.bend_multiple * diameterMm;
    const { radiusMm } = loopOver(lengthMm, shut.distanceMm);
    if (radiusMm >= leastMm) return [];
    return [
      makeFinding("crossing-bend", "warning", [crossing.id, shut.poseId], {
        radius_mm: roundTo(radiusMm, 0.1),
        least_mm: roundTo(leastMm, 0.1),
        diameter_mm: roundTo(diameterMm, 0.1),
        length_mm: lengthMm,
        distance_mm: shut.distanceMm,
      }),
    ];
  });
