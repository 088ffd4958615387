import { NET_CLASSES, type ShopNumbers } from "@pinwright/book";
import { UnionFind } from "@pinwright/kernel";
import type { NetClass } from "../model/index.ts";
import { squareWithin } from "./bundle-rule.ts";
import type { GraphLane, GraphSpot, LaneGraph } from "./lane-graph.ts";
import type { ProblemLane } from "./search/problem.ts";

/** The lanes that the wires of some classes may use, and which of the spots they join. */
export interface LaneParts {
  /** For each spot of the lane graph the number of the joined part that it is in. */
  readonly partOf: readonly number[];
  /** One part, numbered for itself. */
  readonly part: (number: number) => LanePart;
}

/** A joined part of the lane graph as a problem numbers it. */
export interface LanePart {
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
  const made: Known = { lists, listOf, parts: new Map() };
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
  const { lists, listOf, parts } = knownOf(graph);
  const indices = [...classes].map((c) => NET_CLASSES.indexOf(c));
  const open = lists.map((barred) => indices.some((c) => !barred.includes(c)));
  if (only !== null)
    return partsOf(
      graph,
      graph.lanes.filter((lane, i) => open[listOf[i] ?? 0] === true && only.has(lane.id)),
      numbers,
    );
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
  const joined = new UnionFind(graph.spots.length);
  for (const lane of lanes) joined.join(lane.a, lane.b);
  const partOf = graph.spots.map((_, i) => joined.find(i));
  const made = new Map<number, LanePart>();
  return {
    partOf,
    part: (number) => {
      const part = made.get(number) ?? numbered(graph, lanes, partOf, number, numbers);
      made.set(number, part);
      return part;
    },
  };
}

function numbered(
  graph: LaneGraph,
  lanes: readonly GraphLane[],
  partOf: readonly number[],
  part: number,
  numbers: Numbers,
): LanePart {
  const numberOf = new Int32Array(graph.spots.length).fill(-1);
  const spots: GraphSpot[] = [];
  for (const [i, spot] of graph.spots.entries()) if (partOf[i] === part) numberOf[i] = spots.push(spot) - 1;
  const within = lanes.filter((lane) => partOf[lane.a] === part);
  const tieMinPerMm = numbers.tie_min / numbers.tie_spacing_mm;
  return {
    spots,
    lanes: within,
    numberOf,
    problemLanes: within.map((lane) => ({
      a: numberOf[lane.a] ?? 0,
      b: numberOf[lane.b] ?? 0,
      lengthMm: lane.lengthMm,
      minutes: lane.kind === "lane" ? lane.lengthMm * tieMinPerMm : 0,
      maxSquareMm2: squareWithin(lane.maxDiameterMm, numbers.laid_factor),
      forbidden: lane.barred,
    })),
  };
}
