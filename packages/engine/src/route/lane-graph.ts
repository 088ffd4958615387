import { type BookRow, NET_CLASSES } from "@pinwright/book";
import { compareText, roundTo } from "@pinwright/kernel";
import { appliesTo, type Machine, type NetClass, type Place } from "../model/index.ts";
import { crossingLengths, waypointPlace } from "./crossing-lengths.ts";

/** A waypoint of the machine, numbered in code-point order of the ids. */
export interface GraphSpot {
  readonly id: string;
  readonly place: Place;
  /** A hinge ends here: what is joined here would lie where the bundle flexes. */
  readonly atHinge: boolean;
}

/** A lane or a crossing of the machine. */
export interface GraphLane {
  readonly id: string;
  readonly kind: "lane" | "crossing";
  /** Spot numbers. */
  readonly a: number;
  readonly b: number;
  readonly lengthMm: number;
  readonly maxDiameterMm: number;
  readonly allowed: ReadonlySet<NetClass>;
  /** The other classes, as places in `NET_CLASSES`. */
  readonly barred: readonly number[];
}

/** Everything that wires may follow, sorted by id: the same however the rows are ordered. */
export interface LaneGraph {
  readonly spots: readonly GraphSpot[];
  readonly lanes: readonly GraphLane[];
  /** Lanes that join two panels or sides, and crossings whose length nothing tells: no wire can follow them. */
  readonly unusable: readonly string[];
  /** Spot numbers by panel and side, `panel|side`. */
  readonly onSide: ReadonlyMap<string, readonly number[]>;
}

/** Key of `LaneGraph.onSide`. */
export const sideKey = (place: Pick<Place, "panelId" | "side">): string => `${place.panelId}|${place.side}`;

const isClass = (name: string): name is NetClass => NET_CLASSES.some((c) => c === name);

/** Classes that a lane or crossing lets in: those it names; when it names none, all but mains. */
const allowedClasses = (row: Pick<BookRow<"lanes">, "classes">): ReadonlySet<NetClass> =>
  new Set(row.classes.length > 0 ? row.classes.filter(isClass) : NET_CLASSES.filter((c) => c !== "mains"));

/** Lanes and crossings of a machine with their lengths (mm). A lane is straight. */
export function laneGraph(machine: Machine): LaneGraph {
  const { waypoints, lanes, crossings } = machine.book.tables;
  const hinges = new Set(
    crossings
      .filter((c) => c.kind === "hinge" && appliesTo(c, machine.options))
      .flatMap((c) => [c.from, c.to]),
  );
  const spots = waypoints
    .filter((w) => appliesTo(w, machine.options))
    .map((w): GraphSpot => ({ id: w.id, place: waypointPlace(w), atHinge: hinges.has(w.id) }))
    .sort((a, b) => compareText(a.id, b.id));
  const numbers = new Map(spots.map((spot, i) => [spot.id, i]));
  const lengths = crossingLengths(machine);
  const found: GraphLane[] = [];
  const unusable: string[] = [];
  const add = (
    row: Pick<BookRow<"lanes">, "id" | "from" | "to" | "max_diameter_mm" | "classes">,
    kind: GraphLane["kind"],
    lengthOf: (a: Place, b: Place) => number | null,
  ): void => {
    const a = numbers.get(row.from) ?? -1;
    const b = numbers.get(row.to) ?? -1;
    const from = spots[a]?.place;
    const to = spots[b]?.place;
    const lengthMm = from === undefined || to === undefined ? null : lengthOf(from, to);
    if (lengthMm === null || a === b) unusable.push(row.id);
    else {
      const allowed = allowedClasses(row);
      found.push({
        id: row.id,
        kind,
        a,
        b,
        lengthMm,
        maxDiameterMm: row.max_diameter_mm,
        allowed,
        barred: NET_CLASSES.flatMap((c, i) => (allowed.has(c) ? [] : [i])),
      });
    }
  };
  for (const lane of lanes)
    if (appliesTo(lane, machine.options))
      add(lane, "lane", (a, b) =>
        a.panelId === b.panelId && a.side === b.side
          ? roundTo(Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm), 0.001)
          : null,
      );
  for (const crossing of crossings)
    if (appliesTo(crossing, machine.options))
      add(crossing, "crossing", () => lengths.get(crossing.id)?.lengthMm ?? null);
  const onSide = new Map<string, number[]>();
  for (const [i, spot] of spots.entries()) {
    const list = onSide.get(sideKey(spot.place));
    if (list === undefined) onSide.set(sideKey(spot.place), [i]);
    else list.push(i);
  }
  return {
    onSide,
    spots,
    lanes: found.sort((a, b) => compareText(a.id, b.id)),
    unusable: unusable.sort(compareText),
  };
}
