import { z } from "zod";
import { BENCH_ROUTES } from "./bench-routes.ts";
import {
  bookInfoSchema,
  bookPatchSchema,
  bookRowsSchema,
  foreignSheetSchema,
  importResultSchema,
  mappingSchema,
  newBookSchema,
  newSnapshotSchema,
  retryableSchema,
  snapshotSchema,
} from "./books.ts";
import { acknowledgedSchema, changeHeadSchema, changeRequestSchema, changeSetSchema } from "./changes.ts";
import { COMPARE_ROUTES } from "./compare-routes.ts";
import { bookFileSchema, checkSheetSchema, sendOutSchema } from "./files.ts";
import { FLOOR_ROUTES } from "./floor-routes.ts";
import { IN_PERSON_ROUTES } from "./in-person-routes.ts";
import { INSTRUMENT_ROUTES } from "./instrument-routes.ts";
import { jobSchema, sheetRequestSchema } from "./jobs.ts";
import {
  auditEntrySchema,
  newPersonSchema,
  personPatchSchema,
  personSchema,
  setUpSchema,
  signInSchema,
  statusSchema,
} from "./people.ts";
import { PROBLEM_ROUTES } from "./problem-routes.ts";
import { RECORD_ROUTES } from "./record-routes.ts";
import { RECORD_SHEET_ROUTES } from "./record-sheet-routes.ts";
import { RELEASE_ROUTES } from "./release-routes.ts";
import { type Route, route } from "./route.ts";
import { SERVICE_BOOK_ROUTES } from "./service-book-routes.ts";
import { SERVICE_PAGE_ROUTES } from "./service-page-routes.ts";
import { SESSION_ROUTES } from "./session-routes.ts";
import { THING_ROUTES } from "./thing-routes.ts";

const done = z.object({ done: z.literal(true) });
const number = (usual: number, max: number) => z.coerce.number().int().min(0).max(max).default(usual);

/** Everything that can be asked of the server. */
export const ROUTES = {
  ...RECORD_ROUTES,
  ...SESSION_ROUTES,
  ...RECORD_SHEET_ROUTES,
  ...FLOOR_ROUTES,
  ...BENCH_ROUTES,
  ...INSTRUMENT_ROUTES,
  ...IN_PERSON_ROUTES,
  ...RELEASE_ROUTES,
  ...COMPARE_ROUTES,
  ...SERVICE_BOOK_ROUTES,
  ...SERVICE_PAGE_ROUTES,
  ...PROBLEM_ROUTES,
  ...THING_ROUTES,
  status: route({
    method: "get",
    path: "/api/status",
    about: "Who is signed in, and how this server is reached.",
    role: "anyone",
    answer: statusSchema,
  }),
  setUp: route({
    method: "post",
    path: "/api/set-up",
    about: "Makes the first account, the owner's, and signs in.",
    role: "anyone",
    body: setUpSchema,
    answer: statusSchema,
  }),
  signIn: route({
    method: "post",
    path: "/api/sign-in",
    about: "Signs in with a password, or on the floor with a short code.",
    role: "anyone",
    body: signInSchema,
    answer: statusSchema,
  }),
  signOut: route({
    method: "post",
    path: "/api/sign-out",
    about: "Ends the session.",
    role: "anyone",
    answer: done,
  }),
  people: route({
    method: "get",
    path: "/api/people",
    about: "Everyone with an account.",
    role: "owner",
    answer: z.array(personSchema),
  }),
  addPerson: route({
    method: "post",
    path: "/api/people",
    about: "Makes an account.",
    role: "owner",
    body: newPersonSchema,
    answer: personSchema,
  }),
  changePerson: route({
    method: "patch",
    path: "/api/people/:person",
    about: "Changes an account; what is left out stays. Sessions of someone who may do less now end.",
    role: "owner",
    body: personPatchSchema,
    answer: personSchema,
  }),
  audit: route({
    method: "get",
    path: "/api/audit",
    about: "Who did what to accounts, sessions, books and back-ups, last first.",
    role: "owner",
    query: z.strictObject({
      before: number(Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER),
      limit: number(100, 500),
    }),
    answer: z.array(auditEntrySchema),
  }),
  books: route({
    method: "get",
    path: "/api/books",
    about: "Every book, the shop included.",
    role: "viewer",
    answer: z.array(bookInfoSchema),
  }),
  addBook: route({
    method: "post",
    path: "/api/books",
    about: "Makes a book: a blank one, or a copy of an example.",
    role: "designer",
    body: newBookSchema,
    answer: bookInfoSchema,
  }),
  changeBook: route({
    method: "patch",
    path: "/api/books/:book",
    about: "Puts a book away or takes it out again.",
    role: "owner",
    body: bookPatchSchema,
    answer: bookInfoSchema,
  }),
  rows: route({
    method: "get",
    path: "/api/books/:book/rows",
    about: "All cells of a book as they are now.",
    role: "viewer",
    answer: bookRowsSchema,
  }),
  changesSince: route({
    method: "get",
    path: "/api/books/:book/changes",
    about: "Change sets after a number, with their cells, first first; at most `limit` of them.",
    role: "viewer",
    query: z.strictObject({ since: number(0, Number.MAX_SAFE_INTEGER), limit: number(200, 1000) }),
    answer: z.array(changeSetSchema),
  }),
  change: route({
    method: "post",
    path: "/api/books/:book/changes",
    about:
      "Makes a change set, all or nothing. A cell that no longer says what `from` says refuses the whole set.",
    role: "lead",
    body: changeRequestSchema,
    answer: acknowledgedSchema,
  }),
  undo: route({
    method: "post",
    path: "/api/books/:book/undo",
    about: "Takes back the person's own last change set, where everything still is as that set left it.",
    role: "lead",
    body: retryableSchema,
    answer: changeSetSchema,
  }),
  redo: route({
    method: "post",
    path: "/api/books/:book/redo",
    about: "Makes again what the person took back last.",
    role: "lead",
    body: retryableSchema,
    answer: changeSetSchema,
  }),
  history: route({
    method: "get",
    path: "/api/books/:book/history",
    about: "Change sets without their cells, last first.",
    role: "viewer",
    query: z.strictObject({
      before: number(Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER),
      limit: number(100, 500),
    }),
    answer: z.array(changeHeadSchema),
  }),
  changeSet: route({
    method: "get",
    path: "/api/books/:book/history/:no",
    about: "One change set with its cells.",
    role: "viewer",
    answer: changeSetSchema,
  }),
  snapshots: route({
    method: "get",
    path: "/api/books/:book/snapshots",
    about: "Named states of a book, last first.",
    role: "viewer",
    answer: z.array(snapshotSchema),
  }),
  addSnapshot: route({
    method: "post",
    path: "/api/books/:book/snapshots",
    about: "Gives the present state of a book a name.",
    role: "designer",
    body: newSnapshotSchema,
    answer: snapshotSchema,
  }),
  restoreSnapshot: route({
    method: "post",
    path: "/api/books/:book/snapshots/:snapshot/restore",
    about: "Brings a book back to a named state, as one change set that can be undone.",
    role: "designer",
    body: retryableSchema,
    answer: importResultSchema,
  }),
  exportBook: route({
    method: "get",
    path: "/api/books/:book/export",
    about: "A book as a file: `zip` (the folder of CSV tables, packed) or `xlsx`.",
    role: "viewer",
    query: z.strictObject({ format: z.enum(["zip", "xlsx"]), snapshot: z.string().max(80).optional() }),
  }),
  importBook: route({
    method: "post",
    path: "/api/import",
    about: "Makes a book from a `.zip` or `.xlsx`, faults included.",
    role: "designer",
    query: z.strictObject({ name: z.string().max(200), rehearse: z.stringbool().default(false) }),
    takesFile: true,
    answer: importResultSchema,
  }),
  importInto: route({
    method: "post",
    path: "/api/books/:book/import",
    about:
      "Makes a book what a `.zip` or `.xlsx` says, as one change set; a rehearsal only tells what would change.",
    role: "designer",
    query: z.strictObject({ name: z.string().max(200), rehearse: z.stringbool().default(false) }),
    takesFile: true,
    answer: importResultSchema,
  }),
  bookFiles: route({
    method: "get",
    path: "/api/books/:book/files",
    about: "Files that the parts of a book are made from: drawings, outlines and models.",
    role: "viewer",
    answer: z.array(bookFileSchema),
  }),
  bookFile: route({
    method: "get",
    path: "/api/books/:book/files/:file",
    about:
      "One of them, byte by byte; with a hash, that content of this name, also if it had it only before.",
    role: "viewer",
    query: z.strictObject({
      sha256: z
        .string()
        .regex(/^[0-9a-f]{64}$/, "64 hexadecimal digits")
        .optional(),
    }),
  }),
  putBookFile: route({
    method: "put",
    path: "/api/books/:book/files/:file",
    about:
      "Puts a file into a book: a PDF, DXF as text, SVG or STEP. One of this name is replaced, and kept.",
    role: "designer",
    takesFile: true,
    answer: bookFileSchema,
  }),
  deleteBookFile: route({
    method: "delete",
    path: "/api/books/:book/files/:file",
    about: "Takes a file out of a book; its content can still be had by its hash.",
    role: "designer",
    answer: bookFileSchema,
  }),
  sendOut: route({
    method: "post",
    path: "/api/books/:book/send-out",
    about:
      "What a shop needs to make some parts, as one ZIP: order sheet, drawings of the right revisions, contents with hashes.",
    role: "viewer",
    body: sendOutSchema,
  }),
  checkSheet: route({
    method: "get",
    path: "/api/books/:book/first-article",
    about: "First-article check of a part as a PDF: blank, or with the readings of a sample.",
    role: "viewer",
    query: checkSheetSchema,
  }),
  readForeign: route({
    method: "post",
    path: "/api/read-sheet",
    about: "Reads a spreadsheet or CSV with any headings, so that its columns can be mapped.",
    role: "designer",
    query: z.strictObject({ name: z.string().max(200) }),
    takesFile: true,
    answer: z.array(foreignSheetSchema),
  }),
  mappings: route({
    method: "get",
    path: "/api/mappings",
    about: "How headings were mapped before.",
    role: "designer",
    answer: z.array(mappingSchema),
  }),
  keepMapping: route({
    method: "put",
    path: "/api/mappings",
    about: "Remembers how headings are mapped.",
    role: "designer",
    body: mappingSchema,
    answer: done,
  }),
  makeSheets: route({
    method: "post",
    path: "/api/books/:book/sheets",
    about: "Makes sheets in the background; progress comes as events.",
    role: "viewer",
    body: sheetRequestSchema,
    answer: jobSchema,
  }),
  jobs: route({
    method: "get",
    path: "/api/jobs",
    about: "Sheets that are being made or were made lately, last first.",
    role: "viewer",
    answer: z.array(jobSchema),
  }),
  job: route({
    method: "get",
    path: "/api/jobs/:job",
    about: "One of them.",
    role: "viewer",
    answer: jobSchema,
  }),
  cancelJob: route({
    method: "delete",
    path: "/api/jobs/:job",
    about: "Stops making sheets.",
    role: "viewer",
    answer: jobSchema,
  }),
  jobFile: route({
    method: "get",
    path: "/api/jobs/:job/files/:file",
    about: "One file that a job made; `all.zip` is all of them.",
    role: "viewer",
  }),
  backUp: route({
    method: "get",
    path: "/api/back-up",
    about: "Everything the server keeps, in one file, while it runs.",
    role: "owner",
  }),
  events: route({
    method: "get",
    path: "/api/events",
    about: "Stream of events (server-sent): changes of books, progress of jobs.",
    role: "viewer",
  }),
  openApi: route({
    method: "get",
    path: "/api/openapi.json",
    about: "This document.",
    role: "anyone",
  }),
} as const;

export type RouteName = keyof typeof ROUTES;
type Part<N extends RouteName, K extends keyof Route> =
  (typeof ROUTES)[N] extends Readonly<Record<K, infer S>> ? S : never;
type In<S> = [S] extends [never] ? undefined : S extends z.ZodType ? z.input<S> : undefined;
type Out<S> = [S] extends [never] ? undefined : S extends z.ZodType ? z.output<S> : undefined;

/** What a client sends. */
export type QueryIn<N extends RouteName> = In<Part<N, "query">>;
export type BodyIn<N extends RouteName> = In<Part<N, "body">>;
/** What the server works with after checking. */
export type QueryOf<N extends RouteName> = Out<Part<N, "query">>;
export type BodyOf<N extends RouteName> = Out<Part<N, "body">>;
export type AnswerOf<N extends RouteName> = Out<Part<N, "answer">>;
type Names<P extends string> = P extends `${string}:${infer Rest}`
  ? Rest extends `${infer Name}/${infer More}`
    ? Name | Names<More>
    : Rest
  : never;
/** Names of the parts of a route's path. */
export type PathPart<N extends RouteName> = Names<(typeof ROUTES)[N]["path"]>;

/** Header that every request which changes something carries, with the token of the session. */
export const TOKEN_HEADER = "x-pinwright-token";

/** The path of a route with its parts filled in and its query. */
export function pathTo<N extends RouteName>(
  name: N,
  parts: Readonly<Record<PathPart<N>, string>>,
  query?: QueryIn<N>,
): string {
  const given: Readonly<Record<string, string>> = parts;
  const path = ROUTES[name].path.replace(/:(\w+)/g, (_, part: string) =>
    encodeURIComponent(given[part] ?? ""),
  );
  const pairs = Object.entries(query ?? {}).flatMap(([key, value]) =>
    value === undefined ? [] : [`${encodeURIComponent(key)}=${encodeURIComponent(String(value))}`],
  );
  return pairs.length === 0 ? path : `${path}?${pairs.join("&")}`;
}
