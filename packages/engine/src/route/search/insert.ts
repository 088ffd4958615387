import type { IndexHeap } from "@pinwright/kernel";
import type { Arc, Network, Option, Spot, Terminal } from "./network.ts";
import { adopt, ensureRooted, loadsOf, oneMoreBranch, potentials, tie, useLane } from "./tree.ts";

/**
 * Ties a terminal to the tree in the cheapest way: straight to a spot of the tree, or to another spot and from
 * there by the cheapest path. Price: tail, lanes, breakouts, and the wires to the terminals that are tied already.
 * The path is found from the terminal's side (Dijkstra 1959), so that only its surroundings are looked at.
 * @param barred a spot that the terminal may not be tied to, or null
 * @returns false when no path leads there
 */
export function insert(net: Network, heap: IndexHeap, terminal: Terminal, barred: Spot | null): boolean {
  ensureRooted(net);
  const root = net.order[0];
  if (root === undefined) return insertFirst(net, terminal, barred);
  const loads = loadsOf(terminal);
  potentials(net, net.order, loads);
  let least = Number.POSITIVE_INFINITY;
  for (const spot of net.order) if (spot.price < least) least = spot.price;

  const mark = ++net.marks;
  heap.clear();
  let best = Number.POSITIVE_INFINITY;
  let bestOption: Option | null = null;
  let bestArc: Arc | null = null;
  for (const option of terminal.options) {
    if (option.price + least >= best) break;
    const { spot } = option;
    if (!spot.on || spot === barred) continue;
    const price = option.price + spot.price + (terminal.tail ? oneMoreBranch(net, spot) : 0);
    if (price < best - 1e-12) {
      best = price;
      bestOption = option;
    }
  }
  for (const option of terminal.options) {
    if (option.price + least >= best) break;
    const { spot } = option;
    if (spot.on || spot === barred || (spot.mark === mark && option.price >= spot.label)) continue;
    spot.mark = mark;
    spot.label = option.price;
    spot.via = null;
    heap.set(spot.index, option.price);
  }
  const done = ++net.marks;
  while (heap.leastKey() + least < best - 1e-12) {
    const label = heap.leastKey();
    const spot = net.spots[heap.pop()];
    if (spot === undefined) break;
    spot.mark = done;
    for (const arc of spot.arcs) {
      net.steps++;
      const { lane, to } = arc;
      if (to.mark === done) continue;
      let reached = label + lane.minutes;
      for (const load of loads) reached += load.wires * (lane.unit[load.kind] ?? 0);
      if (to.on) {
        const price = reached + to.price + oneMoreBranch(net, to);
        if (price < best - 1e-12) {
          best = price;
          bestArc = arc;
          bestOption = null;
        }
      } else if (to.mark !== mark || reached < to.label) {
        to.mark = mark;
        to.label = reached;
        to.via = arc;
        heap.set(to.index, reached);
      }
    }
  }
  if (bestArc !== null) return layPath(net, terminal, bestArc);
  if (bestOption === null) return false;
  tie(net, terminal, bestOption);
  return true;
}

/** Lays the path that ends with `last` at the tree, and ties the terminal to its far end. */
function layPath(net: Network, terminal: Terminal, last: Arc): boolean {
  let arc: Arc | null = last;
  let spot = last.from;
  while (arc !== null) {
    spot = arc.from;
    useLane(net, arc.lane);
    adopt(net, arc.to, arc.lane, spot, net.order);
    arc = spot.via;
  }
  let best: Option | null = null;
  for (const option of terminal.options)
    if (option.spot === spot && (best === null || option.price < best.price)) best = option;
  if (best === null) return false;
  tie(net, terminal, best);
  return true;
}

/** The first terminal of a tree goes to its cheapest spot. */
function insertFirst(net: Network, terminal: Terminal, barred: Spot | null): boolean {
  let best: Option | null = null;
  for (const option of terminal.options)
    if (option.spot !== barred && (best === null || option.price < best.price)) best = option;
  if (best === null) return false;
  tie(net, terminal, best);
  net.stale = true;
  return true;
}
