import type { ElectricRatings, Finding, LineResult } from "@pinwright/engine";
import type { Edit } from "./edit.ts";

/** A rule that may also newly tell of something, and about what. */
export interface Consequence {
  readonly rule: string;
  readonly where: (finding: Finding) => boolean;
}

/** What is done to the machine, to whom, and what may come of it. */
export interface Plan {
  /** Ids that one finding of the rule must have among its subjects. */
  readonly victim: readonly string[];
  readonly change: (edit: Edit) => void;
  /** What is done to the shop, whose tables several machines share. */
  readonly changeShop?: (edit: Edit) => void;
  /** What else may newly be found, each as narrowly as can be said beforehand. */
  readonly follows?: readonly Consequence[];
  /** What may no longer be found; what follows may also replace a finding by one that differs. */
  readonly ends?: readonly Consequence[];
}

/** The machine as it is without a fault, with what everything electrical in it is made for. */
export interface Sound extends LineResult {
  readonly ratings: ElectricRatings;
}

/** A deliberate fault in the book, which a rule must name. */
export interface Mutation {
  /** The fault in a few words, with the predicate that picks its victim. */
  readonly name: string;
  readonly rule: string;
  /** Picks the victim in the sound machine by what it is, never by its id. */
  readonly plan: (sound: Sound) => Plan;
}
