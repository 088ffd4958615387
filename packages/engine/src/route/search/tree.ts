import type { Arc, Lane, Network, Option, Spot, Terminal } from "./network.ts";
import { apartPenaltyMin, breakoutsAt, overfullPenaltyMin } from "./problem.ts";

/** Wires that end at a spot of the tree. */
export interface Load {
  readonly spot: Spot;
  readonly kind: number;
  readonly wires: number;
}

/** Puts a lane into the tree. */
export function useLane(net: Network, lane: Lane): void {
  lane.used = true;
  enter(net, lane.a);
  enter(net, lane.b);
  lane.a.branches++;
  lane.b.branches++;
}

function enter(net: Network, spot: Spot): void {
  if (spot.on) return;
  spot.on = true;
  net.touched.add(spot);
}

/** Takes a lane out of the tree; its spots stay. */
export function dropLane(lane: Lane): void {
  lane.used = false;
  lane.a.branches--;
  lane.b.branches--;
}

/** Ties a terminal to a spot of the tree. */
export function tie(net: Network, terminal: Terminal, option: Option): void {
  const { spot } = option;
  terminal.at = option;
  enter(net, spot);
  if (terminal.loose) spot.loose.add(terminal);
  else spot.held++;
  if (terminal.tail) spot.branches++;
}

/** Takes a terminal off the tree, and with it every lane that then leads nowhere. */
export function detach(net: Network, terminal: Terminal): void {
  const option = terminal.at;
  if (option === null) return;
  const { spot } = option;
  terminal.at = null;
  if (terminal.loose) spot.loose.delete(terminal);
  else spot.held--;
  if (terminal.tail) spot.branches--;
  prune(net, spot);
}

/** Drops the lane of a spot that holds nothing and ends the tree, and so on along the tree. */
function prune(net: Network, from: Spot): void {
  let spot = from;
  while (spot.on && spot.held === 0 && spot.branches <= 1) {
    spot.on = false;
    net.stale = true;
    const arc: Arc | undefined = spot.arcs.find((a) => a.lane.used);
    for (const terminal of spot.loose) moveLoose(terminal, arc === undefined ? null : arc.to);
    spot.loose.clear();
    if (arc === undefined) return;
    dropLane(arc.lane);
    spot = arc.to;
  }
}

/** Lets a splice lie at another spot; null: nowhere yet. */
export function moveLoose(terminal: Terminal, to: Spot | null): void {
  const option = to === null ? undefined : terminal.options.find((o) => o.spot === to);
  terminal.at = option ?? null;
  if (to !== null && option !== undefined) to.loose.add(terminal);
}

/** Empties the tree. */
export function clearTree(net: Network): void {
  for (const spot of net.touched) {
    for (const { lane } of spot.arcs) lane.used = false;
    spot.on = false;
    spot.branches = 0;
    spot.held = 0;
    spot.loose.clear();
  }
  net.touched.clear();
  for (const terminal of net.terminals) terminal.at = null;
  net.order.length = 0;
  net.stale = false;
}

/** Lists the spots that used lanes join to `start`, parents first, with their depth and the price of the way up. */
export function rootAt(net: Network, start: Spot, order: Spot[]): void {
  order.length = 0;
  start.parent = null;
  start.parentLane = null;
  start.depth = 0;
  for (let k = 0; k < net.kinds; k++) start.up[k] = 0;
  order.push(start);
  for (const spot of order)
    for (const { lane, to } of spot.arcs)
      if (lane.used && lane !== spot.parentLane) adopt(net, spot, lane, to, order);
}

/** Makes a spot the child of another. */
export function adopt(net: Network, parent: Spot, lane: Lane, child: Spot, order: Spot[]): void {
  child.parent = parent;
  child.parentLane = lane;
  child.depth = parent.depth + 1;
  for (let k = 0; k < net.kinds; k++) child.up[k] = (parent.up[k] ?? 0) + (lane.unit[k] ?? 0);
  order.push(child);
  net.steps++;
}

/** Makes `order` right again after spots have left the tree. */
export function ensureRooted(net: Network): void {
  if (!net.stale) return;
  net.stale = false;
  const start = net.terminals.find((t) => t.at !== null && !t.loose)?.at?.spot;
  if (start === undefined) net.order.length = 0;
  else rootAt(net, start, net.order);
}

/**
 * For every spot of a rooted tree the price of leading all loads there along the tree, left in `price`.
 * The root's is the sum of the ways up; each child's differs from its parent's by the lane between them, taken by
 * the wires from above and saved by those from below.
 */
export function potentials(net: Network, order: readonly Spot[], loads: readonly Load[]): void {
  const root = order[0];
  for (const spot of order) spot.price = 0;
  if (root === undefined || loads.length === 0) return;
  for (let kind = 0; kind < net.kinds; kind++) {
    let total = 0;
    let atRoot = 0;
    for (const spot of order) spot.weight = 0;
    for (const load of loads) {
      if (load.kind !== kind) continue;
      load.spot.weight += load.wires;
      total += load.wires;
      atRoot += load.wires * (load.spot.up[kind] ?? 0);
    }
    if (total === 0) continue;
    for (let i = order.length - 1; i > 0; i--) {
      const spot = order[i];
      if (spot !== undefined && spot.parent !== null) spot.parent.weight += spot.weight;
    }
    root.label = atRoot;
    root.price += atRoot;
    for (const spot of order) {
      const { parent, parentLane } = spot;
      if (parent === null || parentLane === null) continue;
      spot.label = parent.label + (total - 2 * spot.weight) * (parentLane.unit[kind] ?? 0);
      spot.price += spot.label;
    }
    net.steps += 2 * order.length;
  }
}

/** Loads of a terminal's wires at the other ends that are already on the tree. */
export function loadsOf(terminal: Terminal): Load[] {
  const loads: Load[] = [];
  for (const { a, b, kind, wires } of terminal.groups) {
    const other = a === terminal ? b : a;
    if (other.at !== null) loads.push({ spot: other.at.spot, kind, wires });
  }
  return loads;
}

/** Price of one more branch at a spot of the tree: a breakout when the spot passes on, or its last one is full. */
export const oneMoreBranch = (net: Network, spot: Spot): number =>
  spot.branches >= 2 && (spot.branches - 2) % net.breakoutBranches === 0 ? spot.breakoutMin : 0;

/** Lays every splice that may move at the spot of the tree where its wires are shortest. */
export function settleLoose(net: Network): void {
  ensureRooted(net);
  for (const terminal of net.loose) {
    potentials(net, net.order, loadsOf(terminal));
    let best: Option | null = null;
    let bestPrice = Number.POSITIVE_INFINITY;
    for (const option of terminal.options) {
      if (!option.spot.on) continue;
      const price = option.price + option.spot.price;
      if (price < bestPrice - 1e-12) {
        best = option;
        bestPrice = price;
      }
    }
    if (best === null || best === terminal.at) continue;
    terminal.at?.spot.loose.delete(terminal);
    terminal.at = best;
    best.spot.loose.add(terminal);
  }
}

/**
 * Price of the tree, minutes: breakouts, lanes, tails, wires, and the penalties of broken rules.
 * Terminals that are not tied yet, and their wires, cost nothing.
 */
export function treePrice(net: Network): number {
  ensureRooted(net);
  let price = 0;
  for (const spot of net.order) {
    price += net.breakoutMin * breakoutsAt(spot.branches, net.breakoutBranches);
    if (spot.parentLane !== null) price += spot.parentLane.minutes;
  }
  for (const terminal of net.terminals) price += terminal.at?.price ?? 0;
  if (net.guarded) return price + guardedWirePrice(net);
  for (const { a, b, kind, wires } of net.groups) {
    if (a.at === null || b.at === null) continue;
    const from = a.at.spot;
    const to = b.at.spot;
    let x = from;
    let y = to;
    while (x !== y) {
      if (x.depth >= y.depth && x.parent !== null) x = x.parent;
      else if (y.parent !== null) y = y.parent;
      else break;
    }
    price += wires * ((from.up[kind] ?? 0) + (to.up[kind] ?? 0) - 2 * (x.up[kind] ?? 0));
  }
  net.steps += net.order.length + 2 * net.groups.length;
  return price;
}

/** Price of the wires with the penalties of lanes that are overfull or shared by classes that must be apart. */
function guardedWirePrice(net: Network): number {
  let price = 0;
  loadLanes(net, (lane, kind, wires) => {
    price += wires * (lane.unit[kind] ?? 0);
  });
  for (const { parentLane } of net.order) {
    if (parentLane === null) continue;
    price += overfullPenaltyMin(parentLane.square, parentLane.maxSquareMm2);
    if (sharesBadly(net, parentLane)) price += apartPenaltyMin(parentLane.lengthMm);
  }
  return price;
}

const sharesBadly = (net: Network, lane: Lane): boolean =>
  net.apart.some(([x, y]) => (lane.classes & x) !== 0 && (lane.classes & y) !== 0);

/** Leaves in each lane of the tree the Σd² and the classes of its wires; calls `visit` for each group and lane. */
function loadLanes(net: Network, visit: (lane: Lane, kind: number, wires: number) => void): void {
  for (const { parentLane } of net.order)
    if (parentLane !== null) {
      parentLane.square = 0;
      parentLane.classes = 0;
    }
  for (const group of net.groups) {
    if (group.a.at === null || group.b.at === null) continue;
    let x = group.a.at.spot;
    let y = group.b.at.spot;
    while (x !== y) {
      const climbX = x.depth >= y.depth;
      const lower = climbX ? x : y;
      const { parent, parentLane } = lower;
      if (parent === null || parentLane === null) break;
      parentLane.square += group.square;
      parentLane.classes |= group.classBit;
      visit(parentLane, group.kind, group.wires);
      if (climbX) x = parent;
      else y = parent;
      net.steps++;
    }
  }
}
