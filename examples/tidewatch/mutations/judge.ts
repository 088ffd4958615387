import { acceptSubject, type Finding } from "@pinwright/engine";
import type { Consequence, Mutation, Plan } from "./mutation.ts";

const RANK: Readonly<Record<Finding["severity"], number>> = { note: 0, warning: 1, error: 2 };

/** What came of a mutation. */
export interface Verdict {
  /** Findings of its rule that name the victim: without one the fault was not caught. */
  readonly caught: readonly Finding[];
  /** Declared consequences that newly came. */
  readonly followed: readonly Finding[];
  /** New findings that nobody declared. */
  readonly strays: readonly Finding[];
  /** Findings that are gone and that nobody said would be. */
  readonly lost: readonly Finding[];
}

/**
 * Findings of `now` that `then` has not, or has milder or accepted. A finding is the same when its rule, its ids and
 * what else tells it apart are.
 */
export function newlyFound(then: readonly Finding[], now: readonly Finding[]): readonly Finding[] {
  const known = new Map(then.map((finding) => [acceptSubject(finding), finding]));
  return now.filter((finding) => {
    const before = known.get(acceptSubject(finding));
    return (
      before === undefined ||
      RANK[finding.severity] > RANK[before.severity] ||
      (before.accepted !== null && finding.accepted === null)
    );
  });
}

const isAmong = (declared: readonly Consequence[], finding: Finding): boolean =>
  declared.some(({ rule, where }) => rule === finding.rule && where(finding));

/** Holds what is found after a mutation against what it was to bring. */
export function judge(
  { rule }: Pick<Mutation, "rule">,
  { victim, follows = [], ends = [] }: Plan,
  then: readonly Finding[],
  now: readonly Finding[],
): Verdict {
  const fresh = newlyFound(then, now);
  const isFault = (finding: Finding): boolean =>
    finding.rule === rule && victim.every((id) => finding.subjects.includes(id));
  const caught = fresh.filter(isFault);
  const others = fresh.filter((finding) => !isFault(finding));
  const subjects = new Set(now.map(acceptSubject));
  const gone = then.filter((finding) => !subjects.has(acceptSubject(finding)));
  return {
    caught,
    followed: others.filter((finding) => isAmong(follows, finding)),
    strays: others.filter((finding) => !isAmong(follows, finding)),
    lost: gone.filter((finding) => !isFault(finding) && !isAmong([...follows, ...ends], finding)),
  };
}
