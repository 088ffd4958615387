import { type Finding, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";
import { subjectsOf } from "./fuse-small.ts";

/** `fuse-breaking`, `fuse-volts`: a short circuit right behind a fuse is more than it can break, in A or in V. */
export function fuseBreaking({ ratings }: ElectricFacts): readonly Finding[] {
  return [...ratings.fuses.values()].flatMap((fuse) => {
    const found: Finding[] = [];
    if (fuse.breakingA !== null && fuse.breaksA > fuse.breakingA) {
      const numbers = {
        breaks_a: rounded(fuse.breaksA),
        breaking_a: fuse.breakingA,
        volts: rounded(fuse.volts),
        loop_ohm: rounded(fuse.volts / fuse.breaksA),
      };
      found.push(makeFinding("fuse-breaking", "error", subjectsOf(fuse), numbers));
    }
    if (fuse.ratedV !== null && fuse.nominalV > fuse.ratedV) {
      const numbers = { volts: rounded(fuse.nominalV), rated_v: fuse.ratedV };
      found.push(makeFinding("fuse-volts", "error", subjectsOf(fuse), numbers));
    }
    return found;
  });
}
