import { type CoilRating, type Finding, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";

/** `coil-diode-missing`: nothing takes a coil's field when it is switched off. `coil-diode-small`: its diode is too small. */
export function coilDiode({ ratings }: ElectricFacts): readonly Finding[] {
  return [...ratings.coils.values()].flatMap((coil) => {
    if (!coil.needsDiode) return [];
    return coil.diode === null ? [missing(coil)] : tooSmall(coil);
  });
}

function missing(coil: CoilRating): Finding {
  return makeFinding("coil-diode-missing", "error", [coil.itemId, coil.elementId], {
    volts: rounded(coil.volts),
    most_a: rounded(coil.mostA),
    stored_mj: coil.storedJ === null ? "-" : rounded(coil.storedJ * 1000),
  });
}

function tooSmall({ itemId, diode }: CoilRating): readonly Finding[] {
  if (diode === null) return [];
  const { peakA, ratedPeakA, meanA, ratedA, volts, blockV } = diode;
  const short =
    (ratedPeakA !== null && peakA > ratedPeakA) ||
    (ratedA !== null && (meanA ?? 0) > ratedA) ||
    (blockV !== null && volts > blockV);
  if (!short) return [];
  const numbers = {
    peak_a: rounded(peakA),
    rated_peak_a: ratedPeakA ?? "-",
    mean_a: meanA === null ? "-" : rounded(meanA),
    rated_a: ratedA ?? "-",
    volts: rounded(volts),
    block_v: blockV ?? "-",
  };
  return [makeFinding("coil-diode-small", "error", [itemId, diode.elementId], numbers)];
}
