import type { IndexHeap } from "@pinwright/kernel";
import { insert } from "./insert.ts";
import type { Network, Terminal } from "./network.ts";
import { clearTree, settleLoose } from "./tree.ts";

/**
 * Builds a tree by tying one terminal after another in the cheapest way (after Takahashi and Matsuyama 1980,
 * there for the plain Steiner problem).
 * @returns false when some terminal can't be reached from the first
 */
export function construct(net: Network, heap: IndexHeap, order: readonly Terminal[]): boolean {
  clearTree(net);
  for (const terminal of order) if (!terminal.loose && !insert(net, heap, terminal, null)) return false;
  settleLoose(net);
  return true;
}

/** Terminals in the order in which a search over the lanes from `start` comes to their first candidate. */
export function outwardFrom(net: Network, heap: IndexHeap, start: Terminal): Terminal[] {
  const at = new Map<number, Terminal[]>();
  for (const terminal of net.terminals)
    if (terminal !== start && !terminal.loose)
      for (const { spot } of terminal.options) at.set(spot.index, [...(at.get(spot.index) ?? []), terminal]);
  const order = [start];
  const taken = new Set(order);
  const done = ++net.marks;
  const mark = ++net.marks;
  heap.clear();
  for (const { spot, price } of start.options) {
    spot.mark = mark;
    spot.label = price;
    heap.set(spot.index, price);
  }
  while (heap.size > 0) {
    const label = heap.leastKey();
    const spot = net.spots[heap.pop()];
    if (spot === undefined) break;
    spot.mark = done;
    for (const terminal of at.get(spot.index) ?? [])
      if (!taken.has(terminal)) {
        taken.add(terminal);
        order.push(terminal);
      }
    for (const { lane, to } of spot.arcs) {
      net.steps++;
      const reached = label + lane.minutes + (lane.unit[0] ?? 0);
      if (to.mark === done || (to.mark === mark && reached >= to.label)) continue;
      to.mark = mark;
      to.label = reached;
      heap.set(to.index, reached);
    }
  }
  for (const terminal of net.terminals) if (!taken.has(terminal) && !terminal.loose) order.push(terminal);
  return order;
}
