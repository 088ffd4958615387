import type { Languages } from "./machine.ts";

/** What is asked of a balance, and what is different from a usual day. */
export interface StationQuestion {
  /** Fewest places for a takt, least takt for so many places, or least takt on the stations of the book. */
  readonly ask:
    | { readonly kind: "fewest-places"; readonly taktS: number }
    | { readonly kind: "least-takt"; readonly places: number }
    | { readonly kind: "book-stations" };
  /** Persons who are missing: places by `station` and number, `stn.wiring:2`. */
  readonly absent: readonly string[];
  /** Everything takes so much longer, in per cent. */
  readonly longerPct: number;
  /** Whether a step goes only where its skill is. */
  readonly skills: boolean;
}

/** Work of one person. */
export interface StationLoad {
  /** `stn.wiring:2`, or `place:3` where no stations of the book are used. */
  readonly placeId: string;
  /** Station of the book; null: none. */
  readonly stationId: string | null;
  readonly labels: Languages;
  readonly stepIds: readonly string[];
  readonly seconds: number;
  /** It stands beside the line: a bench where mechanisms are built. */
  readonly beside: boolean;
}

/** Two steps whose stations stand the other way round: the panel goes back along the line between them. */
export interface WayBack {
  readonly beforeId: string;
  readonly afterId: string;
}

/** A step that no place can do. */
export interface UnplacedStep {
  readonly stepId: string;
  readonly skill: string;
  readonly why: "skill" | "takt";
}

/** Steps shared out to people along the line, and to those at the mechanism benches beside it. */
export interface StationPlan {
  readonly question: StationQuestion;
  /** In the order of the line, empty ones included. */
  readonly loads: readonly StationLoad[];
  /** The longest load. */
  readonly taktS: number;
  /** No plan has a shorter one (least takt), or fewer places (fewest places). */
  readonly lowerBound: number;
  readonly isProven: boolean;
  /** Steps that no place can do: nobody has the skill, or by itself it is longer than the takt asked for. */
  readonly unplaced: readonly UnplacedStep[];
  /** Where fixed stations and skills do not let the work go forward only, in the order of the steps. */
  readonly waysBack: readonly WayBack[];
}

/** A plan on a day that is not as usual. */
export interface StationScenario {
  /** `usual`, `absent:stn.x:1`, `longer`, `skills`. */
  readonly id: string;
  readonly kind: "usual" | "absent" | "longer" | "skills";
  readonly plan: StationPlan;
  /** Of the absences the one with the longest takt. */
  readonly worst: boolean;
}

/** Loads of the usual plan while the people learn. */
export interface LearntLoad {
  /** Machine of the run, from 1. */
  readonly unit: number;
  /** Its time over that of the first. */
  readonly factor: number;
  /** By place, in the order of the plan. */
  readonly seconds: readonly number[];
  readonly taktS: number;
}
