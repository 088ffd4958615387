import type { FastenerItem, Machine } from "../../model/index.ts";

/** Whether a fastener carries what it holds, and so is there before it. */
export const carries = ({ type }: FastenerItem): boolean => type.kind === "standoff" || type.kind === "post";

/** The item that a fastener holds, a child's mechanism for the child; null: none that the machine has. */
export function heldBy(machine: Machine, { holds }: FastenerItem): string | null {
  const held = holds === null ? undefined : machine.items.get(holds);
  return held === undefined ? null : (held.parentId ?? held.id);
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
