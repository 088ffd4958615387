import { z } from "zod";
import { type Route, route } from "./route.ts";

/** What changed on a sheet since it was printed. */
export const printChangesSchema = z.object({
  /** Newest release that has exactly this print, and newest of the book. */
  from: z.string(),
  to: z.string(),
  /** Pages that say something else, from 1. */
  pages: z.array(z.number().int()),
  /** Changes of the machine that what differs on the sheet speaks of. */
  groups: z.array(z.object({ title: z.string(), sentences: z.array(z.string()) })),
});
export type PrintChanges = z.infer<typeof printChangesSchema>;

/** What is asked of two revisions. */
export const COMPARE_ROUTES = {
  printChanges: route({
    method: "get",
    path: "/api/books/:book/print/:sheet/:print/changes",
    about: "What changed on a sheet since a print of it, by the first digits of its hash that its code has.",
    role: "viewer",
    query: z.strictObject({ language: z.enum(["en", "zh"]) }),
    answer: printChangesSchema,
  }),
} as const satisfies Readonly<Record<string, Route>>;
