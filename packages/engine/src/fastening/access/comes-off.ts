import { compareText } from "@pinwright/kernel";

/** By item: what stands in the way of taking it off, in code-point order. */
export type Holding = (unitId: string) => readonly string[];

/**
 * Everything that comes off before some items can, and they themselves, in an order that works: each after what
 * stands in its way. What waits for itself is taken where it is met first.
 * @param unitIds what is to come off
 * @param stays what does not: the item that a fastener holds comes off after it
 */
export function comesOff(
  unitIds: readonly string[],
  holding: Holding,
  stays: string | null,
): readonly string[] {
  const seen = new Set(stays === null ? [] : [stays]);
  const order: string[] = [];
  const visit = (unitId: string): void => {
    if (seen.has(unitId)) return;
    seen.add(unitId);
    for (const other of holding(unitId)) visit(other);
    order.push(unitId);
  };
  for (const unitId of unitIds) visit(unitId);
  return order;
}

/** Two lists in code-point order as one, each member once. */
export function merged(a: readonly string[], b: readonly string[]): readonly string[] {
  if (b.length === 0) return a;
  if (a.length === 0) return b;
  return [...new Set([...a, ...b])].sort(compareText);
}
