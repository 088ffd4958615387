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
}

/** Steps shared out to people along the line. */
export interface StationPlan {
  readonly question: StationQuestion;
  /** In the order of the line, empty ones included. */
  readonly loads: readonly StationLoad[];
  /** The longest load. */
  readonly taktS: number;
  /** No plan has a shorter one (least takt), or fewer places (fewest places). */
  readonly lowerBound: number;
  readonly isProven: boolean;
  /** Steps that no place can do, and what they lack. */
  readonly unplaced: readonly { readonly stepId: string; readonly skill: string }[];
}
