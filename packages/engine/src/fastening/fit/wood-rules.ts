import { roundTo } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { type FitFacts, type Fitted, isLess } from "./fastener-fit.ts";
import { axialMm, bitesIn } from "./fastener-type.ts";

type Facts = FitFacts & Fitted;

const tenth = (valueMm: number): number => roundTo(valueMm, 0.1);

/**
 * `screw-no-wood`: there is nothing to hold in: the panel is no wood, the place lies outside it, or a hole or pocket has
 * taken the wood under the thread.
 */
export function screwNoWood({ item, panel, fit, wood }: Facts): Finding | null {
  if (wood === null) return null;
  const { type } = item;
  const say = (where: string, place: string): Finding =>
    makeFinding("screw-no-wood", "error", [item.id, place], { where, type: type.id });
  if (isLess(wood.edgeMm, 0)) return say("outside", panel.id);
  if (bitesIn(type) !== "wood" || fit.holdsIn !== "nothing") return null;
  if (panel.wood === "none") return say("panel", panel.id);
  if (wood.hole !== null) return say("hole", wood.hole.id);
  return say("pocket", wood.farPocket?.id ?? panel.id);
}

/**
 * `screw-through`: less wood is left before its point than the shop wants. It is an error when the point comes out where
 * it is seen and touched: anywhere but on the underside of a playfield.
 */
export function screwThrough({ item, panel, fit, wood, limits }: Facts): Finding | null {
  if (wood === null || fit.leftMm === null || !isLess(fit.leftMm, limits.farMarginMm)) return null;
  const isSeen = panel.purpose !== "playfield" || item.place.side === "under";
  const isOut = isLess(fit.leftMm, 0);
  const isPlayed = panel.purpose === "playfield" && item.place.side === "under";
  return makeFinding(
    "screw-through",
    isOut && isSeen ? "error" : "warning",
    [item.id, wood.farPocket?.id ?? panel.id],
    {
      comes: isOut ? "out" : "near",
      face: wood.farPocket !== null ? "pocket" : isPlayed ? "played" : "far",
      type: item.type.id,
      reach_mm: tenth(fit.reachMm),
      wood_mm: tenth(fit.woodMm),
      margin_mm: tenth(limits.farMarginMm),
      longest_mm: tenth(item.type.length_mm + fit.leftMm - limits.farMarginMm),
    },
  );
}

/** `screw-short`: less thread in wood than the shop wants, and the point does not come out. */
export function screwShort({ item, panel, fit }: Facts): Finding | null {
  const { engagedMm, leastEngagedMm, leftMm, holdsIn } = fit;
  if (holdsIn !== "wood" || leftMm === null || isLess(leftMm, 0) || !isLess(engagedMm, leastEngagedMm))
    return null;
  const { type, flangeMm, washer } = item;
  return makeFinding("screw-short", "error", [item.id, panel.id], {
    type: type.id,
    length_mm: tenth(type.length_mm),
    flange_mm: tenth(flangeMm + (washer === null ? 0 : axialMm(washer))),
    engaged_mm: tenth(engagedMm),
    least_mm: tenth(leastEngagedMm),
    shortest_mm: tenth(type.length_mm + leastEngagedMm - engagedMm),
  });
}

/**
 * `threadlocker-wood`: it does not set in wood, which has no metal and lets air in. `threadlocker-plastic`: it cracks
 * plastics (engineering figures: adhesive data sheets, from memory).
 */
export function threadlocker({ item, fit, isPlastic }: Facts): Finding | null {
  const { type, holds } = item;
  if (!type.threadlocker) return null;
  if (fit.holdsIn === "wood")
    return makeFinding("threadlocker-wood", "warning", [item.id, type.id], { type: type.id });
  if (!isPlastic || holds === null) return null;
  return makeFinding("threadlocker-plastic", "error", [item.id, holds], { type: type.id });
}
