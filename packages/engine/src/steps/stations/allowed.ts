import type { UnplacedStep, WorkStep } from "../../model/index.ts";
import { MECHANISM_SKILL, type WorkPlace } from "./places.ts";
import type { PlacedStep } from "./share.ts";

/** Steps of the two lines, each with its allowed places counted along its own. */
export interface Allotted {
  readonly beside: readonly PlacedStep[];
  readonly along: readonly PlacedStep[];
  readonly unplaced: readonly UnplacedStep[];
}

/** Work that is done at the mechanism benches: they may build ahead of the line. */
export const isBenchWork = (step: WorkStep): boolean =>
  step.kind === "bench" || step.skill === MECHANISM_SKILL;

/**
 * Which places may do which steps: those of the station that a step is fixed to as long as anybody is there, else
 * those with its skill. Work on mechanisms goes to the benches beside the line when there are any, and only that.
 */
export function allot(steps: readonly WorkStep[], places: readonly WorkPlace[], bySkill: boolean): Allotted {
  const numbers = { beside: new Map<string, number>(), along: new Map<string, number>() };
  for (const place of places) {
    const own = place.beside ? numbers.beside : numbers.along;
    own.set(place.id, own.size);
  }
  const beside: PlacedStep[] = [];
  const along: PlacedStep[] = [];
  const unplaced: UnplacedStep[] = [];
  for (const step of steps) {
    const allowed = placesOf(step, places, bySkill);
    const first = allowed[0];
    if (first === undefined) {
      unplaced.push({ stepId: step.id, skill: step.skill, why: "skill" });
      continue;
    }
    const own = first.beside ? numbers.beside : numbers.along;
    const indices = allowed.flatMap((place) => own.get(place.id) ?? []);
    const entry = { step, places: indices.length === own.size ? null : indices };
    (first.beside ? beside : along).push(entry);
  }
  return { beside, along, unplaced };
}

/** All of them stand beside the line, or none. */
function placesOf(step: WorkStep, places: readonly WorkPlace[], bySkill: boolean): readonly WorkPlace[] {
  const pinned = places.filter((place) => place.stationId === step.stationId);
  if (step.stationId !== null && pinned.length > 0) return pinned;
  const beside = isBenchWork(step) && places.some((place) => place.beside);
  const sort = places.filter((place) => place.beside === beside);
  if (!bySkill || step.skill === "") return sort;
  const able = places.filter((place) => place.skills.includes(step.skill));
  const ableHere = able.filter((place) => place.beside === beside);
  return ableHere.length > 0 ? ableHere : able;
}
