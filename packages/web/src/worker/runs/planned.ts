import type { Book, Shop } from "@pinwright/book";
import { changeRun, dayNumber, type PlanInput, planRuns, type RunsPlan } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { Trouble } from "../trouble.ts";
import { Variants } from "./variants.ts";

/** What is asked differently of one run; what is left out stays. */
interface RunChange {
  readonly runId: string;
  readonly machines?: number;
  /** Day on which the last one leaves, as year-month-day. */
  readonly ship?: string;
  /** All prices, in per cent of what they are. */
  readonly pricesPct?: number;
}

/** A question about the runs: what day it is, and what is tried. */
export interface PlanQuestion {
  /** As year-month-day. */
  readonly today: string;
  readonly change: RunChange | null;
}

/** A plan with what it was made from. */
export interface Planned {
  readonly input: PlanInput;
  readonly plan: RunsPlan;
}

/** Plans that are kept: that of today, and what was tried last. */
const MOST_KEPT = 8;

export const variants = new Variants();
let plansOf: { readonly book: Book; readonly shop: Shop; readonly plans: Map<string, Planned> } | null = null;

/**
 * The plan of all runs of the book. Machines with other options must have been derived before.
 * @throws Trouble when some are not, because the book or the shop changed meanwhile
 */
export function planned(model: Model, { today, change }: PlanQuestion): Planned {
  const { book, shop } = model;
  if (plansOf === null || plansOf.book !== book || plansOf.shop !== shop || plansOf.plans.size > MOST_KEPT)
    plansOf = { book, shop, plans: new Map() };
  const key = JSON.stringify([today, change]);
  const before = plansOf.plans.get(key);
  if (before !== undefined) return before;
  if (variants.missing(model).length > 0)
    throw new Trouble("overtaken", "The machines of the runs are not derived yet.");
  const day = dayNumber(today);
  if (day === null) throw new RangeError(`${today} is no day`);
  const input: PlanInput = {
    book,
    shop: change === null ? shop : changeRun(shop, change),
    today: day,
    variants: variants.of(model),
  };
  const made: Planned = { input, plan: planRuns(input) };
  plansOf.plans.set(key, made);
  return made;
}
