export * from "./books.ts";
export * from "./changes.ts";
export * from "./events.ts";
export * from "./jobs.ts";
export { openApi } from "./open-api.ts";
export * from "./people.ts";
export * from "./problem.ts";
export * from "./routes.ts";
export { bookId, plainText, requestId, utcTime } from "./text.ts";
