import { type CoilRating, type Finding, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";

/**
 * `coil-stuck`: a coil that is left on draws less than opens its fuse, and gets too hot before a time-out, or for ever.
 * Where nothing is told of its heat, one that is made for pulses counts as getting too hot. What is on all the time is
 * made for that.
 */
export function coilStuck({ ratings }: ElectricFacts): readonly Finding[] {
  return [...ratings.coils.values()].flatMap((coil) => {
    if (!getsTooHot(coil) || endsInTime(coil.fuseS, coil) || endsInTime(coil.timeoutS, coil)) return [];
    const numbers = {
      volts: rounded(coil.volts),
      ohm: coil.ohm20C,
      stuck_a: rounded(coil.leastA),
      fuse: coil.fuseElementId ?? "-",
      fuse_a: coil.fuseRatedA ?? "-",
      limit_c: coil.limitC ?? "-",
      stuck_s: coil.stuckS === null ? "-" : rounded(coil.stuckS),
      fuse_s: coil.fuseS !== null && Number.isFinite(coil.fuseS) ? rounded(coil.fuseS) : "∞",
      timeout_s: coil.timeoutS ?? "∞",
    };
    return [makeFinding("coil-stuck", "error", [coil.itemId, coil.elementId], numbers)];
  });
}

/** Left on it passes its limit; of a motor, or a coil that is on all the time, that is not said here. */
const getsTooHot = ({ stuckS, duty, ohm20C, limitC }: CoilRating): boolean =>
  stuckS === null ? duty < 1 && ohm20C > 0 && limitC === null : Number.isFinite(stuckS);

const endsInTime = (seconds: number | null, { stuckS }: CoilRating): boolean =>
  seconds !== null && Number.isFinite(seconds) && (stuckS === null || seconds <= stuckS);
