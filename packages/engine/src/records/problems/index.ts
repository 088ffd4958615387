export { foldProblems, type ReleasedAt, revisionWith } from "./fold-problems.ts";
