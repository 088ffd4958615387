import { IndexHeap } from "@pinwright/kernel";
import { construct, outwardFrom } from "./construct.ts";
import { descend, evacuate, gather, NOTICEABLE, reinsertAll, visitAndGather } from "./descend.ts";
import { isForced } from "./forced.ts";
import { insert } from "./insert.ts";
import { measureRoute, type RouteMeasure } from "./measure.ts";
import { narrowTo, surroundings } from "./narrow.ts";
import { buildNetwork, type Network, type Spot, type Terminal } from "./network.ts";
import type { RouteProblem, RouteSolution } from "./problem.ts";
import { randomStream } from "./random.ts";
import { layIn, restore, type Snapshot, solutionOf, takeSnapshot } from "./snapshot.ts";
import { raiseSurcharges } from "./surcharge.ts";
import { detach } from "./tree.ts";

export interface SearchOptions {
  /** Elementary steps after which the search stops at the next chance. */
  readonly steps: number;
  readonly seed: number;
}

/**
 * Searches for the tree of least total price: several constructions, descent by single moves, gathering and
 * emptying of breakouts, then kicks (part of the tree is torn up and laid again) until the steps are used up.
 * The same problem always gives the same tree.
 * @returns null when no tree joins all landings
 */
export function searchRoute(problem: RouteProblem, options: SearchOptions): RouteSolution | null {
  if (isForced(problem)) return onlyTree(problem);
  if (problem.lanes.length > SMALL_LANES) {
    const found = searchNarrowly(problem, options);
    if (found !== null && found.measure.penaltyMin === 0) return found.solution;
  }
  return searchAll(problem, options);
}

/** The one tree of a problem that leaves no choice. */
function onlyTree(problem: RouteProblem): RouteSolution | null {
  const net = buildNetwork(problem, new Map());
  const heap = new IndexHeap(problem.spots);
  const [root] = startingPoints(net, heap);
  if (root === undefined || !construct(net, heap, outwardFrom(net, heap, root))) return null;
  return solutionOf(net, takeSnapshot(net, 0));
}

/** Lane graphs up to this size are searched as a whole; of larger ones the surroundings of the landings first. */
const SMALL_LANES = 150;

/**
 * Searches the surroundings of the landings, then only the lanes between the spots of the best tree.
 * There the steps that are left go much farther.
 */
function searchNarrowly(problem: RouteProblem, options: SearchOptions): Judged | null {
  const steps = options.steps / PASSES;
  let best: Judged | null = null;
  for (let pass = 0; pass < PASSES; pass++) {
    const narrow = narrowTo(problem, best === null ? surroundings(problem) : spotsOf(problem, best.solution));
    const found = searchAll(narrow.problem, { steps, seed: options.seed + pass });
    if (found === null) break;
    const judged = judge(problem, narrow.widen(found));
    if (best === null || judged.priceMin < best.priceMin - NOTICEABLE) best = judged;
  }
  return best;
}

/** Searches, each narrower than the one before. Found by trial. */
const PASSES = 2;

/** 1 for each spot of a tree. */
function spotsOf(problem: RouteProblem, { lanes, attach }: RouteSolution): Uint8Array {
  const on = new Uint8Array(problem.spots);
  for (const index of lanes) {
    const lane = problem.lanes[index];
    if (lane !== undefined) for (const spot of [lane.a, lane.b]) on[spot] = 1;
  }
  attach.forEach((k, l) => {
    const tail = problem.landings[l]?.candidates[k];
    if (tail !== undefined) on[tail.spot] = 1;
  });
  return on;
}

function searchAll(problem: RouteProblem, options: SearchOptions): RouteSolution | null {
  const surcharges = new Map<number, number>();
  let best: Judged | null = null;
  for (let round = 0; round <= SURCHARGE_ROUNDS; round++) {
    const steps = options.steps / (round === 0 ? 1 : SURCHARGE_ROUNDS);
    const found = searchPriced(problem, surcharges, { ...options, steps });
    if (found === null) return null;
    const judged = judge(problem, found);
    if (best === null || judged.priceMin < best.priceMin - NOTICEABLE) best = judged;
    if (judged.measure.penaltyMin === 0) break;
    raiseSurcharges(problem, judged.measure, surcharges);
  }
  return best?.solution ?? null;
}

/** Rounds in which lanes with broken rules are made dearer; together they take as many steps as the first search. */
const SURCHARGE_ROUNDS = 3;

interface Judged {
  readonly solution: RouteSolution;
  readonly measure: RouteMeasure;
  readonly priceMin: number;
}

function judge(problem: RouteProblem, solution: RouteSolution): Judged {
  const measure = measureRoute(problem, solution);
  return { solution, measure, priceMin: measure.totalMin + measure.penaltyMin };
}

/** One search under the given surcharges; once there are any, it ends with a descent at true prices. */
function searchPriced(
  problem: RouteProblem,
  surcharges: ReadonlyMap<number, number>,
  options: SearchOptions,
): RouteSolution | null {
  const net = buildNetwork(problem, surcharges);
  const heap = new IndexHeap(problem.spots);
  const start = bestConstruction(net, heap);
  if (start === null) return null;
  const best = kicked(net, heap, thorough(net, heap, start, options.steps), options);
  const solution = solutionOf(net, best);
  if (solution === null || surcharges.size === 0) return solution;
  const plain = buildNetwork(problem, new Map());
  layIn(plain, solution);
  return solutionOf(plain, takeSnapshot(plain, descend(plain, heap)));
}

/** Descends from trees that were grown from far-apart landings, and from one led to few spots; keeps the best. */
function bestConstruction(net: Network, heap: IndexHeap): Snapshot | null {
  let best: Snapshot | null = null;
  const consider = (): void => {
    const price = descend(net, heap);
    if (best === null || price < best.price - NOTICEABLE) best = takeSnapshot(net, price);
  };
  const roots = startingPoints(net, heap);
  for (const root of roots) {
    if (!construct(net, heap, outwardFrom(net, heap, root))) return null;
    consider();
  }
  const [main] = roots;
  if (main !== undefined) {
    for (const spot of net.spots) spot.breakoutMin = COVER_DEAR * net.breakoutMin;
    for (const spot of coveringSpots(net)) spot.breakoutMin = 0;
    construct(net, heap, outwardFrom(net, heap, main));
    for (const spot of net.spots) spot.breakoutMin = net.breakoutMin;
    consider();
  }
  return best;
}

/** How much dearer breakouts are elsewhere while a tree is led to the covering spots. Found by trial. */
const COVER_DEAR = 2;

/** Few spots that all tails could lead to: again and again the one that most of the remaining ones may lead to. */
function coveringSpots(net: Network): readonly Spot[] {
  const left = new Set(net.landings);
  const chosen: Spot[] = [];
  while (left.size > 0) {
    const counts = new Map<Spot, number>();
    for (const t of left) for (const { spot } of t.options) counts.set(spot, (counts.get(spot) ?? 0) + 1);
    let best: Spot | null = null;
    for (const [spot, n] of counts) {
      const most = best === null ? 0 : (counts.get(best) ?? 0);
      if (best === null || n > most || (n === most && spot.index < best.index)) best = spot;
    }
    if (best === null) break;
    chosen.push(best);
    for (const t of [...left]) if (t.options.some((o) => o.spot === best)) left.delete(t);
  }
  return chosen;
}

/** The landing with most wires, and the one farthest from it. */
function startingPoints(net: Network, heap: IndexHeap): Terminal[] {
  const wires = (t: Terminal): number => t.groups.reduce((sum, g) => sum + g.wires, 0);
  let main: Terminal | undefined;
  for (const t of net.landings) if (main === undefined || wires(t) > wires(main)) main = t;
  if (main === undefined) return [];
  const last = outwardFrom(net, heap, main).at(-1);
  return last === undefined || last === main ? [main] : [main, last];
}

/** Spots that some tail may lead to. */
const hostsOf = (net: Network): readonly Spot[] => {
  const hosts = new Set(net.landings.flatMap((t) => t.options.map((o) => o.spot)));
  return net.spots.filter((spot) => hosts.has(spot));
};

/** Tries to empty every breakout, and to gather tails at every spot, most of them first, until neither helps. */
function thorough(net: Network, heap: IndexHeap, start: Snapshot, limit: number): Snapshot {
  let best = start;
  restore(net, best);
  const tails = new Map<Spot, number>();
  for (const t of net.landings) for (const { spot } of t.options) tails.set(spot, (tails.get(spot) ?? 0) + 1);
  const hosts = [...tails.keys()].sort(
    (a, b) => (tails.get(b) ?? 0) - (tails.get(a) ?? 0) || a.index - b.index,
  );
  for (let again = true; again; ) {
    again = false;
    for (const move of [evacuate, gather])
      for (const spot of hosts) {
        if (net.steps > limit) return best;
        if (move === evacuate && !(spot.on && spot.branches > 2 && spot.held > 0)) continue;
        const price = move(net, heap, spot, best);
        if (price >= best.price - NOTICEABLE) continue;
        best = takeSnapshot(net, price);
        again = true;
      }
    const price = again ? descend(net, heap) : best.price;
    if (price < best.price - NOTICEABLE) best = takeSnapshot(net, price);
  }
  return best;
}

/** Kicks without a better tree after which a small harness is taken for settled; and further ones a landing. */
const STALLED_KICKS = 100;
const STALLED_KICKS_EACH = 30;

/** Tears up part of the tree, lays it again, descends; goes on from a tree that is a little worse at most. */
function kicked(net: Network, heap: IndexHeap, start: Snapshot, options: SearchOptions): Snapshot {
  const random = randomStream(options.seed);
  const hosts = hostsOf(net);
  let best = start;
  let current = start;
  let sinceBest = 0;
  if (net.landings.length < 2) return best;
  restore(net, current);
  while (net.steps < options.steps) {
    kick(net, heap, hosts, random);
    const price = descend(net, heap);
    if (price < best.price - NOTICEABLE) {
      best = takeSnapshot(net, price);
      current = best;
      sinceBest = 0;
    } else if (price < current.price + 0.01 * best.price * random() ** 2) current = takeSnapshot(net, price);
    else restore(net, current);
    if (sinceBest > STALLED_KICKS + STALLED_KICKS_EACH * net.landings.length) break;
    if (++sinceBest % 40 === 0) {
      current = best;
      restore(net, current);
    }
    net.steps += 100;
  }
  return best;
}

/** One random change: tails gathered at a spot, or a part of the tree laid anew with breakouts priced otherwise. */
function kick(net: Network, heap: IndexHeap, hosts: readonly Spot[], random: () => number): void {
  const pick = <T>(list: readonly T[]): T | undefined => list[Math.floor(random() * list.length)];
  const way = random();
  const centre = pick(net.landings);
  const host = pick(hosts);
  if (centre === undefined || host === undefined) return;
  if (way < 0.25) {
    visitAndGather(net, heap, host, tailsFor(net, host));
    return;
  }
  const most = Math.min(net.landings.length, 3 + Math.floor(0.4 * net.landings.length), 14);
  const all = way > 0.6 && net.landings.length <= 16;
  const torn = all ? net.landings : nearby(net, centre, 2 + Math.floor(random() * (most - 1)));
  for (const terminal of torn) detach(net, terminal);
  const dear = 1 + 2 * random();
  const free = way > 0.6 ? [host, pick(hosts), pick(hosts)].slice(0, 1 + Math.floor(random() * 3)) : [];
  for (const spot of hosts) spot.breakoutMin = net.breakoutMin * dear;
  for (const spot of free) if (spot !== undefined) spot.breakoutMin = 0;
  const order = shuffled(torn, random);
  for (const terminal of order) insert(net, heap, terminal, null);
  if (free.length > 0) reinsertAll(net, heap, order);
  for (const spot of hosts) spot.breakoutMin = net.breakoutMin;
}

const tailsFor = (net: Network, spot: Spot): readonly Terminal[] =>
  net.landings.filter((t) => t.options.some((o) => o.spot === spot));

/** Landings tied closest to a landing, by the number of lanes between. */
function nearby(net: Network, centre: Terminal, count: number): Terminal[] {
  const start = centre.at?.spot;
  if (start === undefined) return [centre];
  const tied = new Map<Spot, Terminal[]>();
  for (const t of net.landings) if (t.at !== null) tied.set(t.at.spot, [...(tied.get(t.at.spot) ?? []), t]);
  const found: Terminal[] = [];
  const mark = ++net.marks;
  start.mark = mark;
  const queue = [start];
  for (const spot of queue) {
    found.push(...(tied.get(spot) ?? []));
    if (found.length >= count) break;
    for (const { to } of spot.arcs)
      if (to.mark !== mark) {
        to.mark = mark;
        queue.push(to);
      }
    net.steps++;
  }
  return found.slice(0, count);
}

function shuffled<T>(list: readonly T[], random: () => number): T[] {
  const order = list.map((item) => ({ item, key: random() }));
  return order.sort((a, b) => a.key - b.key).map((o) => o.item);
}
