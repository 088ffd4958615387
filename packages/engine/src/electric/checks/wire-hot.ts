import { type Finding, makeFinding } from "../../model/index.ts";
import { leastTypeId } from "../sizing/needs.ts";
import { type ElectricFacts, rounded } from "./facts.ts";

/** `wire-hot`: a wire carries more, over a minute of hard play, than its conductor may in this bundle and this air. */
export function wireHot({ ratings, machine, harnesses }: ElectricFacts): readonly Finding[] {
  return [...ratings.wires.values()].flatMap((rating) =>
    rating.rmsA <= rating.limitA
      ? []
      : [
          makeFinding("wire-hot", "error", [rating.wireId, rating.branchId], {
            rms_a: rounded(rating.rmsA),
            limit_a: rounded(rating.limitA),
            single_a: rounded(rating.singleA),
            ambient_share: rounded(rating.ambientShare),
            ambient_c: machine.shop.numbers.ambient_c,
            bundle_share: rounded(rating.bundleShare),
            wires: rating.wires,
            loading_pct: rounded(rating.loading * 100),
            least_type: leastTypeId(machine, harnesses, ratings, rating.wireId),
          }),
        ],
  );
}
