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

/** What a run needs of one part. */
export interface PartNeed extends NeedReasons {
  readonly runId: string;
  readonly partId: string;
  readonly gross: Decimal;
  readonly fromStock: Decimal;
  /** On orders that were placed and come in time. */
  readonly fromOrders: Decimal;
  readonly net: Decimal;
  /** Day by which it must be there. */
  readonly neededDay: DayNumber;
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
  readonly revision: string;
  readonly quantity: Decimal;
  readonly pack: Decimal;
  readonly packs: number;
  /** Of one unit, in the supplier's currency. */
  readonly price: Decimal | null;
  readonly amount: Decimal;
  /** Machines' runs that it is for. */
  readonly runIds: readonly string[];
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
  readonly minutesPerMachine: number;
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
  /** What contributes most, assemblies with their work rolled up apart; in descending order. */
  readonly contributors: readonly {
    readonly id: string;
    readonly labels: Languages;
    readonly each: Decimal;
  }[];
}

/** Lots of one part over all runs, with what no other lots can beat. */
export interface PartLots {
  readonly partId: string;
  readonly supplierId: string | null;
  readonly orders: readonly { readonly day: DayNumber; readonly quantity: Decimal }[];
  /** Orders, units and holding. */
  readonly cost: Decimal;
  readonly lowerBound: Decimal;
}

/** Everything that follows from runs, stock and prices. */
export interface RunsPlan {
  readonly currency: string;
  readonly needs: readonly PartNeed[];
  readonly sources: ReadonlyMap<string, PartSource>;
  readonly lots: readonly PartLots[];
  /** By day, then supplier. */
  readonly orders: readonly ProposedOrder[];
  readonly stages: readonly StageBlock[];
  readonly cash: readonly CashWeek[];
  readonly costs: readonly MachineCost[];
  readonly findings: readonly Finding[];
}
