import type { Book, Shop } from "@pinwright/book";
import {
  type GraphLane,
  type Landing,
  type LaneGraph,
  laneGraph,
  type Machine,
  resolveMachine,
} from "@pinwright/engine";
import { compareText, createGraph, pathTo, pointSegmentDistance, shortestPaths } from "@pinwright/kernel";

type Side = "playfield|under" | "cab.bottom|top" | "cab.back|top" | "bb.bottom|top";
/** A pencil line: from place to place on one side of a panel. */
type Stroke = readonly [side: Side, ...places: (readonly [xMm: number, yMm: number])[]];

/** Down one side of the playfield from its rear edge, past what stands there. */
const RIGHT_SPINE = [
  [420, 930],
  [460, 850],
  [460, 690],
  [500, 610],
  [500, 300],
] as const;

/**
 * The trunks as a designer would pencil them on the panel's drawing: a spine down one side, straight runs across,
 * and from these a spur to whatever is too far away for a tail.
 */
const STROKES: Readonly<Record<string, readonly Stroke[]>> = {
  "hs.coil-lower": [["playfield|under", ...RIGHT_SPINE, [460, 214], [419, 134], [136, 134]]],
  "hs.coil-upper": [
    ["playfield|under", [340, 1050], [222, 1050], [136, 973], [136, 853], [136, 613]],
    ["playfield|under", [340, 1050], [379, 933], [460, 853], [460, 690]],
  ],
  "hs.lamp-front": [["playfield|under", [222, 1050], [340, 1050], ...RIGHT_SPINE, [419, 254], [95, 254]]],
  "hs.lamp-mid": [
    ["playfield|under", [340, 1050], [420, 930], [460, 850], [460, 690]],
    ["playfield|under", [222, 1050], [340, 1050]],
    ["playfield|under", [222, 1050], [136, 973], [136, 853], [136, 573]],
  ],
  "hs.switch-front": [
    ["playfield|under", [500, 414], [500, 254], [419, 134], [136, 134]],
    ["playfield|under", [419, 294], [95, 294], [95, 374]],
  ],
  "hs.switch-mid": [
    ["playfield|under", [460, 853], [460, 690], [500, 534]],
    ["playfield|under", [460, 773], [136, 773], [136, 573]],
  ],
  "hs.bus-lower": [
    ["playfield|under", [122, 1050], [340, 1050], ...RIGHT_SPINE, [419, 254], [95, 254], [95, 134]],
  ],
  "hs.trunk-power": [
    ["cab.bottom|top", [108, 340], [108, 441], [194, 692], [366, 692], [538, 776], [520, 1240]],
    ["cab.back|top", [520, 58], [436, 124], [385, 400]],
    ["cab.back|top", [385, 400], [420, 535]],
    ["bb.bottom|top", [490, 60], [450, 92]],
    ["bb.bottom|top", [490, 60], [570, 92]],
    ["playfield|under", [362, 1018], [340, 1050], [222, 1050]],
  ],
};

interface Net {
  readonly graph: LaneGraph;
  /** Lanes that let in every class of the harness. */
  readonly lanes: readonly GraphLane[];
}

const atOf = ({ graph }: Net, spot: number) => graph.spots[spot]?.place ?? { xMm: 0, yMm: 0 };

/** Cheapest way from some spots to one, as lanes; farther from the pencil line costs more. */
function way(net: Net, from: Iterable<number>, to: number, costOf: (lane: GraphLane) => number) {
  const graph = createGraph(
    net.graph.spots.length,
    net.lanes.map((lane) => ({ a: lane.a, b: lane.b, cost: costOf(lane) })),
  );
  const edges = pathTo(graph, shortestPaths(graph, from), to) ?? [];
  return edges.flatMap((e) => net.lanes[e] ?? []);
}

/** This far off the pencil line, a lane counts twice. */
const OFF_LINE_MM = 40;

function alongStroke(net: Net, [side, ...places]: Stroke): readonly GraphLane[] {
  const spots = places.map(([xMm, yMm]) => {
    const [nearest = -1] = (net.graph.onSide.get(side) ?? []).toSorted((p, q) => {
      const [a, b] = [atOf(net, p), atOf(net, q)];
      return Math.hypot(a.xMm - xMm, a.yMm - yMm) - Math.hypot(b.xMm - xMm, b.yMm - yMm) || p - q;
    });
    return nearest;
  });
  return spots.slice(1).flatMap((to, i) => {
    const from = spots[i] ?? to;
    const line = { a: atOf(net, from), b: atOf(net, to) };
    return way(net, [from], to, ({ a, b, lengthMm }) => {
      const [p, q] = [atOf(net, a), atOf(net, b)];
      const middle = { xMm: (p.xMm + q.xMm) / 2, yMm: (p.yMm + q.yMm) / 2 };
      return lengthMm * (1 + pointSegmentDistance(middle, line) / OFF_LINE_MM);
    });
  });
}

/** Spots to which a landing's tail reaches; of one whose tail is fixed, that place. */
function reachOf(machine: Machine, { graph }: Net, { id, place }: Landing): readonly number[] {
  const fixed = machine.choices.get("attach")?.get(id);
  if (fixed?.held === "pinned") return graph.spots.flatMap((spot, i) => (spot.id === fixed.value ? [i] : []));
  return (graph.onSide.get(`${place.panelId}|${place.side}`) ?? []).filter((spot) => {
    const at = graph.spots[spot]?.place;
    if (at === undefined) return false;
    const mm = Math.hypot(at.xMm - place.xMm, at.yMm - place.yMm) + Math.abs(place.zMm - at.zMm);
    return mm <= machine.shop.numbers.tail_max_mm;
  });
}

/** The strokes snapped to lanes, joined to one tree, with a spur to each landing that no tail reaches. */
function trunkOf(machine: Machine, graph: LaneGraph, harnessId: string, strokes: readonly Stroke[]) {
  const ends = machine.ends.filter(({ harness }) => harness === harnessId);
  const classes = new Set(ends.flatMap(({ net }) => machine.nets.get(net)?.class ?? []));
  const net: Net = { graph, lanes: graph.lanes.filter((l) => [...classes].every((c) => l.allowed.has(c))) };
  const landings = [
    ...new Set(
      ends.flatMap(({ point }) => machine.landings.get(machine.points.get(point)?.landingId ?? "") ?? []),
    ),
  ].toSorted((a, b) => compareText(a.id, b.id));
  const reaches = landings.map((landing) => reachOf(machine, net, landing));

  const tree = new Set<GraphLane>();
  const joined = new Set<number>();
  const grow = (lanes: readonly GraphLane[]): void => {
    for (const lane of lanes) {
      if (joined.has(lane.a) && joined.has(lane.b)) continue;
      tree.add(lane);
      joined.add(lane.a).add(lane.b);
    }
  };
  for (const stroke of strokes) {
    const lanes = alongStroke(net, stroke);
    const [first] = lanes;
    if (first === undefined) continue;
    const isApart = joined.size > 0 && !lanes.some((lane) => joined.has(lane.a) || joined.has(lane.b));
    if (isApart) grow(way(net, joined, first.a, (lane) => lane.lengthMm));
    let left = lanes;
    while (left.length > 0) {
      const next = left.filter((l) => joined.size === 0 || joined.has(l.a) || joined.has(l.b)).slice(0, 1);
      if (next.length === 0) break;
      grow(next);
      left = left.filter((lane) => !next.includes(lane));
    }
  }
  for (const reach of reaches) {
    if (reach.length === 0 || reach.some((spot) => joined.has(spot))) continue;
    const spurs = reach.map((spot) => way(net, joined, spot, (lane) => lane.lengthMm));
    const mm = (lanes: readonly GraphLane[]): number => lanes.reduce((sum, lane) => sum + lane.lengthMm, 0);
    const [shortest] = spurs.filter((lanes) => lanes.length > 0).toSorted((a, b) => mm(a) - mm(b));
    if (shortest !== undefined) grow(shortest);
  }
  return cutBack(tree, reaches);
}

/** A trunk ends where its last tail leaves: loose ends that no landing needs are rubbed out. */
function cutBack(tree: Set<GraphLane>, reaches: readonly (readonly number[])[]): readonly GraphLane[] {
  for (;;) {
    const lanesAt = new Map<number, GraphLane[]>();
    for (const lane of tree)
      for (const spot of [lane.a, lane.b]) lanesAt.set(spot, [...(lanesAt.get(spot) ?? []), lane]);
    const needed = (spot: number): boolean =>
      reaches.some(
        (reach) => reach.includes(spot) && !reach.some((other) => other !== spot && lanesAt.has(other)),
      );
    const loose = [...lanesAt].find(([spot, lanes]) => lanes.length === 1 && !needed(spot));
    const lane = loose?.[1][0];
    if (lane === undefined || tree.size === 1) return [...tree];
    tree.delete(lane);
  }
}

/** What is drawn: lanes and crossings of each harness's trunk, by harness id. */
function drawnTrunks(book: Book, shop: Shop): ReadonlyMap<string, readonly string[]> {
  const machine = resolveMachine(book, shop);
  const graph = laneGraph(machine);
  return new Map(
    Object.entries(STROKES).map(([harnessId, strokes]) => [
      harnessId,
      trunkOf(machine, graph, harnessId, strokes)
        .map(({ id }) => id)
        .toSorted(compareText),
    ]),
  );
}

/** The drawn trunks as a table of two columns; lanes are separated by one space. */
export const drawnTrunksCsv = (book: Book, shop: Shop): string =>
  [
    "harness,lanes",
    ...[...drawnTrunks(book, shop)].map(([id, lanes]) => `${id},${lanes.join(" ")}`),
    "",
  ].join("\n");
