import type { IndexHeap } from "@pinwright/kernel";
import { exchangeKeyPaths } from "./exchange.ts";
import { insert } from "./insert.ts";
import type { Network, Spot, Terminal } from "./network.ts";
import { breakoutsAt } from "./problem.ts";
import { restore, type Snapshot, takeSnapshot } from "./snapshot.ts";
import { detach, settleLoose, treePrice } from "./tree.ts";

/** A difference in price that counts, minutes. */
export const NOTICEABLE = 1e-7;

/** Takes each of the terminals off the tree and ties it again in the cheapest way. */
export function reinsertAll(net: Network, heap: IndexHeap, terminals: readonly Terminal[]): void {
  for (const terminal of terminals) {
    if (terminal.loose) continue;
    detach(net, terminal);
    insert(net, heap, terminal, null);
  }
  settleLoose(net);
}

/**
 * Betters the tree by moving one terminal or one way at a time, until nothing changes.
 * @returns the price; the tree is left at it
 */
export function descend(net: Network, heap: IndexHeap): number {
  let price = treePrice(net);
  for (;;) {
    const before = net.guarded ? takeSnapshot(net, price) : null;
    reinsertAll(net, heap, net.terminals);
    exchangeKeyPaths(net, heap);
    settleLoose(net);
    const next = treePrice(net);
    if (next < price - NOTICEABLE) {
      price = next;
      continue;
    }
    if (before === null || next <= price) return next;
    restore(net, before);
    return before.price;
  }
}

/**
 * Takes all tails away from a spot, so that it is no breakout any more. Kept when the tree got cheaper.
 * @returns the price of the tree that is left
 */
export function evacuate(net: Network, heap: IndexHeap, spot: Spot, from: Snapshot): number {
  const tails = net.landings.filter((t) => t.at !== null && t.at.spot === spot);
  for (const terminal of tails) detach(net, terminal);
  for (const terminal of tails)
    if (!insert(net, heap, terminal, spot)) {
      restore(net, from);
      return from.price;
    }
  return keepIfBetter(net, from);
}

/**
 * Leads the tree to a spot and gathers there the tails that may lead to it; one breakout may then do for several.
 * Kept when the tree got cheaper.
 * @returns the price of the tree that is left
 */
export function gather(net: Network, heap: IndexHeap, spot: Spot, from: Snapshot): number {
  const tails = net.landings.filter((t) => t.options.some((o) => o.spot === spot));
  visitAndGather(net, heap, spot, tails);
  return keepIfBetter(net, from);
}

/**
 * Leads the tree to a spot, moves tails over until one breakout more is full, the others only where they are cheaper,
 * and lets the tree leave the spot again if none stays.
 */
export function visitAndGather(net: Network, heap: IndexHeap, spot: Spot, tails: readonly Terminal[]): void {
  const visitor: Terminal = {
    index: net.terminals.length,
    tail: false,
    loose: false,
    options: [{ index: 0, spot, price: 0 }],
    groups: [],
    at: null,
    mark: 0,
  };
  if (!insert(net, heap, visitor, null)) return;
  const full = 2 + net.breakoutBranches * (breakoutsAt(spot.branches, net.breakoutBranches) + 1);
  for (const terminal of tails) {
    spot.breakoutMin = spot.branches < full ? 0 : net.breakoutMin;
    detach(net, terminal);
    insert(net, heap, terminal, null);
  }
  spot.breakoutMin = net.breakoutMin;
  settleLoose(net);
  detach(net, visitor);
}

function keepIfBetter(net: Network, from: Snapshot): number {
  settleLoose(net);
  const price = treePrice(net);
  if (price < from.price - NOTICEABLE) return price;
  restore(net, from);
  return from.price;
}
