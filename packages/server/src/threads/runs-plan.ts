import type { Book, Shop } from "@pinwright/book";
import {
  dayNumber,
  Line,
  type MachineVariant,
  planRuns,
  type RunsPlan,
  runMixes,
  variantOf,
} from "@pinwright/engine";
import { Refusal } from "./refusal.ts";

/** The plan of a book's runs as of a day: each set of options that is built goes through the line. */
export function runsPlan(book: Book, shop: Shop, today: string): RunsPlan {
  const day = dayNumber(today);
  if (day === null) throw new Refusal(`"${today}" is no day: expected year-month-day.`);
  const line = new Line();
  const variants = new Map<string, MachineVariant>();
  for (const { key, optionIds } of runMixes(book, shop))
    if (!variants.has(key)) variants.set(key, variantOf(line.run(book, shop, new Set(optionIds))));
  return planRuns({ book, shop, today: day, variants });
}
