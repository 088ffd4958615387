import { roundTo } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { coveredHoleMm, type FitFacts, type Fitted, isLess } from "./fastener-fit.ts";
import { bitesIn, threadsMatch } from "./fastener-type.ts";

type Facts = FitFacts & Fitted;

const tenth = (valueMm: number): number => roundTo(valueMm, 0.1);

/** `nut-missing`: a screw with a machine thread has neither a nut nor a tapped hole, nor is it said to bite in wood. */
export function nutMissing({ item, panel }: Facts): Finding | null {
  if (bitesIn(item.type) !== "thread" || item.nut !== null || item.tappedMm !== null) return null;
  return makeFinding("nut-missing", "warning", [item.id, panel.id], {
    type: item.type.id,
    thread: item.type.thread,
  });
}

/** `nut-thread`: its nut has another thread, or is no nut. */
export function nutThread({ item }: Facts): Finding | null {
  const { type, nut } = item;
  if (nut === null || bitesIn(type) === "none" || threadsMatch(type, nut)) return null;
  return makeFinding("nut-thread", "error", [item.id, nut.id], {
    type: type.id,
    thread: type.thread || `${type.diameter_mm}`,
    nut_thread: nut.thread || `${nut.diameter_mm}`,
  });
}

/** `nut-short`: too little of it comes out at the far side to fill its nut, or a diameter of it. */
export function nutShort({ item, fit }: Facts): Finding | null {
  const { type, nut } = item;
  if (nut === null || fit.holdsIn !== "nut" || !threadsMatch(type, nut)) return null;
  if (!isLess(fit.engagedMm, fit.leastEngagedMm)) return null;
  const toNutMm = fit.woodMm - (nut.kind === "t-nut" ? nut.length_mm : 0);
  return makeFinding("nut-short", "error", [item.id, nut.id], {
    type: type.id,
    length_mm: tenth(type.length_mm),
    stack_mm: tenth(type.length_mm - fit.reachMm + fit.woodMm),
    engaged_mm: tenth(fit.engagedMm),
    least_mm: tenth(fit.leastEngagedMm),
    shortest_mm: tenth(type.length_mm - fit.reachMm + toNutMm + fit.leastEngagedMm),
  });
}

/**
 * `tapped-bottom`: it meets the bottom of its tapped hole before its head meets what it holds. `tapped-short`: too little
 * of its thread is in the tapped hole.
 */
export function tapped({ item, fit, panel }: Facts): Finding | null {
  const { type, tappedMm } = item;
  if (tappedMm === null || fit.holdsIn !== "tapped") return null;
  const stackMm = type.length_mm - fit.reachMm + fit.woodMm;
  const numbers = {
    type: type.id,
    length_mm: tenth(type.length_mm),
    stack_mm: tenth(stackMm),
    tapped_mm: tenth(tappedMm),
  };
  if (isLess(tappedMm, fit.reachMm - fit.woodMm))
    return makeFinding("tapped-bottom", "error", [item.id, panel.id], {
      ...numbers,
      longest_mm: tenth(stackMm + tappedMm),
    });
  if (!isLess(fit.engagedMm, fit.leastEngagedMm)) return null;
  return makeFinding("tapped-short", "error", [item.id, panel.id], {
    ...numbers,
    engaged_mm: tenth(fit.engagedMm),
    least_mm: tenth(fit.leastEngagedMm),
    shortest_mm: tenth(stackMm + fit.leastEngagedMm),
  });
}

/**
 * `head-through`: the head, or the washer under it, is not wider than the hole in the panel that it lies on; or the nut is
 * not, on the far side; or the head slips through its washer, or the thread does not go through that. A head that lies on the flange of what it
 * holds is not looked at: the book does not know the flange's hole.
 */
export function headThrough(facts: Facts): Finding | null {
  const { item, panel, fit, wood } = facts;
  const { type, washer, nut, flangeMm } = item;
  const say = (part: string, partMm: number, holeMm: number): Finding =>
    makeFinding("head-through", "error", [item.id, wood?.ownHole?.id ?? wood?.hole?.id ?? panel.id], {
      part,
      type: type.id,
      part_mm: tenth(partMm),
      hole_mm: tenth(holeMm),
    });
  const headMm = type.head_diameter_mm;
  if (washer !== null && headMm !== null && !isLess(washer.diameter_mm, headMm))
    return say("in-washer", headMm, washer.diameter_mm);
  if (washer !== null && isLess(washer.diameter_mm, type.diameter_mm))
    return say("thread", type.diameter_mm, washer.diameter_mm);
  if (fit.holdsIn !== "nut" && fit.holdsIn !== "tapped") return null;
  const holeMm = coveredHoleMm(facts);
  if (holeMm === null) return null;
  const bearingMm = washer === null ? headMm : washer.head_diameter_mm;
  if (flangeMm === 0 && bearingMm !== null && !isLess(holeMm, bearingMm))
    return say(washer === null ? "head" : "washer", bearingMm, holeMm);
  const nutMm = nut?.head_diameter_mm ?? null;
  return nutMm === null || isLess(holeMm, nutMm) ? null : say("nut", nutMm, holeMm);
}

/**
 * `pilot-size`: the hole that a type asks for, or that is cut for it, lies outside what the published table allows for its
 * pilot or clearance hole. Told once for each type, or each cutout, and wood.
 */
export function pilotSize({ item, panel, hole, wood }: Facts): Finding | null {
  if (hole === null || hole.allowedMm === null) return null;
  const [leastMm, mostMm] = hole.allowedMm;
  if (!isLess(hole.diameterMm, leastMm) && !isLess(mostMm, hole.diameterMm)) return null;
  return makeFinding("pilot-size", "warning", [wood?.ownHole?.id ?? item.type.id], {
    hole: hole.kind,
    wood: hole.kind === "pilot" ? panel.wood : "any",
    hole_mm: roundTo(hole.diameterMm, 0.01),
    least_mm: roundTo(leastMm, 0.01),
    most_mm: roundTo(mostMm, 0.01),
  });
}
