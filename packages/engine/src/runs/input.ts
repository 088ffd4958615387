import type { Book, Shop, ShopRow } from "@pinwright/book";
import type { Decimal } from "@pinwright/kernel";
import type { Bill, DayNumber } from "../model/index.ts";

export type StageKind = ShopRow<"stages">["kind"];

/** Minutes of work on one machine by kind of stage; null: nobody says. */
export type StageMinutes = Readonly<Record<StageKind, number | null>>;

/** What one machine with its options is made of and how long it takes: all that a plan of runs needs of it. */
export interface MachineVariant {
  /** In code-point order, one of each kind that the book has. */
  readonly optionIds: readonly string[];
  readonly bill: Bill;
  /** Of the first machine of a run where people learn: `assembly` and `mechanisms`. */
  readonly minutes: StageMinutes;
  /**
   * Minutes for the boards of one machine, tests included, against the number of machines whose boards are made together:
   * by rising number; in the cheaper way of soldering. Empty: those of `minutes`.
   */
  readonly boardMinutes: readonly { readonly machines: number; readonly minutes: number }[];
  /** Square metres of sheet goods that one machine takes, waste included, by part; what is not in it has no waste. */
  readonly sheetUse: ReadonlyMap<string, Decimal>;
}

/** What is planned: the runs of the shop that build this book, with its machines in all their mixes. */
export interface PlanInput {
  readonly book: Book;
  readonly shop: Shop;
  /** Nothing is ordered or worked on before. */
  readonly today: DayNumber;
  /** By `optionsKey`; a run whose mix asks for another one is left out, with a finding. */
  readonly variants: ReadonlyMap<string, MachineVariant>;
}

/** Machines of one run with one set of options. */
export interface RunMix {
  readonly runId: string;
  /** `optionsKey` of the options. */
  readonly key: string;
  readonly optionIds: readonly string[];
  readonly machines: number;
}
