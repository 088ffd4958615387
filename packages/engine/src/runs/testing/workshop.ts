import type { ShopNumbers } from "@pinwright/book";
import { textOfDecimal } from "@pinwright/kernel";
import type { DayNumber, RunsPlan } from "../../model/index.ts";
import { PartsSolver } from "../../parts/index.ts";
import { createMachine, createShop, type SomeShopTables, type SomeTables } from "../../testing/book.ts";
import { dayNumber } from "../days.ts";
import type { MachineVariant, PlanInput, StageMinutes } from "../input.ts";
import { optionsKey, runMixes } from "../mixes.ts";

/** A Monday. */
export const TODAY = day("2027-01-04");

/** A day that there is. */
export function day(text: string): DayNumber {
  const found = dayNumber(text);
  if (found === null) throw new RangeError(`${text} is no day`);
  return found;
}

const NO_MINUTES: StageMinutes = {
  panels: 0,
  paint: 0,
  boards: 0,
  mechanisms: 0,
  harness: 0,
  assembly: 0,
  test: 0,
  pack: 0,
  transport: 0,
};

/** A machine made of `bom` alone, and the shop that builds it. */
export interface Workshop {
  readonly book: SomeTables;
  readonly shop: SomeShopTables;
  readonly numbers?: Partial<ShopNumbers>;
  readonly minutes?: Partial<StageMinutes>;
  readonly today?: DayNumber;
}

/** Numbers of a shop in which nothing is spoilt, and an order costs nothing and waits for no other. */
export const PLAIN: Partial<ShopNumbers> = { scrap_pct: 0, order_cost: 0, kit_days: 0, order_merge_days: 0 };

export function createInput({ book, shop, numbers = PLAIN, minutes, today = TODAY }: Workshop): PlanInput {
  const own = { id: "EUR", own: "yes" as const };
  const made = createShop({ currencies: [own], ...shop }, numbers);
  const machine = createMachine(book, made);
  const variants = new Map<string, MachineVariant>();
  for (const { optionIds } of runMixes(machine.book, made)) {
    const options = new Set(optionIds);
    const bill = new PartsSolver().solve({ ...machine, options }, new Map(), new Map()).parts.bill;
    variants.set(optionsKey(optionIds), {
      optionIds,
      bill,
      minutes: { ...NO_MINUTES, ...minutes },
      boardMinutes: [],
      sheetUse: new Map(),
    });
  }
  return { book: machine.book, shop: made, today, variants };
}

/** `part: gross - stock - orders = net` of every need, in order. */
export const needTexts = ({ needs }: RunsPlan): readonly string[] =>
  needs.map(({ runId, partId, gross, fromStock, fromOrders, net }) => {
    const [g, s, o, n] = [gross, fromStock, fromOrders, net].map((q) => textOfDecimal(q));
    return `${runId} ${partId}: ${g} - ${s} - ${o} = ${n}`;
  });
