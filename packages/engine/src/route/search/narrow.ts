import {
  createGraph,
  type Graph,
  otherEnd,
  type ShortestPaths,
  shortestPaths,
  UnionFind,
} from "@pinwright/kernel";
import type { ProblemLane, RouteProblem, RouteSolution } from "./problem.ts";

/** A problem with the far parts of the lane graph left out, and the way back to the numbers of the whole one. */
export interface Narrowed {
  readonly problem: RouteProblem;
  readonly widen: (solution: RouteSolution) => RouteSolution;
}

/** Lanes round the best ways that a search may use beside them. Found by trial. */
const RINGS = 1;

const graphs = new WeakMap<RouteProblem["lanes"], Graph>();

/** The lanes as a graph by length; the harnesses of a machine share one list of lanes. */
function lanesAsGraph(problem: RouteProblem): Graph {
  const known = graphs.get(problem.lanes);
  if (known !== undefined && known.nodes === problem.spots) return known;
  const edges = problem.lanes.map(({ a, b, lengthMm }) => ({ a, b, cost: lengthMm }));
  const graph = createGraph(problem.spots, edges);
  graphs.set(problem.lanes, graph);
  return graph;
}

/**
 * The spots near which a good tree lies: all that tails may lead to, the ways of a shortest spanning tree over
 * them (Mehlhorn 1988), the shortest ways to every landing from the one with most wires, and what is a few lanes
 * from any of these.
 * @returns 1 for each such spot
 */
export function surroundings(problem: RouteProblem): Uint8Array {
  const known = areas.get(problem.landings);
  if (known !== undefined && known.length === problem.spots) return known;
  const near = findSurroundings(problem);
  areas.set(problem.landings, near);
  return near;
}

/** The search and the bound ask for the same surroundings, one after the other. */
const areas = new WeakMap<RouteProblem["landings"], Uint8Array>();

function findSurroundings(problem: RouteProblem): Uint8Array {
  const graph = lanesAsGraph(problem);
  const price = wayPrices(problem);
  const near = new Uint8Array(problem.spots);
  const hosts = problem.landings.flatMap(({ candidates }) => candidates.map((c) => c.spot));
  for (const { places } of problem.splices) {
    const [only, ...others] = places;
    if (only !== undefined && others.length === 0) hosts.push(only.spot);
  }
  for (const spot of hosts) near[spot] = 1;
  markSpanning(graph, shortestPaths(graph, hosts, price), price, near);
  const main = problem.landings[mainLanding(problem)];
  const fromMain = shortestPaths(graph, main?.candidates.map((c) => c.spot) ?? [], price);
  for (const { candidates } of problem.landings) {
    let nearest = -1;
    for (const { spot } of candidates)
      if (nearest < 0 || (fromMain.distance[spot] ?? 0) < (fromMain.distance[nearest] ?? 0)) nearest = spot;
    if (nearest >= 0) markWay(graph, fromMain, nearest, near);
  }
  for (let ring = 0; ring < RINGS; ring++) {
    const before = near.slice();
    for (let e = 0; e < graph.edges; e++) {
      const a = graph.a[e] ?? 0;
      const b = graph.b[e] ?? 0;
      if (before[a] === 1) near[b] = 1;
      if (before[b] === 1) near[a] = 1;
    }
  }
  return near;
}

/** Price of each lane with as many wires in it as end at a landing on average, minutes. */
function wayPrices(problem: RouteProblem): Float64Array {
  const wires = (2 * problem.wires.length) / Math.max(1, problem.landings.length);
  const perMm = (wires * problem.layMinPerM) / 1000;
  return Float64Array.from(problem.lanes, (lane) => lane.minutes + lane.lengthMm * perMm);
}

/** The landing at which most wires end. */
function mainLanding(problem: RouteProblem): number {
  const ends = new Array<number>(problem.landings.length).fill(0);
  for (const { a, b } of problem.wires)
    for (const end of [a, b]) if (end < ends.length) ends[end] = (ends[end] ?? 0) + 1;
  let most = 0;
  ends.forEach((n, landing) => {
    if (n > (ends[most] ?? 0)) most = landing;
  });
  return most;
}

function markWay(graph: Graph, ways: ShortestPaths, to: number, near: Uint8Array): void {
  let spot = to;
  near[spot] = 1;
  for (let e = ways.parentEdge[spot] ?? -1; e >= 0; e = ways.parentEdge[spot] ?? -1) {
    spot = otherEnd(graph, e, spot);
    near[spot] = 1;
  }
}

/** Marks the ways of a shortest spanning tree over the sources of `ways`. */
function markSpanning(graph: Graph, ways: ShortestPaths, price: Float64Array, near: Uint8Array): void {
  const parts = new UnionFind(graph.nodes);
  ways.parentEdge.forEach((e, v) => {
    if (e >= 0) parts.join(v, otherEnd(graph, e, v));
  });
  const meetings: { readonly lane: number; readonly price: number }[] = [];
  for (let lane = 0; lane < graph.edges; lane++) {
    const a = graph.a[lane] ?? 0;
    const b = graph.b[lane] ?? 0;
    if (parts.find(a) !== parts.find(b))
      meetings.push({
        lane,
        price: (ways.distance[a] ?? 0) + (price[lane] ?? 0) + (ways.distance[b] ?? 0),
      });
  }
  meetings.sort((x, y) => x.price - y.price || x.lane - y.lane);
  for (const { lane } of meetings) {
    const a = graph.a[lane] ?? 0;
    const b = graph.b[lane] ?? 0;
    if (!parts.join(a, b)) continue;
    markWay(graph, ways, a, near);
    markWay(graph, ways, b, near);
  }
}

/** Tails of a landing that a search looks at: the shortest. Found by trial. */
const TAILS = 16;

/** The problem on some of its spots only. A landing keeps its shortest tails, a splice its places on those spots. */
export function narrowTo(problem: RouteProblem, kept: Uint8Array): Narrowed {
  const numbers = new Int32Array(problem.spots).fill(-1);
  let spots = 0;
  kept.forEach((on, spot) => {
    if (on === 1) numbers[spot] = spots++;
  });
  const lanes: number[] = [];
  problem.lanes.forEach(({ a, b }, lane) => {
    if (kept[a] === 1 && kept[b] === 1) lanes.push(lane);
  });
  const at = (spot: number): number => numbers[spot] ?? -1;
  const tails = problem.landings.map(({ candidates }) =>
    candidates
      .flatMap((tail, index) =>
        kept[tail.spot] === 1 ? [{ index, tail: { ...tail, spot: at(tail.spot) } }] : [],
      )
      .sort((x, y) => x.tail.lengthMm - y.tail.lengthMm || x.index - y.index)
      .slice(0, TAILS),
  );
  const places = problem.splices.map((splice) =>
    splice.places.flatMap((place, index) =>
      kept[place.spot] === 1 ? [{ index, place: { ...place, spot: at(place.spot) } }] : [],
    ),
  );
  return {
    problem: {
      ...problem,
      spots,
      lanes: lanes.flatMap((index) => {
        const lane = problem.lanes[index];
        return lane === undefined ? [] : [{ ...lane, a: at(lane.a), b: at(lane.b) }];
      }),
      landings: tails.map((list) => ({ candidates: list.map(({ tail }) => tail) })),
      splices: places.map((list) => ({ places: list.map(({ place }) => place) })),
    },
    widen: ({ lanes: chosen, attach, spliceAt }) => ({
      lanes: chosen.map((lane) => lanes[lane] ?? -1),
      attach: attach.map((k, l) => tails[l]?.[k]?.index ?? -1),
      spliceAt: spliceAt.map((k, s) => places[s]?.[k]?.index ?? -1),
    }),
  };
}

/**
 * The problem with whole far parts of the lane graph drawn together into one spot each: the parts that lanes with
 * work of their own hold together and in which no spot is near. What follows lanes there costs nothing any more,
 * so that a bound for this problem is a bound for the whole one.
 */
export function drawnTogether(problem: RouteProblem, near: Uint8Array): RouteProblem {
  const parts = new UnionFind(problem.spots);
  for (const { a, b, minutes } of problem.lanes) if (minutes > 0) parts.join(a, b);
  const nearParts = new Uint8Array(problem.spots);
  near.forEach((on, spot) => {
    if (on === 1) nearParts[parts.find(spot)] = 1;
  });
  const numbers = new Int32Array(problem.spots).fill(-1);
  let spots = 0;
  const at = (spot: number): number => {
    const part = parts.find(spot);
    const stands = nearParts[part] === 1 ? spot : part;
    if ((numbers[stands] ?? -1) < 0) numbers[stands] = spots++;
    return numbers[stands] ?? -1;
  };
  const lanes: ProblemLane[] = [];
  for (const lane of problem.lanes) {
    const a = at(lane.a);
    const b = at(lane.b);
    if (a !== b) lanes.push({ ...lane, a, b });
  }
  const landings = problem.landings.map(({ candidates }) => ({
    candidates: candidates.map((tail) => ({ ...tail, spot: at(tail.spot) })),
  }));
  const splices = problem.splices.map(({ places }) => ({
    places: places.map((place) => ({ ...place, spot: at(place.spot) })),
  }));
  return { ...problem, spots, lanes, landings, splices };
}
