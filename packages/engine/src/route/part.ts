import type { ShopNumbers } from "@pinwright/book";
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

const known = new WeakMap<LaneGraph, Map<string, LaneParts>>();

/**
 * The parts of the lane graph for wires of some classes. Harnesses of the same classes get the very same ones.
 * @param only ids of the only lanes that may be used; null: any
 */
export function laneParts(
  graph: LaneGraph,
  classes: ReadonlySet<NetClass>,
  only: ReadonlySet<string> | null,
  numbers: Numbers,
): LaneParts {
  if (only !== null) return partsOf(graph, classes, only, numbers);
  const ofGraph = known.get(graph) ?? new Map<string, LaneParts>();
  known.set(graph, ofGraph);
  const { tie_min, tie_spacing_mm, laid_factor } = numbers;
  const key = [...[...classes].sort(), tie_min, tie_spacing_mm, laid_factor].join(" ");
  const parts = ofGraph.get(key) ?? partsOf(graph, classes, null, numbers);
  ofGraph.set(key, parts);
  return parts;
}

function partsOf(
  graph: LaneGraph,
  classes: ReadonlySet<NetClass>,
  only: ReadonlySet<string> | null,
  numbers: Numbers,
): LaneParts {
  const wanted = [...classes];
  const lanes = graph.lanes.filter(
    (lane) => wanted.some((c) => lane.allowed.has(c)) && (only === null || only.has(lane.id)),
  );
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
