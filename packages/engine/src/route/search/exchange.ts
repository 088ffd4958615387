import type { IndexHeap } from "@pinwright/kernel";
import type { Arc, Lane, Network, Spot } from "./network.ts";
import { dropLane, type Load, moveLoose, oneMoreBranch, potentials, rootAt, useLane } from "./tree.ts";

/** A spot in the middle of a way: two lanes, nothing tied here. */
const isPlain = (spot: Spot): boolean => spot.branches === 2 && spot.held === 0;

interface Way {
  readonly lanes: readonly Lane[];
  /** Its spots between the ends. */
  readonly inner: readonly Spot[];
  readonly a: Spot;
  readonly b: Spot;
}

/** The lanes of the tree from one spot that is not plain to the next, through `lane`. */
function keyPath(lane: Lane): Way {
  const lanes = [lane];
  const inner: Spot[] = [];
  const walk = (start: Spot): Spot => {
    let spot = start;
    let came = lane;
    while (isPlain(spot)) {
      const last = came;
      const onward = spot.arcs.find((arc) => arc.lane.used && arc.lane !== last);
      if (onward === undefined) break;
      inner.push(spot);
      lanes.push(onward.lane);
      came = onward.lane;
      spot = onward.to;
    }
    return spot;
  };
  return { a: walk(lane.a), b: walk(lane.b), lanes, inner };
}

/**
 * Takes each way between two key spots out of the tree and joins the two parts again by the cheapest path, which
 * is priced in full: its lanes, the breakouts where it joins, and the wires that cross, which have to be led to
 * the joint on both sides. The old way wins ties. (Key-path exchange: Verhoeven, Severens, Aarts 1996, there for
 * the plain Steiner problem.)
 * @returns whether a way was changed
 */
export function exchangeKeyPaths(net: Network, heap: IndexHeap): boolean {
  const pass = ++net.marks;
  let changed = false;
  for (const lane of net.lanes) {
    if (!lane.used || lane.mark === pass) continue;
    const way = keyPath(lane);
    for (const each of way.lanes) each.mark = pass;
    if (exchangeWay(net, heap, way)) changed = true;
  }
  return changed;
}

function exchangeWay(net: Network, heap: IndexHeap, way: Way): boolean {
  const { sideA, sideB } = net;
  const { loadsA, loadsB } = cut(net, way);
  potentials(net, sideA, loadsA);
  potentials(net, sideB, loadsB);
  const swap = sideA.length > sideB.length;
  const near = swap ? sideB : sideA;
  const far = swap ? sideA : sideB;
  const loads = swap ? loadsB : loadsA;

  const lanePrice = (lane: Lane): number => {
    let price = lane.minutes;
    for (const load of loads) price += load.wires * (lane.unit[load.kind] ?? 0);
    return price;
  };
  let best = way.a.price + way.b.price + oneMoreBranch(net, way.a) + oneMoreBranch(net, way.b);
  for (const lane of way.lanes) best += lanePrice(lane);

  const farMark = ++net.marks;
  const done = ++net.marks;
  const mark = ++net.marks;
  let least = Number.POSITIVE_INFINITY;
  for (const spot of far) {
    spot.mark = farMark;
    if (spot.price < least) least = spot.price;
  }
  heap.clear();
  for (const spot of near) {
    spot.mark = mark;
    spot.via = null;
    spot.label = spot.price + oneMoreBranch(net, spot);
    if (spot.label + least < best) heap.set(spot.index, spot.label);
  }
  let bestArc: Arc | null = null;
  while (heap.leastKey() + least < best - 1e-9) {
    const label = heap.leastKey();
    const spot = net.spots[heap.pop()];
    if (spot === undefined) break;
    spot.mark = done;
    for (const arc of spot.arcs) {
      net.steps++;
      const { lane, to } = arc;
      if (to.mark === done || (to.on && to.mark !== farMark)) continue;
      const reached = label + lanePrice(lane);
      if (to.mark === farMark) {
        const price = reached + to.price + oneMoreBranch(net, to);
        if (price < best - 1e-9) {
          best = price;
          bestArc = arc;
        }
      } else if (to.mark !== mark || reached < to.label) {
        to.mark = mark;
        to.label = reached;
        to.via = arc;
        heap.set(to.index, reached);
      }
    }
  }
  if (bestArc === null) for (const lane of way.lanes) useLane(net, lane);
  for (let arc = bestArc; arc !== null; arc = arc.from.via) useLane(net, arc.lane);
  net.stale = true;
  return bestArc !== null;
}

/** Takes a way out and gives the loads that crossed it, on each side; roots both parts. */
function cut(net: Network, way: Way) {
  const { sideA, sideB } = net;
  for (const lane of way.lanes) dropLane(lane);
  for (const spot of way.inner) {
    spot.on = false;
    for (const terminal of spot.loose) moveLoose(terminal, way.a);
    spot.loose.clear();
  }
  rootAt(net, way.a, sideA);
  rootAt(net, way.b, sideB);
  const onA = ++net.marks;
  for (const spot of sideA) spot.mark = onA;
  const loadsA: Load[] = [];
  const loadsB: Load[] = [];
  for (const { a, b, kind, wires } of net.groups) {
    if (a.at === null || b.at === null) continue;
    const aOnA = a.at.spot.mark === onA;
    if (aOnA === (b.at.spot.mark === onA)) continue;
    loadsA.push({ spot: aOnA ? a.at.spot : b.at.spot, kind, wires });
    loadsB.push({ spot: aOnA ? b.at.spot : a.at.spot, kind, wires });
  }
  return { loadsA, loadsB };
}
