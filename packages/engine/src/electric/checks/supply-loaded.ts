import { type Finding, makeFinding, type SupplyRating } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";

/** Share of its voltage that a supply's output may lose in a peak. Common practice, no source. */
const SAG = 0.1;

/**
 * `supply-overloaded`: a supply gives more than its rating all the time. `supply-peak`: its worst moment is more than
 * its limit, and its capacitors do not hold the difference, until enough pulses have ended, without a sag of 10 %.
 */
export function supplyLoaded(facts: ElectricFacts): readonly Finding[] {
  return [...facts.ratings.supplies.values()].flatMap((supply) => [
    ...overloaded(supply),
    ...peak(facts, supply),
  ]);
}

function overloaded(supply: SupplyRating): readonly Finding[] {
  if (supply.headroomA >= 0) return [];
  const numbers = {
    rms_a: rounded(supply.rmsA),
    hold_a: rounded(supply.holdA),
    steady_a: rounded(supply.steadyA),
    rated_a: supply.ratedA,
  };
  return [makeFinding("supply-overloaded", "error", [supply.supplyId], numbers)];
}

function peak({ machine, solution }: ElectricFacts, supply: SupplyRating): readonly Finding[] {
  const row = machine.book.tables.supplies.find(({ id }) => id === supply.supplyId);
  const { limitA, worstA } = supply;
  if (row === undefined || row.limit_mode === "none" || limitA === null || worstA <= limitA) return [];
  const pulses = new Map(machine.book.tables.activity.map(({ item, pulse_ms }) => [item, pulse_ms ?? 0]));
  const itemOf = new Map(machine.elements.map((element) => [element.id, element.itemId]));
  const budget = solution.supplies.get(supply.supplyId);
  const pulsed = (budget?.parts ?? []).map(({ loadId, amps }) => ({
    amps,
    seconds: (pulses.get(itemOf.get(loadId) ?? "") ?? 0) / 1000,
  }));
  const { seconds, joules } = excess(pulsed, worstA, limitA, row.volts);
  const neededJ = joules;
  const heldJ = (row.stored_j ?? 0) * (1 - (1 - SAG) ** 2);
  if (neededJ <= heldJ) return [];
  const numbers = {
    worst_a: rounded(worstA),
    limit_a: limitA,
    volts: row.volts,
    pulse_ms: finite(seconds * 1000),
    needed_j: finite(neededJ),
    held_j: rounded(heldJ),
    stored_j: row.stored_j ?? 0,
    loads: pulsed.filter(({ amps }) => amps > 0).length,
  };
  return [makeFinding("supply-peak", "warning", [supply.supplyId], numbers)];
}

const finite = (value: number): number | string => (Number.isFinite(value) ? rounded(value) : "∞");

/**
 * For how long a moment draws more than the limit, and the energy beyond it, as its loads end their pulses one by one:
 * for ever when what is always on is more than the limit by itself.
 */
function excess(
  parts: readonly { readonly amps: number; readonly seconds: number }[],
  worstA: number,
  limitA: number,
  volts: number,
): { readonly seconds: number; readonly joules: number } {
  let [left, fromS, joules] = [worstA, 0, 0];
  for (const { amps, seconds } of parts.toSorted((p, q) => p.seconds - q.seconds)) {
    // What has no pulse is always on.
    if (seconds === 0) continue;
    if (left <= limitA) break;
    joules += (left - limitA) * volts * (seconds - fromS);
    fromS = seconds;
    left -= amps;
  }
  if (left > limitA) return { seconds: Number.POSITIVE_INFINITY, joules: Number.POSITIVE_INFINITY };
  return { seconds: fromS, joules };
}
