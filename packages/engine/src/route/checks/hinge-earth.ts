import { roundUpTo } from "@pinwright/kernel";
import { makeFinding } from "../../model/index.ts";
import type { RouteRule } from "./facts.ts";

/**
 * `hinge-earth`: an earth wire runs over a hinge; it has to be the longest there, by `earth_extra_pct` of the
 * crossing's length, so that it is the last to pull. `extra_mm` is what to add to it, in the shop's step.
 */
export const hingeEarth: RouteRule = ({ machine, crossings, wiresIn }) =>
  [...crossings.values()].flatMap(({ crossing, lengthMm }) => {
    if (crossing.kind !== "hinge" || lengthMm === null) return [];
    const wires = wiresIn.get(crossing.id) ?? [];
    if (wires.every((w) => w.netClass === "earth")) return [];
    const { earth_extra_pct, length_step_mm } = machine.shop.numbers;
    return wires
      .filter((w) => w.netClass === "earth")
      .map((w) =>
        makeFinding("hinge-earth", "note", [w.id, crossing.id], {
          length_mm: lengthMm,
          extra_mm: roundUpTo((lengthMm * earth_extra_pct) / 100, length_step_mm),
        }),
      );
  });
