import { type KeptProblem, PROBLEM_SOURCES, PROBLEM_STATES, PROBLEM_SUBJECTS } from "@pinwright/contract";

/** What is asked of the list of problems; blank: all. */
export interface ProblemFilter {
  readonly state: KeptProblem["state"] | "";
  readonly from: KeptProblem["from"] | "";
  readonly about: KeptProblem["about"][number]["kind"] | "";
  readonly text: string;
}

/** The filter that an address names. */
export const filterOf = (params: URLSearchParams): ProblemFilter => ({
  state: PROBLEM_STATES.find((one) => one === params.get("state")) ?? "",
  from: PROBLEM_SOURCES.find((one) => one === params.get("from")) ?? "",
  about: PROBLEM_SUBJECTS.find((one) => one === params.get("kind")) ?? "",
  text: params.get("text") ?? "",
});

/** When something was last recorded of a problem. */
export const lastAt = ({ at, notes, ended }: KeptProblem): string =>
  [at, ...notes.map((note) => note.at), ended?.at ?? at].reduce((a, b) => (a < b ? b : a));

/** Problems that a filter lets through, in the order in which they came. */
export function chosenProblems(
  problems: readonly KeptProblem[],
  { state, from, about, text }: ProblemFilter,
): readonly KeptProblem[] {
  const typed = text.trim().toLowerCase();
  return problems.filter(
    (one) =>
      (state === "" || one.state === state) &&
      (from === "" || one.from === from) &&
      (about === "" || one.about.some(({ kind }) => kind === about)) &&
      (typed === "" ||
        [
          one.says,
          one.unit ?? "",
          ...one.about.map(({ id }) => id),
          ...one.notes.map(({ says }) => says),
        ].some((said) => said.toLowerCase().includes(typed))),
  );
}

/** Problems that are not ended and concern any of some ids; those about the whole machine concern everything. */
export const openAbout = (
  problems: readonly KeptProblem[],
  ids: ReadonlySet<string> | null,
): readonly KeptProblem[] =>
  problems.filter(
    ({ state, about }) =>
      state !== "ended" && (ids === null || about.some(({ kind, id }) => kind === "machine" || ids.has(id))),
  );

/** What was decided last; blank: nothing. */
export const decisionOf = ({ notes }: KeptProblem): string =>
  notes.findLast(({ did }) => did === "decided")?.says ?? "";
