import type { Carried, Spread } from "../../model/index.ts";
import type { Part } from "../network/parts.ts";
import { behaviourOf } from "../network/values.ts";
import { CORNERS, spreadOf } from "./corners.ts";
import { rmsAt } from "./heating.ts";
import { baseAt, resistorRows } from "./rows.ts";
import type { SolvedIsland } from "./solved-island.ts";
import { valueAt } from "./worst.ts";

/** What a class of parts in series carries. */
interface Current extends Pick<Carried, "steadyA" | "rmsA" | "peakA" | "momentId"> {
  /** Largest current by corner. */
  readonly peaks: readonly number[];
}

/** What every wire, contact, fuse, link and shunt of an island carries, by id: parts in series are looked at once. */
export function carriedOf(solved: SolvedIsland): ReadonlyMap<string, Carried> {
  const { island, joins, resistorOf } = solved.task.network;
  const joinAt = new Map(joins.map((part, j) => [part.id, j]));
  const byJoin = solved.joinRows;
  const series = solved.task.network.series;
  const currents = new Map<number, Current>();
  const carried = new Map<string, Carried>();
  island.parts.forEach((part, p) => {
    if (!isConductor(part)) return;
    const known = currents.get(series[p] ?? p);
    const resistor = resistorOf.get(part.id);
    const rows =
      known !== undefined
        ? null
        : resistor === undefined
          ? byJoin[joinAt.get(part.id) ?? 0]
          : resistorRows(solved.states, resistor);
    const current = known ?? (rows ? currentOf(solved, rows, part.id) : null);
    if (current === null) return;
    currents.set(series[p] ?? p, current);
    const { peaks, steadyA, rmsA, peakA, momentId } = current;
    const ohm = resistor === undefined ? 0 : (solved.ohms[resistor] ?? 0);
    const behaviour = behaviourOf(part);
    const ohmAt = (c: number): number => ohm * (solved.factors[c]?.[behaviour] ?? 1);
    carried.set(part.id, {
      ohm: spreadOf(ohmAt),
      steadyA,
      rmsA,
      peakA,
      dropV: spreadOf((c) => (peaks[c] ?? 0) * ohmAt(c)),
      momentId,
    });
  });
  return carried;
}

function currentOf(solved: SolvedIsland, rows: ReturnType<typeof resistorRows>, subject: string): Current {
  const { larger } = solved.worst.extremes(rows);
  const peaks = CORNERS.map((_, c) => Math.abs(valueAt(rows, c, larger)));
  const rms: Spread = spreadOf((c) => rmsAt(rows, c, solved.currents[c] ?? []));
  return {
    peaks,
    steadyA: spreadOf((c) => Math.abs(baseAt(rows, c))),
    rmsA: rms,
    peakA: spreadOf((c) => peaks[c] ?? 0),
    momentId: solved.momentOf(larger, subject),
  };
}

/** What has a result of its own as a conductor: not the loads and sources, which have theirs. */
function isConductor(part: Part): boolean {
  if (part.kind !== "element") return part.kind !== "source";
  const { kind } = part.element.row;
  return kind === "link" || kind === "resistor" || kind === "fuse" || kind === "driver" || kind === "contact";
}
