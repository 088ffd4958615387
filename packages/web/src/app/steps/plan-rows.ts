import type { AskAnswer, ViewEntry } from "../../worker/protocol.ts";
import type { Entries } from "../book/desk-client.ts";

export type Plan = NonNullable<AskAnswer<"stationPlan">>;
export type Load = Plan["loads"][number];
export type Question = Plan["question"];
type Step = ViewEntry<"stepLines">;

/** A usual day on the stations of the book: everybody is there and can do everything. */
export const USUAL: Question = {
  ask: { kind: "book-stations" },
  absent: [],
  longerPct: 0,
  skills: false,
};

/** Whether a day is as usual. */
export const isUsual = ({ absent, longerPct, skills }: Question): boolean =>
  absent.length === 0 && longerPct === 0 && !skills;

/** The same question on a usual day. */
export const onUsualDay = ({ ask }: Question): Question => ({ ...USUAL, ask });

/** Seconds that a step takes on the day of a question. */
export const secondsOn = ({ longerPct }: Question, { seconds }: Pick<Step, "seconds">): number =>
  seconds * (1 + longerPct / 100);

/** The steps of a place or of a whole station, in the order of assembly. */
export function stepsOfPlace(plan: Plan, steps: Entries<"stepLines">, placeId: string): readonly Step[] {
  const ids = plan.loads
    .filter((load) => load.placeId === placeId || load.stationId === placeId)
    .flatMap(({ stepIds }) => stepIds);
  return ids.flatMap((id) => steps.get(id) ?? []).sort((a, b) => a.number - b.number);
}

/** Which place does each step. */
export function placesOfSteps(plan: Plan): ReadonlyMap<string, Load> {
  return new Map(plan.loads.flatMap((load) => load.stepIds.map((id) => [id, load] as const)));
}

/** The place of a station that has least to do; undefined when nobody is there. */
export const freestOf = (plan: Plan, stationId: string): Load | undefined =>
  plan.loads
    .filter((load) => load.stationId === stationId)
    .reduce<Load | undefined>(
      (least, load) => (least === undefined || load.seconds < least.seconds ? load : least),
      undefined,
    );

/**
 * Steps that would stand the wrong way round along the line if a step went to another place: they come before it and
 * are done further on, or after it and nearer to the start. The balance would move them too.
 */
export function wrongWayRound(
  plan: Plan,
  steps: Entries<"stepLines">,
  step: Step,
  placeId: string,
): readonly Step[] {
  const along = plan.loads.filter((load) => !load.beside);
  const places = new Map(along.flatMap((load, i) => load.stepIds.map((id) => [id, i] as const)));
  const to = along.findIndex((load) => load.placeId === placeId);
  if (to < 0) return [];
  const before = step.after.flatMap(({ id }) => steps.get(id) ?? []);
  const after = [...steps.values()].filter((one) => one.after.some(({ id }) => id === step.id));
  return [
    ...before.filter((one) => (places.get(one.id) ?? to) > to),
    ...after.filter((one) => (places.get(one.id) ?? to) < to),
  ];
}

/**
 * The plan with one step at another place and all else as it is: what is shown while the step is in the hand, and
 * until the balance has looked again.
 */
export function withMoved(plan: Plan, step: Step, placeId: string): Plan {
  const from = plan.loads.find(({ stepIds }) => stepIds.includes(step.id));
  if (from === undefined || from.placeId === placeId) return plan;
  const seconds = secondsOn(plan.question, step);
  const loads = plan.loads.map((load) => {
    if (load === from)
      return {
        ...load,
        stepIds: load.stepIds.filter((id) => id !== step.id),
        seconds: load.seconds - seconds,
      };
    return load.placeId === placeId
      ? { ...load, stepIds: [...load.stepIds, step.id], seconds: load.seconds + seconds }
      : load;
  });
  return { ...plan, loads, taktS: loads.reduce((most, load) => Math.max(most, load.seconds), 0) };
}
