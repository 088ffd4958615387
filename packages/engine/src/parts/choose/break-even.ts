import { type Decimal, divideDecimal } from "@pinwright/kernel";

/**
 * Quantity at which two ways cost the same: (fixed b − fixed a) ÷ (each a − each b). Above it, the way with the smaller
 * cost of one is cheaper. Null when they never meet at a quantity above zero. Make-or-buy break-even as in textbooks of
 * operations management: set-up ÷ (buy − make).
 */
export function breakEven(fixedA: Decimal, eachA: Decimal, fixedB: Decimal, eachB: Decimal): Decimal | null {
  if (eachA === eachB) return null;
  const quantity = divideDecimal(fixedB - fixedA, eachA - eachB);
  return quantity > 0n ? quantity : null;
}
