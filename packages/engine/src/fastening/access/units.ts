import type { FastenerItem, Machine } from "../../model/index.ts";

/** Whether a fastener carries what it holds, and so is there before it. */
export const carries = ({ type }: FastenerItem): boolean => type.kind === "standoff" || type.kind === "post";

/**
 * What a fastener holds, as that is put in: a child's mechanism for the child, and for another fastener what that goes
 * with. Null: nothing that the machine has.
 */
export function heldBy(machine: Machine, fastener: FastenerItem): string | null {
  const seen = new Set([fastener.id]);
  let { holds } = fastener;
  for (;;) {
    const held = holds === null ? undefined : machine.items.get(holds);
    if (held === undefined) return null;
    if (held.parentId !== null) return held.parentId;
    const further = held.kind === "fastener" && !carries(held) ? held.holds : null;
    if (further === null || seen.has(held.id) || !machine.items.has(further)) return held.id;
    seen.add(held.id);
    holds = further;
  }
}

/**
 * What an item is put in with: a child with its mechanism, a fastener with what it holds unless it carries that, and
 * anything else by itself. An item that the machine does not have stands for itself.
 */
export function unitOf(machine: Machine, itemId: string): string {
  const item = machine.items.get(itemId);
  if (item === undefined) return itemId;
  if (item.parentId !== null) return item.parentId;
  if (item.kind !== "fastener" || carries(item)) return item.id;
  return heldBy(machine, item) ?? item.id;
}
