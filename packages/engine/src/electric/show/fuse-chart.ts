import type { ElectricSolution, FuseRating, HarnessResult, Machine } from "../../model/index.ts";
import { usageOf } from "../network/usage.ts";
import { harmS, shortCircuitC } from "../physics/adiabatic.ts";
import { type FuseGate, fuseGates, opensWithinS, resettableOpensS } from "../physics/fuse-curve.ts";
import type { CurvePoint } from "../physics/interpolate.ts";
import { loadsBehindFuses } from "./loads-behind.ts";

/** A pulse of one load behind a fuse. */
export interface FusePulse {
  readonly loadId: string;
  /** Largest current of the load by itself or in its worst moment, at its worst corner. */
  readonly amps: number;
  readonly seconds: number;
  /** Pulses in a minute of hard play, by its `activity`. */
  readonly aMinute: number;
}

/** What is drawn of a fuse on logarithmic axes of current and time. */
export interface FuseChart {
  /** Gates of its standard; none of a resettable fuse. */
  readonly gates: readonly FuseGate[];
  /** Earliest and latest opening as [A, s]: straight between the points on logarithmic axes. */
  readonly earliest: readonly CurvePoint[];
  readonly latest: readonly CurvePoint[];
  /** For how long the wire that a short circuit harms first stands a current, as [A, s]; none without such a wire. */
  readonly harm: readonly CurvePoint[];
  readonly pulses: readonly FusePulse[];
  /** Loads that it lies on the way to, in code-point order. */
  readonly loadIds: readonly string[];
  /** Current at which the drawing ends. */
  readonly endA: number;
}

/** Times rating up to which a curve is drawn at least. */
const LEAST_END = 20;

/**
 * The time-current curve of a fuse between the gates of its standard, with the pulses of the loads behind it.
 * @param harnesses wires of the whole machine
 */
export function fuseChart(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
  solution: Pick<ElectricSolution, "loads">,
  rating: FuseRating,
): FuseChart {
  const { ratedA, speed, breakingA, far, peakA } = rating;
  const endA = Math.max(LEAST_END * ratedA, 1.5 * (far?.firstA ?? 0), 1.5 * peakA);
  const gates = speed === "resettable" ? [] : fuseGates(speed, ratedA, breakingA);
  const loadIds = loadsBehindFuses(machine, harnesses, [rating]).get(rating.elementId) ?? [];
  return {
    gates,
    earliest: earliestCurve(gates, ratedA, endA),
    latest: speed === "resettable" ? resettableCurve(ratedA, endA) : latestCurve(gates, ratedA, endA),
    harm: harmCurve(machine, harnesses, rating, endA),
    pulses: pulsesOf(machine, solution, loadIds),
    loadIds,
    endA,
  };
}

function latestCurve(gates: readonly FuseGate[], ratedA: number, endA: number): readonly CurvePoint[] {
  const points = gates.flatMap(({ multiple, mostS }): readonly CurvePoint[] =>
    mostS === null ? [] : [[multiple * ratedA, mostS]],
  );
  return [...points, [endA, opensWithinS(gates, endA / ratedA)]];
}

/** Beyond the last lower gate at its I²t: a fuse can melt no earlier than by its heat alone. */
function earliestCurve(gates: readonly FuseGate[], ratedA: number, endA: number): readonly CurvePoint[] {
  const points = gates.flatMap(({ multiple, leastS }): readonly CurvePoint[] =>
    leastS === null ? [] : [[multiple * ratedA, leastS]],
  );
  const last = points.at(-1);
  return last === undefined ? [] : [...points, [endA, last[1] * (last[0] / endA) ** 2]];
}

/** Heat alone decides from the current at which it trips: one straight line. */
const resettableCurve = (ratedA: number, endA: number): readonly CurvePoint[] =>
  [TRIPS_AT * ratedA, endA].map((amps): CurvePoint => [amps, resettableOpensS(amps / ratedA)]);
/** Multiple from which `resettableOpensS` has an end. */
const TRIPS_AT = 2;

/** Points of a curve that is not straight on logarithmic axes. */
const HARM_POINTS = 48;

/** Straight above the wire's lasting limit, by k²S² ÷ I² at high currents. */
function harmCurve(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
  { weakest }: FuseRating,
  endA: number,
): readonly CurvePoint[] {
  const wires = [...harnesses.values()].flatMap((harness) => harness.wires);
  const type = wires.find((wire) => wire.id === weakest?.wireId)?.wireType;
  if (weakest === null || type === undefined || !(weakest.limitA > 0)) return [];
  const shortC = shortCircuitC(type.insulation);
  const strength = {
    ...weakest,
    insulationC: type.temperature_c,
    shortC,
    airC: machine.shop.numbers.ambient_c,
  };
  return Array.from({ length: HARM_POINTS + 1 }, (_, i): CurvePoint => {
    const amps = weakest.limitA * (endA / weakest.limitA) ** (i / HARM_POINTS);
    return [amps, harmS(strength, amps)];
  }).filter(([, seconds]) => Number.isFinite(seconds));
}

function pulsesOf(
  machine: Machine,
  solution: Pick<ElectricSolution, "loads">,
  loadIds: readonly string[],
): readonly FusePulse[] {
  const activity = new Map(machine.book.tables.activity.map((row) => [row.item, row]));
  return loadIds.flatMap((loadId): readonly FusePulse[] => {
    const volts = solution.loads.get(loadId);
    const row = volts === undefined ? undefined : activity.get(volts.itemId);
    if (volts === undefined || row === undefined || row.pulse_ms === null || row.pulse_ms === 0) return [];
    const seconds = row.pulse_ms / 1000;
    return [{ loadId, amps: volts.amps.most, seconds, aMinute: (usageOf(row).pulseShare * 60) / seconds }];
  });
}
