import { type Finding, type LampRating, makeFinding } from "../../model/index.ts";
import { multiplexedA, seriesResistor } from "../physics/lamp.ts";
import { type ElectricFacts, percent, rounded } from "./facts.ts";

/** An LED without a peak rating stands this much more than its current. Common practice, no source. */
const USUAL_PEAK = 1.25;

/** `led-current`: an LED gets more than it stands. `resistor-hot`: its resistor turns more to heat than it is made for. */
export function ledCurrent({ ratings }: ElectricFacts): readonly Finding[] {
  return [...ratings.lamps.values()].flatMap((lamp) => [...current(lamp), ...resistor(lamp)]);
}

function current(lamp: LampRating): readonly Finding[] {
  const { amps, duty, ratedA, peakA } = lamp;
  const most = peakA ?? (ratedA === null ? null : (ratedA * USUAL_PEAK) / Math.max(duty, 0.01));
  if (most === null || amps <= most) return [];
  const numbers = {
    volts: rounded(lamp.volts),
    forward_v: lamp.forwardV,
    ohm: lamp.ohm,
    most_a: rounded(amps),
    stands_a: rounded(most),
    duty_pct: percent(duty),
    e24_ohm: seriesResistor(lamp.volts, lamp.forwardV, meantA(lamp, most))?.ohm ?? "-",
  };
  return [makeFinding("led-current", "warning", [lamp.itemId, lamp.elementId], numbers)];
}

/** Current that the book means while the lamp is on, A; never more than it stands. */
const meantA = ({ ratedA, duty }: LampRating, standsA: number): number =>
  ratedA === null || duty === 0 ? standsA : Math.min(standsA, multiplexedA(ratedA, duty));

function resistor(lamp: LampRating): readonly Finding[] {
  if (lamp.ratedW === null || lamp.watts <= lamp.ratedW) return [];
  const numbers = {
    most_a: rounded(lamp.amps),
    ohm: lamp.ohm,
    duty_pct: percent(lamp.duty),
    heat_w: rounded(lamp.watts),
    rated_w: lamp.ratedW,
  };
  return [makeFinding("resistor-hot", "warning", [lamp.itemId, lamp.elementId], numbers)];
}
