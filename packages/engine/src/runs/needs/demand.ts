import type { BookRow, ShopRow } from "@pinwright/book";
import type { Decimal } from "@pinwright/kernel";
import type { BillNode, DayNumber, PartNeed, PartSource } from "../../model/index.ts";

/** A run as its needs are found. */
export interface NeedingRun {
  readonly row: ShopRow<"runs">;
  /** Machines of each variant of the tree. */
  readonly counts: readonly number[];
  readonly shipDay: DayNumber;
  /** By place of the stage: when the parts of so many machines are needed. */
  readonly kits: readonly (readonly KitDay[])[];
}

/** Parts of the machines up to one are there by a day. */
interface KitDay {
  readonly day: DayNumber;
  readonly to: number;
}

/** So much that has to be got by a day. */
export interface Demand {
  readonly day: DayNumber;
  readonly quantity: Decimal;
  readonly runId: string;
  /** Place of the stage that takes it; −1: none. */
  readonly stage: number;
}

/** What has to be got of one thing, in the order of the days. */
export interface NetDemand {
  readonly key: string;
  readonly node: BillNode;
  readonly partId: string;
  readonly colour: string;
  readonly part: BookRow<"parts"> | undefined;
  readonly source: PartSource | null;
  readonly demands: readonly Demand[];
}

/** How much of something is used in a run, for what it costs. */
export interface Use {
  readonly key: string;
  readonly partId: string;
  readonly source: PartSource | null;
  /** It is made here from what it contains, which is counted by itself. */
  readonly isMade: boolean;
  readonly runId: string;
  readonly stage: number;
  readonly build: Decimal;
  readonly scrap: Decimal;
}

export interface Needs {
  readonly needs: readonly PartNeed[];
  /** What is bought, had made, or made without contents. */
  readonly net: readonly NetDemand[];
  /** What is made here with its contents: how many of it, for the work and outside cost of its way. */
  readonly made: readonly NetDemand[];
  readonly uses: readonly Use[];
  /** Something that is made here was there already, so that `uses` lacks what is in it. */
  readonly tookMade: boolean;
}
