import { compareText, type Decimal, timesDecimal } from "@pinwright/kernel";
import type { Bill, BillLine, BillNode } from "../../model/index.ts";
import { MACHINE_NODE } from "./nodes.ts";

/** One row of a bill with all its levels: the tree, written down. */
export interface BillRow {
  /** 1 for what is directly in the node that was asked about. */
  readonly level: number;
  readonly line: BillLine;
  readonly node: BillNode;
  /** In one of the node that was asked about, through this branch. */
  readonly quantity: Decimal;
  /** It contains itself: its own contents are not written down again. */
  readonly circle: boolean;
}

/** Something that contains a node, and how much of it through all levels. */
export interface UsedIn {
  readonly node: BillNode;
  /** Lines by which it is directly contained; none where it is only further down. */
  readonly lines: readonly BillLine[];
  /** In one of the container, all levels added up. */
  readonly quantity: Decimal;
}

/** What is directly in a node, in the bill's order. */
export function oneLevel(bill: Bill, nodeId: string): readonly BillLine[] {
  return bill.lines.filter((line) => line.parentId === nodeId);
}

/** Everything in a node through all levels, each assembly followed by its contents. */
export function allLevels(bill: Bill, nodeId: string = MACHINE_NODE): readonly BillRow[] {
  const byParent = new Map<string, BillLine[]>();
  for (const line of bill.lines) {
    const own = byParent.get(line.parentId);
    if (own === undefined) byParent.set(line.parentId, [line]);
    else own.push(line);
  }
  const rows: BillRow[] = [];
  const within = new Set<string>();
  const write = (id: string, level: number, times: Decimal | null): void => {
    within.add(id);
    for (const line of byParent.get(id) ?? []) {
      const node = bill.nodes.get(line.childId);
      if (node === undefined) continue;
      const quantity = times === null ? line.quantity : timesDecimal(times, line.quantity);
      const circle = within.has(node.id);
      rows.push({ level, line, node, quantity, circle });
      if (!circle) write(node.id, level + 1, quantity);
    }
    within.delete(id);
  };
  write(nodeId, 1, null);
  return rows;
}

/** What contains a node, directly or further up, in code-point order; nothing for the machine itself. */
export function whereUsed(bill: Bill, nodeId: string): readonly UsedIn[] {
  const byChild = new Map<string, BillLine[]>();
  for (const line of bill.lines) {
    const own = byChild.get(line.childId);
    if (own === undefined) byChild.set(line.childId, [line]);
    else own.push(line);
  }
  const quantities = new Map<string, Decimal>([[nodeId, 1_000_000_000n]]);
  const direct = byChild.get(nodeId) ?? [];
  // From the leaves up: whatever is further up comes later.
  const from = bill.order.indexOf(nodeId);
  for (const id of from < 0 ? [] : bill.order.slice(from)) {
    const times = quantities.get(id);
    if (times === undefined) continue;
    for (const { parentId, quantity } of byChild.get(id) ?? [])
      quantities.set(parentId, (quantities.get(parentId) ?? 0n) + timesDecimal(times, quantity));
  }
  quantities.delete(nodeId);
  return [...quantities]
    .sort(([a], [b]) => compareText(a, b))
    .flatMap(([id, quantity]) => {
      const node = bill.nodes.get(id);
      const lines = direct.filter((line) => line.parentId === id);
      return node === undefined ? [] : [{ node, lines, quantity }];
    });
}

/** How much of each wire of each colour is in one machine, by node and then colour. */
export function coloursOf(bill: Bill): ReadonlyMap<string, ReadonlyMap<string, Decimal>> {
  const colours = new Map<string, Map<string, Decimal>>();
  for (const { parentId, childId, colour, quantity } of bill.lines) {
    if (colour === "") continue;
    const of = colours.get(childId) ?? new Map<string, Decimal>();
    const more = timesDecimal(bill.totals.get(parentId) ?? 0n, quantity);
    of.set(colour, (of.get(colour) ?? 0n) + more);
    colours.set(childId, of);
  }
  return colours;
}
