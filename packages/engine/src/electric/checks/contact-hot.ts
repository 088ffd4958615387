import { type Finding, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";

/** `contact-hot`: a contact carries more than its family allows beside its loaded neighbours. */
export function contactHot({ ratings, machine }: ElectricFacts): readonly Finding[] {
  return [...ratings.contacts.values()].flatMap((rating) =>
    rating.rmsA <= rating.limitA
      ? []
      : [
          makeFinding("contact-hot", "error", [rating.pointId], {
            family: machine.points.get(rating.pointId)?.family.id ?? "",
            rms_a: rounded(rating.rmsA),
            limit_a: rounded(rating.limitA),
            rated_a: rating.ratedA,
            contact_share: rounded(rating.contactShare),
            loaded: rounded(rating.loaded),
          }),
        ],
  );
}
