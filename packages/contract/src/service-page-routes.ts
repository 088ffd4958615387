import { z } from "zod";
import { releaseName } from "./releases.ts";
import { type Route, route } from "./route.ts";
import { plainText } from "./text.ts";

/** Machine whose faults are looked for. */
const ofMachine = {
  /** Absent: the book as it is now, unless a unit is named. */
  release: releaseName.optional(),
  /** A machine by its serial number: its revision and options are those that it was built with. */
  unit: plainText(120).min(1).optional(),
};

/** What faults are found with, in the app and on the page that is shipped with a machine. */
export const SERVICE_PAGE_ROUTES = {
  faultFile: route({
    method: "get",
    path: "/api/books/:book/fault-file",
    about:
      "All that fault finding asks of a release, of one machine, or of the book as it is now, as JSON. That of a release is the one that it keeps.",
    role: "viewer",
    query: z.strictObject(ofMachine),
  }),
  faultPage: route({
    method: "get",
    path: "/api/books/:book/fault-page",
    about: "The page of fault finding for an owner: one HTML file with all of it in, that needs no network.",
    role: "viewer",
    query: z.strictObject({ ...ofMachine, language: z.enum(["en", "zh"]).optional() }),
  }),
} as const satisfies Readonly<Record<string, Route>>;
