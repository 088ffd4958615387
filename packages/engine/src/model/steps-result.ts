import type { Languages, Side } from "./machine.ts";

/** Why one thing is done before another. */
export type OrderReason =
  /** The later one covers a fastener of the earlier one, or the way of the tool to it. */
  | "hides"
  /** The later one covers the nut of the earlier one, or the way of the spanner to it. */
  | "hides-nut"
  /** The later one lies over the earlier one, or over where it goes. */
  | "covers"
  /** The earlier one is wired before the later one closes over it. */
  | "wired"
  /** A wire cannot be laid or plugged before what it ends on is in place. */
  | "stands"
  /** A mechanism is built and cycled before it is mounted. */
  | "built"
  /** The designer says so. */
  | "rule";

/** One item or harness is done before another. */
export interface Precedence {
  /** Item or harness. */
  readonly beforeId: string;
  readonly afterId: string;
  readonly why: OrderReason;
  /** What shows it: a fastener, a landing, a rule. */
  readonly at: string;
}

/** One step is done before another. */
export interface StepEdge {
  readonly beforeId: string;
  readonly afterId: string;
  readonly why: OrderReason;
  readonly at: string;
}

export type MotionKind =
  | "pick"
  | "place"
  | "washer"
  | "threadlock"
  | "start"
  | "align"
  | "tighten"
  | "nut"
  | "recheck"
  | "plug"
  | "solder"
  | "lay"
  | "tie"
  /** A mechanism is put together on its bench. */
  | "build"
  | "gauge"
  /** A mechanism is worked many times on its bench. */
  | "cycle"
  | "retighten"
  | "bit-change"
  | "box-change"
  | "walk"
  /** The panel is turned over before the step. */
  | "turn-over";

/** What the hands do in a step, so often, in all so many seconds, without the allowance for rest. */
export interface Motion {
  readonly kind: MotionKind;
  /** A walk is counted in millimetres, laying in millimetres of wire. */
  readonly count: number;
  readonly seconds: number;
  /** Somebody has set its time: there is no allowance for rest on it. */
  readonly set: boolean;
}

/** What a step is about. */
export type StepKind =
  /** A mechanism is built, adjusted and cycled on its own bench. */
  | "bench"
  | "mount"
  | "devices"
  | "boards"
  | "fixings"
  /** A harness is laid, tied and connected. */
  | "harness"
  /** Halves of in-line connectors are joined. */
  | "join"
  /** Fasteners of a panel side are checked again after burn-in. */
  | "recheck"
  /** The designer's own. */
  | "own";

/** One step of work, as its card shows it. */
export interface WorkStep {
  readonly id: string;
  /** In the order of assembly, from 1. */
  readonly number: number;
  readonly kind: StepKind;
  readonly labels: Languages;
  /** Panel that lies before the builder, and the side that is up; null: none. */
  readonly panelId: string | null;
  readonly side: Side;
  readonly itemIds: readonly string[];
  /** In the order in which they are driven. */
  readonly fastenerIds: readonly string[];
  /** Fasteners that are checked again here; they are driven in an earlier step. In the order of the walk. */
  readonly recheckIds: readonly string[];
  readonly harnessId: string | null;
  readonly mechanismTypeId: string | null;
  /** How often it is done for one machine: a mechanism type may be in it several times. */
  readonly times: number;
  /** Steps that are done before, without those that follow from others. */
  readonly afterIds: readonly string[];
  readonly motions: readonly Motion[];
  /** For one machine, with the allowance for rest; `designer` when somebody has set it. */
  readonly seconds: number;
  readonly secondsFrom: "motions" | "designer";
  /** Skill that it needs; blank: none in particular. */
  readonly skill: string;
  /** Tools of the shop that drive its fasteners, in the order of use; the drive itself where the shop has none. */
  readonly tools: readonly string[];
  readonly cautions: readonly Languages[];
  /** Station that somebody has fixed it to. */
  readonly stationId: string | null;
}

/** The order of assembly. */
export interface StepsResult {
  /** In the order of assembly. */
  readonly steps: readonly WorkStep[];
  readonly edges: readonly StepEdge[];
  /** How often a panel is turned over, against the fewest that the order allows. */
  readonly turnOvers: number;
  readonly fewestTurnOvers: number;
  readonly boxChanges: number;
  readonly bitChanges: number;
}
