import { z } from "zod";
import {
  newReleaseSchema,
  printStateSchema,
  releasedSheetSchema,
  releaseFaultSchema,
  releaseItemSchema,
  releaseJobSchema,
  releaseSchema,
} from "./releases.ts";
import { type Route, route } from "./route.ts";

/** Released revisions. There is no route that changes or takes away one. */
export const RELEASE_ROUTES = {
  releases: route({
    method: "get",
    path: "/api/books/:book/releases",
    about: "Releases of a book, the newest first.",
    role: "viewer",
    answer: z.array(releaseSchema),
  }),
  addRelease: route({
    method: "post",
    path: "/api/books/:book/releases",
    about:
      "Releases the book as it is now, in the background; progress comes as events. Refused while something stands in the way.",
    role: "designer",
    body: newReleaseSchema,
    answer: releaseJobSchema,
  }),
  releaseJobs: route({
    method: "get",
    path: "/api/release-jobs",
    about: "Releases that are being made or were made lately, last first.",
    role: "viewer",
    answer: z.array(releaseJobSchema),
  }),
  releaseJob: route({
    method: "get",
    path: "/api/release-jobs/:job",
    about: "One of them.",
    role: "viewer",
    answer: releaseJobSchema,
  }),
  cancelReleaseJob: route({
    method: "delete",
    path: "/api/release-jobs/:job",
    about: "Stops making a release; then there is none.",
    role: "designer",
    answer: releaseJobSchema,
  }),
  release: route({
    method: "get",
    path: "/api/books/:book/releases/:release",
    about: "One release.",
    role: "viewer",
    answer: releaseSchema,
  }),
  releaseItems: route({
    method: "get",
    path: "/api/books/:book/releases/:release/items",
    about: "Everything that a release holds, each with its hash.",
    role: "viewer",
    answer: z.array(releaseItemSchema),
  }),
  releaseSheets: route({
    method: "get",
    path: "/api/books/:book/releases/:release/sheets",
    about: "Sheets of a release.",
    role: "viewer",
    answer: z.array(releasedSheetSchema),
  }),
  releaseSheet: route({
    method: "get",
    path: "/api/books/:book/releases/:release/sheets/:sheet",
    about: "A sheet of a release, written from what was composed then: a file, or its pages as JSON.",
    role: "viewer",
    query: z.strictObject({ format: z.enum(["pdf", "svg", "dxf", "xlsx", "csv", "json"]).default("pdf") }),
  }),
  releaseResults: route({
    method: "get",
    path: "/api/books/:book/releases/:release/results/:name",
    about: "Results as they were computed then, as JSON: `facts` of the machine, `findings`.",
    role: "viewer",
  }),
  releaseFile: route({
    method: "get",
    path: "/api/books/:book/releases/:release/files/:file",
    about: "A file that was made for the release, such as the one that faults are found with.",
    role: "viewer",
  }),
  releaseBook: route({
    method: "get",
    path: "/api/books/:book/releases/:release/rows",
    about: "All cells of the book as they were released.",
    role: "viewer",
    answer: z.record(z.string(), z.record(z.string(), z.record(z.string(), z.string()))),
  }),
  releaseExport: route({
    method: "get",
    path: "/api/books/:book/releases/:release/export",
    about: "A release as a ZIP: its manifest, all that it holds, and SHA256SUMS to check it with.",
    role: "viewer",
  }),
  checkReleases: route({
    method: "get",
    path: "/api/releases-check",
    about: "Whether every byte of every release is what was released.",
    role: "lead",
    answer: z.array(releaseFaultSchema),
  }),
  printState: route({
    method: "get",
    path: "/api/books/:book/print/:sheet/:print",
    about: "Whether a print still holds, by the first digits of its hash that its code has.",
    role: "viewer",
    answer: printStateSchema,
  }),
} as const satisfies Readonly<Record<string, Route>>;
