import type { BookRow } from "@pinwright/book";
import { type CurvePoint, logLog } from "./interpolate.ts";

type Speed = BookRow<"fuses">["speed"];

/** Between which times a fuse opens at a multiple of its rating; null: no limit is given. */
export interface FuseGate {
  readonly multiple: number;
  readonly leastS: number | null;
  readonly mostS: number | null;
}

const gates = (
  ...rows: readonly (readonly [multiple: number, leastS: number | null, mostS: number | null])[]
): readonly FuseGate[] => rows.map(([multiple, leastS, mostS]) => ({ multiple, leastS, mostS }));

/** IEC 60127-2 sheet 5, T high breaking. Source: data sheet of a 5 × 20 mm time-lag fuse-link to that sheet. */
const T_HIGH_TO_3_15 = gates(
  [1.5, 3600, null],
  [2.1, null, 1800],
  [2.75, 0.75, 80],
  [4, 0.095, 5],
  [10, 0.01, 0.15],
);
const T_HIGH_FROM_4 = gates(
  [1.5, 3600, null],
  [2.1, null, 1800],
  [2.75, 0.75, 80],
  [4, 0.15, 5],
  [10, 0.02, 0.15],
);
/** IEC 60127-2 sheets 1 (F high breaking), 2 (F low breaking) and 3 (T low breaking), from memory. */
const F_HIGH = gates(
  [1.5, 3600, null],
  [2.1, null, 1800],
  [2.75, 0.01, 2],
  [4, 0.003, 0.3],
  [10, null, 0.02],
);
const F_LOW_TO_0_1 = gates(
  [1.5, 3600, null],
  [2.1, null, 1800],
  [2.75, 0.01, 0.5],
  [4, 0.003, 0.1],
  [10, null, 0.02],
);
const F_LOW = gates([1.5, 3600, null], [2.1, null, 1800], [2.75, 0.05, 2], [4, 0.01, 0.3], [10, null, 0.02]);
const T_LOW_TO_0_1 = gates(
  [1.5, 3600, null],
  [2.1, null, 120],
  [2.75, 0.2, 10],
  [4, 0.04, 3],
  [10, 0.01, 0.3],
);
const T_LOW = gates([1.5, 3600, null], [2.1, null, 120], [2.75, 0.6, 10], [4, 0.15, 3], [10, 0.02, 0.3]);

/** From this breaking capacity on a fuse-link is one of high breaking capacity: 1500 A in IEC 60127-2. From memory. */
const HIGH_BREAKING_A = 1500;

/**
 * Time gates of a miniature fuse-link. Very quick ones are taken as quick, medium and long time-lag ones as time-lag,
 * for which the standard has sheets: they open no later than that, or not much.
 */
export function fuseGates(speed: Speed, ratedA: number, breakingA: number | null): readonly FuseGate[] {
  const high = (breakingA ?? 0) >= HIGH_BREAKING_A;
  if (speed === "f" || speed === "ff") return high ? F_HIGH : ratedA <= 0.1 ? F_LOW_TO_0_1 : F_LOW;
  if (high) return ratedA <= 3.15 ? T_HIGH_TO_3_15 : T_HIGH_FROM_4;
  return ratedA <= 0.1 ? T_LOW_TO_0_1 : T_LOW;
}

/**
 * A resettable fuse: trips at twice the current that it holds, and within 10 s at five times it, as heat alone
 * (I²t) decides. From memory: the order of catalogue values for parts of a few amperes.
 */
const RESETTABLE = { tripsAt: 2, at: 5, withinS: 10 } as const;

/** Latest time at which a resettable fuse trips, s; endless below twice the current that it holds. */
export const resettableOpensS = (multiple: number): number =>
  multiple < RESETTABLE.tripsAt
    ? Number.POSITIVE_INFINITY
    : RESETTABLE.withinS * (RESETTABLE.at / multiple) ** 2;

const curveOf = (list: readonly FuseGate[], time: (gate: FuseGate) => number | null): readonly CurvePoint[] =>
  list.flatMap((gate): readonly CurvePoint[] => {
    const seconds = time(gate);
    return seconds === null ? [] : [[gate.multiple, seconds]];
  });

const upperCurves = new WeakMap<readonly FuseGate[], readonly CurvePoint[]>();

/** The upper gates of a list; every fuse is asked for many currents. */
function upperCurve(list: readonly FuseGate[]): readonly CurvePoint[] {
  const known = upperCurves.get(list) ?? curveOf(list, (gate) => gate.mostS);
  upperCurves.set(list, known);
  return known;
}

/**
 * Latest time at which a fuse opens, in s, at a multiple of its rating: the upper gates, between them on logarithmic
 * axes; beyond the last gate by its I²t. Endless below the first upper gate, where it need not open at all.
 */
export function opensWithinS(list: readonly FuseGate[], multiple: number): number {
  const curve = upperCurve(list);
  const [first, last] = [curve[0], curve.at(-1)];
  if (first === undefined || last === undefined || multiple < first[0]) return Number.POSITIVE_INFINITY;
  return multiple > last[0] ? last[1] * (last[0] / multiple) ** 2 : logLog(curve, multiple);
}

/**
 * Least melting I²t that a fuse with these gates can have, in A²s: at ten times its rating for the shortest time it
 * must hold there. It stands in where the maker's value is not in the book; null where no gate tells.
 */
export function leastMeltingA2s(list: readonly FuseGate[], ratedA: number): number | null {
  const gate = list.findLast(({ leastS }) => leastS !== null);
  return gate?.leastS == null ? null : (gate.multiple * ratedA) ** 2 * gate.leastS;
}
