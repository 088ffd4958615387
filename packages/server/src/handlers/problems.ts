import { byArrival, foldProblems } from "@pinwright/engine";
import type { Handlers } from "../http/bind.ts";
import { done } from "../http/problem.ts";
import type { ServerParts } from "./parts.ts";

/** What is wrong with the design of a book, and how it ended. */
export function problemHandlers({ deps }: ServerParts): Pick<Handlers, "problems"> {
  const { records, releases } = deps.store;
  return {
    problems: async ({ query: { book, about } }) => {
      const released = done(await releases.list(book), `book ${book}`);
      const facts = byArrival(await records.problemFacts({ book, about }));
      // Two problems of one name are one; the first says of which book it is.
      return foldProblems(facts, released).filter((problem) => problem.book === book);
    },
  };
}
