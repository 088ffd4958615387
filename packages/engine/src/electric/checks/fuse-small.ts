import { type Finding, type FuseRating, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, percent, rounded } from "./facts.ts";

/** `fuse-overloaded`, `fuse-pulsed`: a fuse that its steady current, or its pulses, wear out. */
export function fuseSmall(facts: ElectricFacts): readonly Finding[] {
  return [...facts.ratings.fuses.values()].flatMap((fuse) => [...overloaded(facts, fuse), ...pulsed(fuse)]);
}

function overloaded({ machine }: ElectricFacts, fuse: FuseRating): readonly Finding[] {
  if (fuse.steadyA <= fuse.ratedA) return [];
  const numbers = {
    rms_a: rounded(fuse.rmsA),
    ambient_share: rounded(fuse.ambientShare),
    ambient_c: machine.shop.numbers.ambient_c,
    steady_a: rounded(fuse.steadyA),
    rated_a: fuse.ratedA,
    required_a: fuse.requiredA ?? "-",
  };
  return [makeFinding("fuse-overloaded", "error", subjectsOf(fuse), numbers)];
}

function pulsed(fuse: FuseRating): readonly Finding[] {
  if (fuse.neededA2s === null || fuse.meltingA2s === null || fuse.neededA2s <= fuse.meltingA2s) return [];
  const numbers = {
    peak_a: rounded(fuse.peakA),
    pulse_ms: fuse.pulseMs,
    pulse_a2s: rounded(fuse.pulseA2s),
    pulses: fuse.pulses,
    share_pct: percent(fuse.pulseShare),
    needed_a2s: rounded(fuse.neededA2s),
    melting_a2s: rounded(fuse.meltingA2s),
    rated_a: fuse.ratedA,
    required_a: fuse.requiredA ?? "-",
  };
  return [makeFinding("fuse-pulsed", "error", subjectsOf(fuse), numbers)];
}

/** The item that a fuse sits on, and the fuse: its row, or the element of a board. */
export const subjectsOf = ({ elementId, fuseId }: FuseRating): readonly string[] => [
  elementId.slice(0, elementId.lastIndexOf(":")),
  fuseId ?? elementId,
];
