import type { LearntLoad, Machine, StationPlan, StationScenario } from "../../model/index.ts";
import { wrightUnit } from "./learning.ts";
import { bookPlaces } from "./places.ts";
import { planStations, type Stepped, USUAL_QUESTION, usualBalancing } from "./plan.ts";

/** Per cent by which everything takes longer on a bad day: common practice, no source. */
const LONGER_PCT = 30;

/**
 * The stations of the book on a usual day, with each of its persons absent in turn, with everything 30 % longer, and
 * with only some able to do some work. Nothing when the book has no stations.
 */
export function stationScenarios(line: Stepped): readonly StationScenario[] {
  const places = bookPlaces(line.machine, []);
  if (places.length === 0) return [];
  const balancing = usualBalancing();
  const plan = (change: Partial<StationPlan["question"]>): StationPlan =>
    planStations(line, { ...USUAL_QUESTION, ...change }, balancing);
  const absences = places.map(({ id }) => ({ id: `absent:${id}`, plan: plan({ absent: [id] }) }));
  const worst = absences.reduce<{ readonly id: string; readonly plan: StationPlan } | undefined>(
    (most, absence) => (most === undefined || isWorse(absence.plan, most.plan) ? absence : most),
    undefined,
  );
  return [
    { id: "usual", kind: "usual", plan: plan({}), worst: false },
    ...absences.map((absence) => ({ ...absence, kind: "absent" as const, worst: absence === worst })),
    { id: "longer", kind: "longer", plan: plan({ longerPct: LONGER_PCT }), worst: false },
    { id: "skills", kind: "skills", plan: plan({ skills: true }), worst: false },
  ];
}

/** What nobody can do is worse than what takes longer. */
const isWorse = (a: StationPlan, b: StationPlan): boolean =>
  a.unplaced.length > b.unplaced.length || (a.unplaced.length === b.unplaced.length && a.taktS > b.taktS);

/** Machines of a run at which loads are shown. */
export const USUAL_UNITS: readonly number[] = [1, 2, 5, 10, 20, 50, 100];

/**
 * The loads of a plan bench by bench over a run, by Wright's curve: the plan's seconds are those of the first machine.
 * @param pct what the average falls to when the number built doubles; else the shop's
 */
export function learntLoads(
  machine: Machine,
  plan: StationPlan,
  units: readonly number[] = USUAL_UNITS,
  pct: number = machine.shop.numbers.learning_pct,
): readonly LearntLoad[] {
  return units.map((unit) => {
    const factor = wrightUnit(unit, pct);
    const seconds = plan.loads.map((load) => Math.round(load.seconds * factor * 10) / 10);
    return { unit, factor, seconds, taktS: seconds.reduce((most, s) => Math.max(most, s), 0) };
  });
}
