import type { BalanceEffort } from "@pinwright/kernel";
import type { LineResult, StationPlan, StationQuestion, UnplacedStep, WorkStep } from "../../model/index.ts";
import { allot, isBenchWork } from "./allowed.ts";
import { onPlaces } from "./divide.ts";
import { Balancing, boundOf, free, type Half, loadsOf, type Parts } from "./half.ts";
import { bookPlaces, plainPlaces, type WorkPlace } from "./places.ts";
import { shareOf } from "./share.ts";

/** What a plan is made from. */
export type Stepped = Pick<LineResult, "machine" | "steps">;

/** Counted steps of the search of one balance; what it leaves uneven is evened out after it. */
const USUAL_EFFORT: BalanceEffort = { steps: 200_000 };

/** Balances that are made once for several questions; each with the usual effort, so that all show the same plan. */
export const usualBalancing = (): Balancing => new Balancing(USUAL_EFFORT);

/** The stations of the book on a usual day; everybody can do everything. */
export const USUAL_QUESTION: StationQuestion = {
  ask: { kind: "book-stations" },
  absent: [],
  longerPct: 0,
  skills: false,
};

/**
 * Shares the steps out to people.
 *
 * The playfield goes along the line from place to place, so a step is done at the place of every step before it or
 * further on. Mechanisms are built at benches beside the line, ahead of it, in any order. A station with several people
 * is as many places. On the stations of the book a step that is fixed to a station is done there, as long as anybody is
 * there; other steps go where their skill is, when skills are asked for. Places that no station stands for can do
 * everything, and a missing person is one place less.
 * @throws RangeError when the takt is not positive or there is no place
 */
export function planStations(
  { machine, steps: { steps } }: Stepped,
  question: StationQuestion,
  balancing: Balancing = usualBalancing(),
): StationPlan {
  const factor = 1 + question.longerPct / 100;
  const { ask, absent } = question;
  const parts =
    ask.kind === "book-stations"
      ? onStations(steps, bookPlaces(machine, absent), question.skills, factor, balancing)
      : ask.kind === "least-takt"
        ? onPlaces(steps, ask.places - new Set(absent).size, factor, balancing)
        : withinTakt(steps, ask.taktS, factor, balancing);
  const { loads, lowerBound, isProven, unplaced, waysBack } = parts;
  const taktS = loads.reduce((most, load) => Math.max(most, load.seconds), 0);
  return { question, loads, taktS, lowerBound, isProven, unplaced, waysBack };
}

function onStations(
  steps: readonly WorkStep[],
  places: readonly WorkPlace[],
  bySkill: boolean,
  factor: number,
  balancing: Balancing,
): Parts {
  const { beside, along, unplaced } = allot(steps, places, bySkill);
  const benches = places.filter((place) => place.beside);
  const line = places.filter((place) => !place.beside);
  const one = balancing.leastTakt(shareOf(steps, beside), benches.length, factor);
  const two = balancing.leastTakt(shareOf(steps, along), line.length, factor);
  const loads = new Map([...loadsOf(one, benches), ...loadsOf(two, line)].map((l) => [l.placeId, l]));
  return {
    loads: places.flatMap((place) => loads.get(place.id) ?? []),
    ...boundOf(Math.max(one.value, two.value), Math.max(one.lowerBound, two.lowerBound)),
    unplaced,
    waysBack: [...one.shared.waysBack, ...two.shared.waysBack],
  };
}

/** Fewest places for a takt, benches and line each by itself. */
function withinTakt(steps: readonly WorkStep[], taktS: number, factor: number, balancing: Balancing): Parts {
  const fits = (step: WorkStep): boolean => step.seconds * factor <= taktS;
  const unplaced = steps
    .filter((step) => !fits(step))
    .map((step): UnplacedStep => ({ stepId: step.id, skill: step.skill, why: "takt" }));
  const halfOf = (is: (step: WorkStep) => boolean): Half =>
    balancing.fewestPlaces(
      shareOf(steps, free(steps.filter((step) => is(step) && fits(step)))),
      taktS,
      factor,
    );
  const one = halfOf(isBenchWork);
  const two = halfOf((step) => !isBenchWork(step));
  const places = plainPlaces(one.value, two.value);
  return {
    loads: [...loadsOf(one, places.slice(0, one.value)), ...loadsOf(two, places.slice(one.value))],
    ...boundOf(one.value + two.value, one.lowerBound + two.lowerBound),
    unplaced,
    waysBack: [],
  };
}
