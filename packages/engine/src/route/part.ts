import { NET_CLASSES, type ShopNumbers } from "@pinwright/book";
import { UnionFind } from "@pinwright/kernel";
import type { NetClass } from "../model/index.ts";
import { squareWithin } from "./bundle-rule.ts";
import type { GraphLane, GraphSpot, LaneGraph } from "./lane-graph.ts";
import type { ProblemLane } from "./search/problem.ts";

/** The lanes that the wires of some classes may use, and which of the spots they join. */
export interface LaneParts {
  /** Number of the joined part that a spot of the lane graph is in; a spot without lanes is one by itself. */
  readonly partOf: (spot: number) => number;
  /** One part, numbered for itself. */
  readonly part: (number: number) => LanePart;
}

/** A joined part of the lane graph as a problem numbers it. */
interface LanePart {
  readonly spots: readonly GraphSpot[];
  readonly lanes: readonly GraphLane[];
  readonly problemLanes: readonly ProblemLane[];
  /** Number within the part by number in the lane graph; −1 for the spots of other parts. */
  readonly numberOf: Int32Array;
}

type Numbers = Pick<ShopNumbers, "tie_min" | "tie_spacing_mm" | "laid_factor">;

/** What the lanes of a graph let in, and the parts that were asked for. */
interface Known {
  /** The different lists of barred classes, and for each lane the number of its own. */
  readonly lists: readonly (readonly number[])[];
  readonly listOf: Int32Array;
  readonly parts: Map<string, LaneParts>;
  readonly laneById: ReadonlyMap<string, number>;
}

const known = new WeakMap<LaneGraph, Known>();

function knownOf(graph: LaneGraph): Known {
  const found = known.get(graph);
  if (found !== undefined) return found;
  const lists: (readonly number[])[] = [];
  const numbers = new Map<string, number>();
  const listOf = Int32Array.from(graph.lanes, ({ barred }) => {
    const key = barred.join(" ");
    const number = numbers.get(key) ?? lists.push(barred) - 1;
    numbers.set(key, number);
    return number;
  });
  const laneById = new Map(graph.lanes.map((lane, i) => [lane.id, i]));
  const made: Known = { lists, listOf, parts: new Map(), laneById };
  known.set(graph, made);
  return made;
}

/**
 * The parts of the lane graph for wires of some classes. Harnesses whose wires may use the same lanes get the very
 * same ones.
 * @param only ids of the only lanes that may be used; null: any
 */
export function laneParts(
  graph: LaneGraph,
  classes: ReadonlySet<NetClass>,
  only: ReadonlySet<string> | null,
  numbers: Numbers,
): LaneParts {
  const { lists, listOf, parts, laneById } = knownOf(graph);
  const indices = [...classes].map((c) => NET_CLASSES.indexOf(c));
  const open = lists.map((barred) => indices.some((c) => !barred.includes(c)));
  if (only !== null) {
    // A kept trunk has few lanes: they are looked up, so that its price does not grow with the machine.
    const indices = [...only].flatMap((id) => laneById.get(id) ?? []).sort((a, b) => a - b);
    const lanes = indices.filter((i) => open[listOf[i] ?? 0] === true).flatMap((i) => graph.lanes[i] ?? []);
    return partsOf(graph, lanes, numbers);
  }
  const { tie_min, tie_spacing_mm, laid_factor } = numbers;
  const key = [...open, tie_min, tie_spacing_mm, laid_factor].join(" ");
  const found =
    parts.get(key) ??
    partsOf(
      graph,
      graph.lanes.filter((_, i) => open[listOf[i] ?? 0]),
      numbers,
    );
  parts.set(key, found);
  return found;
}

function partsOf(graph: LaneGraph, lanes: readonly GraphLane[], numbers: Numbers): LaneParts {
  const spots = [...new Set(lanes.flatMap((lane) => [lane.a, lane.b]))].sort((a, b) => a - b);
  const local = new Map(spots.map((spot, i) => [spot, i]));
  const joined = new UnionFind(spots.length);
  for (const lane of lanes) joined.join(local.get(lane.a) ?? 0, local.get(lane.b) ?? 0);
  const partOf = (spot: number): number => {
    const i = local.get(spot);
    return i === undefined ? spot : (spots[joined.find(i)] ?? spot);
  };
  const made = new Map<number, LanePart>();
  return {
    partOf,
    part: (number) => {
      const known = made.get(number);
      if (known !== undefined) return known;
      const within = local.has(number) ? spots.filter((spot) => partOf(spot) === number) : [number];
      const part = numbered(graph, lanes, within, numbers);
      made.set(number, part);
      return part;
    },
  };
}

/** @param within spots of the part by their number in the graph, ascending */
function numbered(
  graph: LaneGraph,
  lanes: readonly GraphLane[],
  within: readonly number[],
  numbers: Numbers,
): LanePart {
  const numberOf = new Int32Array(graph.spots.length).fill(-1);
  within.forEach((spot, i) => {
    numberOf[spot] = i;
  });
  const own = lanes.filter((lane) => (numberOf[lane.a] ?? -1) >= 0);
  const tieMinPerMm = numbers.tie_min / numbers.tie_spacing_mm;
  return {
    spots: within.flatMap((spot) => graph.spots[spot] ?? []),
    lanes: own,
    numberOf,
    problemLanes: own.map((lane) => ({
      a: numberOf[lane.a] ?? 0,
      b: numberOf[lane.b] ?? 0,
      lengthMm: lane.lengthMm,
      minutes: lane.kind === "lane" ? lane.lengthMm * tieMinPerMm : 0,
      maxSquareMm2: squareWithin(lane.maxDiameterMm, numbers.laid_factor),
      forbidden: lane.barred,
    })),
  };
}
