import type { Languages } from "./machine.ts";

/** One type of board, and where it is used. */
export interface BoardRegisterRow {
  readonly typeId: string;
  readonly labels: Languages;
  readonly revision: string;
  readonly purpose: string;
  readonly barePartId: string | null;
  readonly stuffedPartId: string | null;
  /** Boards of this type in one machine, in code-point order. */
  readonly boardIds: readonly string[];
  readonly placements: number;
  readonly joints: number;
}

/** One stage of stuffing: parts that go in one after the other before the board is turned or soldered. */
export interface StuffingStage {
  readonly number: number;
  /** Where it is done, when the work is split over benches. */
  readonly bench: number;
  readonly when: "before-bath" | "after-wash";
  /** References in the order in which they go in. */
  readonly references: readonly string[];
  readonly seconds: number;
}

/** In which order the parts of a board type go in. */
export interface StuffingPlan {
  readonly typeId: string;
  readonly order: readonly string[];
  readonly stages: readonly StuffingStage[];
  readonly benches: number;
  /** Of the busiest bench, against what no split can beat. */
  readonly busiestSeconds: number;
  readonly busiestBound: number;
}

export interface BoardsResult {
  /** In code-point order of type. */
  readonly register: readonly BoardRegisterRow[];
}

/** So many of each kind of board are soldered together in one session. */
export interface SolderSession {
  readonly boards: readonly { readonly typeId: string; readonly count: number }[];
}

/** Minutes of one session in one way, by what they go into. */
export interface SolderMinutes {
  readonly setup: number;
  readonly stuff: number;
  readonly solder: number;
  readonly mask: number;
  readonly wash: number;
  readonly mend: number;
  readonly afterWash: number;
  readonly total: number;
}

/** By hand, or in the bath. */
export interface SolderChoice {
  readonly hand: SolderMinutes;
  readonly bath: SolderMinutes;
  readonly better: "hand" | "bath";
  /** Machines' worth of boards from which the bath takes fewer minutes; null: at no quantity up to 10 000. */
  readonly crossing: number | null;
}
