import type { Languages, Side, StepKind } from "../../model/index.ts";

/** A step as far as it is known before its order, its motions and its number: what it is about, in ids alone. */
export interface Draft {
  readonly id: string;
  readonly kind: StepKind;
  readonly labels: Languages;
  readonly panelId: string | null;
  readonly side: Side;
  /** Items put in as a whole, in code-point order. */
  readonly itemIds: readonly string[];
  /** In code-point order. */
  readonly fastenerIds: readonly string[];
  readonly recheckIds: readonly string[];
  readonly harnessId: string | null;
  readonly mechanismTypeId: string | null;
  readonly times: number;
  readonly skill: string;
  readonly cautions: readonly Languages[];
  readonly stationId: string | null;
  /** Time that somebody has set; null: found from the motions. */
  readonly setSeconds: number | null;
  /** Among steps that are as good as each other the lower goes first. */
  readonly rank: number;
}

/** Where steps stand when nothing else decides: the designer's own between what is screwed down and what is wired. */
const RANKS: Readonly<Record<StepKind, number>> = {
  bench: 0,
  fixings: 1,
  devices: 2,
  mount: 3,
  boards: 4,
  own: 5,
  harness: 6,
  join: 7,
  recheck: 8,
};

/** A draft of a kind with nothing in it. */
export const emptyDraft = (kind: StepKind, id: string, labels: Languages): Draft => ({
  id,
  kind,
  labels,
  panelId: null,
  side: "top",
  itemIds: [],
  fastenerIds: [],
  recheckIds: [],
  harnessId: null,
  mechanismTypeId: null,
  times: 1,
  skill: "",
  cautions: [],
  stationId: null,
  setSeconds: null,
  rank: RANKS[kind],
});
