import {
  type FaultFinder,
  type FaultSession,
  lookKey,
  type SessionLook,
  type Symptom,
} from "../../packages/engine/src/index.ts";

/** How somebody who never errs came to a cause. */
export interface Found {
  /** Looks and measurements, and what was mended in vain: each is a question with a yes or a no. */
  readonly questions: number;
  readonly minutes: number;
  readonly byKind: Readonly<Record<string, number>>;
  /** Milliseconds of each answer. */
  readonly answersMs: readonly number[];
  /** False: given up. */
  readonly isFound: boolean;
}

const MOST_QUESTIONS = 60;

/**
 * Goes on with what is proposed until the cause is named as the likeliest and nothing better is proposed; what is named and
 * is not the cause is mended in vain, and that is said.
 * @param symptoms what functions do other than work, by their id
 * @param says what a look says
 * @param isTrue whether a suspect, by its index, is the cause or cannot be told from it by any look
 */
export function sessionOfTruth(
  finder: FaultFinder,
  functionIds: readonly string[],
  symptoms: ReadonlyMap<string, Symptom>,
  says: (look: SessionLook) => boolean,
  isTrue: (suspect: number) => boolean,
  idOf: (suspect: number) => string,
): Found {
  const seen = Object.fromEntries(functionIds.map((id) => [id, symptoms.get(id) ?? "works"] as const));
  let session: FaultSession = { seen, done: [] };
  const byKind: Record<string, number> = {};
  const answersMs: number[] = [];
  let minutes = 0;
  for (let questions = 0; ; questions++) {
    const began = performance.now();
    const answer = finder.answer(session);
    answersMs.push(performance.now() - began);
    const next = answer.state === "looking" ? answer.looks[0] : undefined;
    const isFound = next === undefined && isTrue(likeliestOf(answer.causes[0]?.parts ?? []));
    if (isFound || questions >= MOST_QUESTIONS) return { questions, minutes, byKind, answersMs, isFound };
    if (next === undefined) {
      const suspect = idOf(likeliestOf(answer.causes[0]?.parts ?? []));
      session = { seen, done: [...session.done, { what: "mended", suspect, helped: false }] };
      byKind.mended = (byKind.mended ?? 0) + 1;
      continue;
    }
    const { look } = next;
    minutes += next.minutes;
    byKind[look.kind] = (byKind[look.kind] ?? 0) + 1;
    if (session.done.some((one) => one.what === "looked" && lookKey(one.look) === lookKey(look)))
      throw new Error(`${lookKey(look)} is asked twice`);
    session = {
      seen,
      done: [...session.done, { what: "looked", look, answer: says(look) ? "yes" : "no" }],
    };
  }
}

const likeliestOf = (
  parts: readonly (readonly { readonly suspect: number; readonly probability: number }[])[],
): number => parts.flat().toSorted((p, q) => q.probability - p.probability)[0]?.suspect ?? -1;
