import type { LoadVolts } from "../../model/index.ts";
import type { Feed } from "../network/feeds.ts";
import { backVolts, behaviourOf, forwardVolts } from "../network/values.ts";
import { CORNERS, spreadOf } from "./corners.ts";
import { baseAt, type Rows, voltsRows } from "./rows.ts";
import type { SolvedIsland } from "./solved-island.ts";
import { valueAt } from "./worst.ts";

/** Volts at every load of an island while it is on, alone and in the moment that leaves it least. */
export function loadVolts(solved: SolvedIsland): ReadonlyMap<string, LoadVolts> {
  const loads = new Map<string, LoadVolts>();
  for (const feed of solved.task.network.steady) addLoad(solved, loads, feed, []);
  solved.task.network.units.forEach(({ unit }, u) => {
    for (const feed of unit.loads) addLoad(solved, loads, feed, [u]);
  });
  return loads;
}

/** Volts from a load's positive point to its negative one; null when it is not in the island. */
export function loadRows(solved: SolvedIsland, { load, reversed }: Feed): Rows | null {
  const { nodeOf } = solved.task.network;
  const a = nodeOf.get(reversed ? load.b : load.a);
  const b = nodeOf.get(reversed ? load.a : load.b);
  return a === undefined || b === undefined ? null : voltsRows(solved.states, a, b);
}

/** Current that a load draws while it is on with so many volts at its points, at a corner. */
export function loadAmps(
  { ohms, factors, task: { network } }: SolvedIsland,
  { load }: Feed,
  c: number,
  volts: number,
): number {
  const { row } = load.element;
  const ohm = ohms[network.resistorOf.get(load.id) ?? -1];
  if (ohm === undefined) return row.amp ?? 0;
  const there = ohm * (factors[c]?.[behaviourOf(load)] ?? 1);
  if (row.kind === "motor") return (volts - backVolts(row)) / there;
  if (row.kind === "led") return Math.max(0, volts - forwardVolts(row)) / there;
  return volts / there;
}

/** @param own the unit that switches it; none when it is on all the time */
function addLoad(
  solved: SolvedIsland,
  loads: Map<string, LoadVolts>,
  feed: Feed,
  own: readonly number[],
): void {
  const rows = loadRows(solved, feed);
  if (rows === null) return;
  const { row, itemId } = feed.load.element;
  const { worst } = solved;
  const alone = own.length === 0 ? worst.none : worst.setOf(own);
  const { set } = worst.heaviest(
    worst.weights(rows).map((w) => -w),
    own,
  );
  const volts = CORNERS.map((_, c) => valueAt(rows, c, set));
  loads.set(feed.load.id, {
    loadId: feed.load.id,
    itemId,
    supplyId: feed.source.supply?.id ?? feed.source.id,
    // An LED with its resistor is made for the supply; a bare one for its forward voltage.
    nominalV: row.kind === "led" && (row.ohm ?? 0) > 0 ? feed.source.volts : (row.volt ?? feed.source.volts),
    aloneV: spreadOf((c) => (alone === worst.none ? baseAt(rows, c) : valueAt(rows, c, alone))),
    worstV: spreadOf((c) => volts[c] ?? 0),
    amps: spreadOf((c) => loadAmps(solved, feed, c, volts[c] ?? 0)),
    momentId: solved.momentOf(set, feed.load.id),
  });
}
