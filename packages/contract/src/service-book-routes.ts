import { z } from "zod";
import { JOB_STATES } from "./jobs.ts";
import { releaseName } from "./releases.ts";
import { type Route, route } from "./route.ts";
import { plainText } from "./text.ts";

/** Which service book: of a release, of one unit as it was built, or of the book as it is now. */
export const serviceBookRequestSchema = z.strictObject({
  language: z.enum(["en", "zh"]),
  /** Absent: the book as it is now, unless a unit is named. */
  release: releaseName.optional(),
  /** A machine by its serial number: its revision and options are those that it was built with. */
  unit: plainText(120).min(1).optional(),
});
export type ServiceBookRequest = z.infer<typeof serviceBookRequestSchema>;

/** Stages of making a service book, in order. */
export const SERVICE_BOOK_STAGES = ["book", "line", "pages", "files"] as const;

export const serviceBookJobSchema = z.object({
  id: z.string(),
  book: z.string(),
  language: z.enum(["en", "zh"]),
  /** Revision that it is of; `@12`: of the book after change 12, which was not released. */
  revision: z.string(),
  isReleased: z.boolean(),
  unit: z.string().nullable(),
  state: z.enum(JOB_STATES),
  /** Stages that are done. */
  done: z.number().int(),
  total: z.number().int(),
  /** One of the stages; or why it failed. */
  now: z.string(),
  /** Of the finished book. */
  title: z.string(),
  pages: z.number().int(),
  bytes: z.number().int(),
});
export type ServiceBookJob = z.infer<typeof serviceBookJobSchema>;

const box = { xMm: z.number(), yMm: z.number(), widthMm: z.number(), heightMm: z.number() };

/** What is beside the pages: their sizes, the contents, and the links on each. Pages count from 0. */
export const serviceBookGuideSchema = z.object({
  title: z.string(),
  pages: z.array(
    z.object({
      widthMm: z.number(),
      heightMm: z.number(),
      links: z.array(
        z.object({
          ...box,
          text: z.string(),
          to: z.union([z.object({ page: z.number().int(), yMm: z.number() }), z.object({ url: z.string() })]),
        }),
      ),
    }),
  ),
  outline: z.array(
    z.object({ title: z.string(), level: z.number().int(), page: z.number().int(), yMm: z.number() }),
  ),
});
export type ServiceBookGuide = z.infer<typeof serviceBookGuideSchema>;

/** All that is written on each page, in the order of reading, with where it stands. */
export const serviceBookTextsSchema = z.array(z.array(z.object({ ...box, text: z.string() })));
export type ServiceBookTexts = z.infer<typeof serviceBookTextsSchema>;

/** Service books, in the background: a book that is made is at hand until the machine changes. */
export const SERVICE_BOOK_ROUTES = {
  makeServiceBook: route({
    method: "post",
    path: "/api/books/:book/service-books",
    about:
      "Makes the service book of a release, of the book as it is now, or of one machine; the same again is answered with the same. Progress comes as events.",
    role: "viewer",
    body: serviceBookRequestSchema,
    answer: serviceBookJobSchema,
  }),
  serviceBook: route({
    method: "get",
    path: "/api/service-books/:job",
    about: "How far a service book is.",
    role: "viewer",
    answer: serviceBookJobSchema,
  }),
  serviceBookGuide: route({
    method: "get",
    path: "/api/service-books/:job/guide",
    about: "Sizes of its pages, contents and links.",
    role: "viewer",
    answer: serviceBookGuideSchema,
  }),
  serviceBookTexts: route({
    method: "get",
    path: "/api/service-books/:job/texts",
    about: "What is written on its pages, and where, to search in.",
    role: "viewer",
    answer: serviceBookTextsSchema,
  }),
  serviceBookPage: route({
    method: "get",
    path: "/api/service-books/:job/pages/:page",
    about: "A page as SVG, counted from 1.",
    role: "viewer",
  }),
  serviceBookPdf: route({
    method: "get",
    path: "/api/service-books/:job/pdf",
    about: "The whole book as a tagged PDF.",
    role: "viewer",
  }),
} as const satisfies Readonly<Record<string, Route>>;
