export * from "./bench-routes.ts";
export * from "./books.ts";
export { canonicalJson } from "./canonical.ts";
export * from "./changes.ts";
export type { PrintChanges } from "./compare-routes.ts";
export { printChangesSchema } from "./compare-routes.ts";
export * from "./events.ts";
export * from "./facts.ts";
export * from "./files.ts";
export * from "./floor-routes.ts";
export * from "./gate.ts";
export * from "./instrument-routes.ts";
export * from "./jobs.ts";
export { type Measurable, measureFor, type Wanted } from "./measures.ts";
export { openApi } from "./open-api.ts";
export * from "./people.ts";
export * from "./problem.ts";
export {
  PROBLEM_DEEDS,
  PROBLEM_SOURCES,
  PROBLEM_SUBJECTS,
  type ProblemAbout,
  type ProblemDeed,
  type ProblemSource,
  type ProblemSubject,
} from "./problem-facts.ts";
export * from "./problem-routes.ts";
export * from "./record-routes.ts";
export * from "./record-sheet-routes.ts";
export * from "./release-routes.ts";
export * from "./releases.ts";
export type { Route } from "./route.ts";
export * from "./routes.ts";
export * from "./service-book-routes.ts";
export type { PersonSession } from "./session-routes.ts";
export * from "./sheet-code.ts";
export { bookId, plainText, requestId, utcTime } from "./text.ts";
export { MOST_ROW_SETS, MOST_ROWS } from "./thing-routes.ts";
