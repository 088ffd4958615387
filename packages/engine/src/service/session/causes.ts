import type { Seen, Sightings, Symptom } from "../faults/index.ts";
import type { Hypothesis } from "./hypotheses.ts";
import type { Cause, CauseSuspect } from "./session.ts";

const MOST_CAUSES = 8;

/** Hypotheses as causes: those of one class, or of one pair of classes, belong together. */
export function causesOf(
  known: readonly Hypothesis[],
  symptoms: readonly ReadonlyMap<number, Symptom>[],
  seen: Sightings,
): readonly Cause[] {
  const byClass = new Map<number, Hypothesis[]>();
  for (const one of known) {
    const list = byClass.get(one.at);
    if (list === undefined) byClass.set(one.at, [one]);
    else list.push(one);
  }
  const chance = (own: readonly Hypothesis[]): number => own.reduce((sum, { weight }) => sum + weight, 0);
  return [...byClass]
    .map(([at, own]) => ({ at, own, probability: chance(own) }))
    .sort((p, q) => q.probability - p.probability)
    .slice(0, MOST_CAUSES)
    .map(({ at, own, probability }): Cause => {
      const does = symptoms[at] ?? new Map<number, Symptom>();
      const said = [...seen];
      return {
        parts: (own[0]?.suspects ?? []).map((_, side) => sharesOf(own, side)),
        probability,
        explains: said.flatMap(([f, what]) => (what !== "works" && does.has(f) ? [f] : [])),
        alsoBreaks: [...does.keys()].filter((f) => !seen.has(f)),
        against: said.flatMap(([f, what]) => (fits(does.get(f) ?? "works", what) ? [] : [f])),
      };
    });
}

/** What comes and goes fits whatever is broken. */
const fits = (does: Symptom, said: Seen): boolean =>
  said === "sometimes" ? does !== "works" : does === said;

/** Suspects on one side of hypotheses, with their chance. */
function sharesOf(own: readonly Hypothesis[], side: number): readonly CauseSuspect[] {
  const found = new Map<number, number>();
  for (const { suspects, weight } of own) {
    const s = suspects[side];
    if (s !== undefined) found.set(s, (found.get(s) ?? 0) + weight);
  }
  return [...found]
    .map(([suspect, probability]) => ({ suspect, probability }))
    .sort((p, q) => q.probability - p.probability || p.suspect - q.suspect);
}
