import type { Decimal } from "@pinwright/kernel";
import type { Finding } from "./finding.ts";
import type { Languages } from "./machine.ts";
import type { Total } from "./total.ts";

/** A day as days since 1970-01-01, so that arithmetic on it is plain. */
export type DayNumber = number;

/** Why a part is needed. */
export interface NeedReasons {
  /** In the machines of the run. */
  readonly build: Decimal;
  /** Spoilt or lost while kitting, making and fitting. */
  readonly scrap: Decimal;
  /** For the field, at the run's confidence. */
  readonly spares: Decimal;
}

/** What a run needs of one part at one stage; its spares are a need of their own. */
export interface PartNeed extends NeedReasons {
  readonly runId: string;
  readonly partId: string;
  /** Colour of a wire, which is bought by colour; blank for anything else. */
  readonly colour: string;
  readonly gross: Decimal;
  readonly fromStock: Decimal;
  /** On orders that were placed and come in time. */
  readonly fromOrders: Decimal;
  readonly net: Decimal;
  /** Day by which the first of it must be there. */
  readonly neededDay: DayNumber;
  /** Day by which the first of `net` must be there; null: nothing is lacking. */
  readonly shortDay: DayNumber | null;
  /** Stage that takes it; null: spares, which leave with the run, or the shop has no such stage. */
  readonly stageId: string | null;
}

/** How a part is got at this quantity. */
export interface PartSource {
  readonly partId: string;
  readonly wayId: string | null;
  readonly kind: "make" | "have-made" | "buy";
  readonly supplierId: string | null;
}

/** One line of an order that is proposed. */
export interface ProposedLine {
  readonly partId: string;
  /** Colour of a wire; blank for anything else. */
  readonly colour: string;
  readonly revision: string;
  readonly quantity: Decimal;
  readonly pack: Decimal;
  readonly packs: number;
  /** Of one unit, in the supplier's currency. */
  readonly price: Decimal | null;
  readonly amount: Decimal;
  /** Day on which it is wanted; the order's is the latest. */
  readonly dueDay: DayNumber;
  /** Machines' runs that it is for. */
  readonly runIds: readonly string[];
  /** How much of it each of them uses; what is left over of its packs is in none. */
  readonly shares: readonly RunShare[];
}

export interface ProposedOrder {
  /** Made of supplier and day: stable over runs of the program. */
  readonly id: string;
  readonly supplierId: string;
  readonly currency: string;
  readonly orderDay: DayNumber;
  readonly dueDay: DayNumber;
  readonly lines: readonly ProposedLine[];
  readonly shipping: Decimal;
  /** In the supplier's currency, with carriage. */
  readonly total: Total;
  /** The same in the shop's own. */
  readonly ownTotal: Total;
}

/** Work of a run at one stage. */
export interface StageBlock {
  readonly runId: string;
  readonly stageId: string;
  readonly labels: Languages;
  readonly startDay: DayNumber;
  readonly endDay: DayNumber;
  /** Machines finished at the end of each working day. */
  readonly days: readonly { readonly day: DayNumber; readonly machines: number; readonly minutes: number }[];
  readonly people: number;
  /** Minutes that its people have in a usual working day; other runs may take some of them. 0: it has no people. */
  readonly minutesDay: number;
  /** On average over the run. */
  readonly minutesPerMachine: number;
  /** Whether the stage or the book tells how long it takes. */
  readonly isKnown: boolean;
}

/** Money that goes out. */
export interface CashWeek {
  /** Monday of the week. */
  readonly week: DayNumber;
  readonly material: Decimal;
  readonly tooling: Decimal;
  readonly work: Decimal;
  /** All that went out until the end of this week. */
  readonly total: Decimal;
  /** What of this week is for each run, by run; what is for none in particular is left out. */
  readonly runs: readonly { readonly runId: string; readonly amount: Decimal }[];
}

export type CostKind =
  | "boards"
  | "electronic"
  | "harness"
  | "sheet"
  | "made-parts"
  | "bought-parts"
  | "screws"
  | "work"
  | "tooling"
  | "scrap"
  | "carriage"
  | "overhead";

/** Cost of one machine, broken down. */
export interface MachineCost {
  readonly runId: string;
  readonly machines: number;
  readonly each: Total;
  /** In descending order. */
  readonly kinds: readonly { readonly kind: CostKind; readonly each: Decimal }[];
  /**
   * What contributes, in descending order; all of them add up to the whole: parts, work by `stage:ID`, tools by
   * `tooling:ID`, and `scrap`, `carriage` and `overhead`, which have no names of their own.
   */
  readonly contributors: readonly {
    readonly id: string;
    readonly kind: CostKind;
    readonly labels: Languages;
    readonly each: Decimal;
  }[];
}

/** One lot of a part. */
export interface Lot {
  /** Day on which it is there. */
  readonly day: DayNumber;
  readonly orderDay: DayNumber;
  readonly quantity: Decimal;
  /** Of one unit, in the supplier's currency; null: nobody says. */
  readonly price: Decimal | null;
  /** Runs that it is for. */
  readonly runIds: readonly string[];
  /** How much of it each of them uses; what is left over of its packs is in none. */
  readonly shares: readonly RunShare[];
}

/** So much of something is for one run. */
export interface RunShare {
  readonly runId: string;
  readonly quantity: Decimal;
}

/** Lots of one part over all runs, with what no other lots can beat. */
export interface PartLots {
  readonly partId: string;
  /** Colour of a wire; blank for anything else. */
  readonly colour: string;
  /** Null: made in the shop. */
  readonly supplierId: string | null;
  readonly pack: Decimal;
  readonly orders: readonly Lot[];
  /** Orders, units and holding, in the shop's currency. */
  readonly cost: Decimal;
  readonly lowerBound: Decimal;
}

/** When a run is built. */
export interface RunTiming {
  readonly runId: string;
  readonly labels: Languages;
  readonly machines: number;
  /** Day on which the last machine shall leave; null: no such day. */
  readonly shipDay: DayNumber | null;
  /** First day of work; null: there are no stages to plan with. */
  readonly startDay: DayNumber | null;
  /** Day on which the last machine is ready as planned; the earliest there is when that is after the ship day. */
  readonly readyDay: DayNumber | null;
  readonly isLate: boolean;
  /** What makes it late: a part, or a stage. */
  readonly heldBy: string | null;
}

/** A tool that is ordered for a run. */
export interface ToolPurchase {
  readonly toolingId: string;
  readonly partId: string;
  readonly runId: string;
  /** More than one when the parts outlast its life. */
  readonly count: number;
  readonly orderDay: DayNumber;
  readonly dueDay: DayNumber;
  /** Of all of them, in the shop's currency; null: nobody says. */
  readonly cost: Decimal | null;
}

/** A sample that has to be approved before the lot is ordered. */
export interface FirstArticle {
  readonly partId: string;
  readonly revision: string;
  readonly supplierId: string | null;
  readonly askDay: DayNumber;
  readonly dueDay: DayNumber;
}

/** Everything that follows from runs, stock and prices. */
export interface RunsPlan {
  readonly currency: string;
  /** By ship day. */
  readonly runs: readonly RunTiming[];
  readonly needs: readonly PartNeed[];
  readonly sources: ReadonlyMap<string, PartSource>;
  readonly lots: readonly PartLots[];
  /** By day, then supplier. */
  readonly orders: readonly ProposedOrder[];
  readonly tools: readonly ToolPurchase[];
  readonly articles: readonly FirstArticle[];
  readonly stages: readonly StageBlock[];
  readonly cash: readonly CashWeek[];
  readonly costs: readonly MachineCost[];
  readonly findings: readonly Finding[];
}
