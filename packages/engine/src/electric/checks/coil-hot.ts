import { type Finding, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, percent, rounded } from "./facts.ts";

/** `coil-hot`: a minute of hard play, on and on, heats a coil past its class. `coil-held`: one hold does. */
export function coilHot({ ratings, machine }: ElectricFacts): readonly Finding[] {
  const airC = machine.shop.numbers.ambient_c;
  return [...ratings.coils.values()].flatMap((coil) => {
    const subjects = [coil.itemId, coil.elementId];
    const { allowedDuty, holdS, askedHoldS, limitC, kelvinPerWatt } = coil;
    if (allowedDuty !== null && coil.duty > allowedDuty) {
      const numbers = {
        duty_pct: percent(coil.duty),
        allowed_pct: percent(allowedDuty),
        mean_w: rounded(coil.meanW),
        rise_k_w: rounded(kelvinPerWatt ?? 0),
        ambient_c: airC,
        limit_c: limitC ?? 0,
        reaches_c: rounded(airC + coil.meanW * (kelvinPerWatt ?? 0)),
      };
      return [makeFinding("coil-hot", "error", subjects, numbers)];
    }
    if (holdS === null || askedHoldS <= holdS) return [];
    const numbers = { asked_s: askedHoldS, hold_s: rounded(holdS), limit_c: limitC ?? 0 };
    return [makeFinding("coil-held", "error", subjects, numbers)];
  });
}
