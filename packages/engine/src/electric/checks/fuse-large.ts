import { type Finding, makeFinding } from "../../model/index.ts";
import { leastTypeId } from "../sizing/needs.ts";
import { type ElectricFacts, rounded } from "./facts.ts";
import { subjectsOf } from "./fuse-small.ts";

/**
 * `fuse-large`: a fuse carries for ever what a wire behind it does not: its rating is above the wire's limit.
 * Source: IEC 60364-4-43, 433.1: rated current of the device at most the current-carrying capacity; from memory.
 */
export function fuseLarge({ ratings, machine, harnesses }: ElectricFacts): readonly Finding[] {
  return [...ratings.fuses.values()].flatMap((fuse) => {
    const wire = fuse.thinnest;
    if (wire === null || fuse.ratedA <= wire.limitA) return [];
    const own = ratings.wires.get(wire.wireId);
    const numbers = {
      rated_a: fuse.ratedA,
      limit_a: rounded(wire.limitA),
      single_a: rounded(own?.singleA ?? 0),
      ambient_share: rounded(own?.ambientShare ?? 0),
      bundle_share: rounded(own?.bundleShare ?? 0),
      wires: own?.wires ?? 0,
      least_type: leastTypeId(machine, harnesses, ratings, wire.wireId),
    };
    return [makeFinding("fuse-large", "warning", [...subjectsOf(fuse), wire.wireId], numbers)];
  });
}
