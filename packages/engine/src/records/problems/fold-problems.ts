import type { Fact, KeptProblem, ProblemNote } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import { byTime, corrected } from "../units/index.ts";

/** A release of a book, as far as problems ask for it. */
export interface ReleasedAt {
  readonly name: string;
  /** Number of the change set that it is of. */
  readonly changeNo: number;
}

type Draft = Omit<KeptProblem, "state" | "revision" | "seen" | "seenSince">;

/** First release that has a change; null while there is none. */
export const revisionWith = (changeNo: number, releases: readonly ReleasedAt[]): string | null =>
  [...releases]
    .filter((release) => release.changeNo >= changeNo)
    .sort((a, b) => a.changeNo - b.changeNo || compareText(a.name, b.name))[0]?.name ?? null;

/**
 * Problems with what was seen, tried, measured and decided, and how they ended. Facts may come in any order; they are taken
 * by the time of the device, and what was corrected does not count. A problem ends with the last record that says so; of two
 * with one name the first counts. What speaks of a problem that nobody wrote down is left out.
 * @param releases of the book, in any order
 * @returns open ones first, then decided, then ended; of each the one with the last record first
 */
export function foldProblems(
  facts: readonly Fact[],
  releases: readonly ReleasedAt[],
): readonly KeptProblem[] {
  const gone = corrected(facts);
  const inTime = facts.filter(({ stream, seq }) => !gone.has(`${stream} ${seq}`)).sort(byTime);
  const drafts = new Map<string, Draft>();
  for (const { body, ...fact } of inTime)
    if (body.kind === "problem" && !drafts.has(body.problem)) {
      const { kind: _, seenOn: unit = null, run = null, picture = null, ...said } = body;
      drafts.set(body.problem, { ...said, ...sourceOf(fact), unit, run, picture, notes: [], ended: null });
    }
  // Clocks of devices differ: a note may be older than its problem, and belongs to it all the same.
  for (const { body, ...fact } of inTime) {
    const draft = "problem" in body ? drafts.get(body.problem) : undefined;
    if (draft === undefined) continue;
    if (body.kind === "problem-note") {
      const { did, says, seenOn: unit = null, picture = null } = body;
      draft.notes.push({ ...sourceOf(fact), did, says, unit, picture });
    } else if (body.kind === "problem-ended")
      draft.ended = {
        ...{ ...sourceOf(fact), how: body.how, why: body.why },
        changeNo: body.how === "changed" ? (body.changeNo ?? null) : null,
      };
  }
  return [...drafts.values()].map((draft) => finished(draft, releases)).sort(openFirst);
}

const sourceOf = ({ stream, seq, at, person }: Omit<Fact, "body">) => ({ stream, seq, at, person });

function finished(draft: Draft, releases: readonly ReleasedAt[]): KeptProblem {
  const { notes, ended } = draft;
  const seen = notes.filter(({ did }) => did === "seen");
  return {
    ...draft,
    state: ended !== null ? "ended" : notes.some(({ did }) => did === "decided") ? "decided" : "open",
    revision: ended?.changeNo == null ? null : revisionWith(ended.changeNo, releases),
    seen: seen.length,
    seenSince: ended === null ? 0 : seen.filter(({ at }) => at > ended.at).length,
  };
}

const RANK: Readonly<Record<KeptProblem["state"], number>> = { open: 0, decided: 1, ended: 2 };

const lastAt = ({ at, notes, ended }: KeptProblem): string =>
  [at, ...notes.map((note: ProblemNote) => note.at), ended?.at ?? at].reduce((a, b) => (a < b ? b : a));

const openFirst = (a: KeptProblem, b: KeptProblem): number =>
  RANK[a.state] - RANK[b.state] || compareText(lastAt(b), lastAt(a)) || compareText(a.problem, b.problem);
