import type { BookRow, ShopNumbers } from "@pinwright/book";
import {
  ceilToDecimal,
  type Decimal,
  decimal,
  divideDecimal,
  roundDecimal,
  timesDecimal,
} from "@pinwright/kernel";
import type { BillNode } from "../../model/index.ts";

const ONE = decimal(1);
const HUNDRED = decimal(100);
/** Lengths and areas are asked for in thousandths. */
const STEP = decimal("0.001");
/** What two roundings of a billionth leave is not one more. */
const DUST = decimal("0.000001");

/** The least quantity that can be got of something and is not below a value: whole pieces, thousandths of a metre. */
export const wholeUp = (value: Decimal, unit: BillNode["unit"]): Decimal =>
  value <= DUST ? 0n : ceilToDecimal(value - DUST, unit === "each" ? ONE : STEP);

/**
 * What is spoilt so that so much is good: n · p ÷ (100 − p). Whole pieces are rounded up by a part's own share; by the
 * shop's share of everything to the nearest, since a single thing of which few are spoilt is ordered again.
 */
export function scrapOf(
  part: BookRow<"parts"> | undefined,
  unit: BillNode["unit"],
  good: Decimal,
  { scrap_pct }: ShopNumbers,
): Decimal {
  const own = part?.scrap_pct ?? null;
  const pct = decimal(own ?? scrap_pct);
  if (pct <= 0n || pct >= HUNDRED) return 0n;
  const spoilt = divideDecimal(timesDecimal(good, pct), HUNDRED - pct);
  if (unit !== "each" || own !== null) return wholeUp(spoilt, unit);
  return roundDecimal(spoilt, 0);
}

/** Kinds of parts that are lost and spoilt by the share and least number of small parts. */
const SMALL: ReadonlySet<BookRow<"parts">["kind"]> = new Set(["electronic", "contact"]);

/**
 * What is laid out on top of so much of a part for one batch of boards, by the rule of their kits: small parts by the
 * shop's attrition, at least its least number; all others by the share of everything; rounded up.
 */
export function lostInKitting(
  part: BookRow<"parts"> | undefined,
  unit: BillNode["unit"],
  needed: Decimal,
  { part_attrition_pct, part_attrition_each, scrap_pct }: ShopNumbers,
): Decimal {
  const isSmall = part !== undefined && SMALL.has(part.kind);
  const share = part?.scrap_pct ?? (isSmall ? part_attrition_pct : scrap_pct);
  const lost = wholeUp(divideDecimal(timesDecimal(needed, decimal(share)), HUNDRED), unit);
  const least = isSmall && part.scrap_pct === null ? decimal(part_attrition_each) : 0n;
  return lost > least ? lost : least;
}
