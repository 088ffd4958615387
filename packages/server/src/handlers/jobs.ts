import { atLeast, type BodyOf, SHOP_ID } from "@pinwright/contract";
import { draftAfter } from "@pinwright/words";
import type { Handlers } from "../http/bind.ts";
import { fileResponse } from "../http/file-response.ts";
import { done, Refused } from "../http/problem.ts";
import { compareCase } from "../releases/compare-case.ts";
import type { ServerParts } from "./parts.ts";

type Names = "makeSheets" | "jobs" | "job" | "cancelJob" | "jobFile";

/** Sheets that are made in the background. */
export function jobHandlers({ deps, shelf, jobs, standing }: ServerParts): Pick<Handlers, Names> {
  return {
    makeSheets: async ({ parts: { book }, body, caller }) => {
      const held = await shelf.now(book);
      if (held.info.kind === "shop")
        throw new Refused("bad-request", "The shop has no sheets. Choose a book.");
      const shop = await shelf.now(SHOP_ID);
      const [newest] = done(await deps.store.releases.list(book), `book ${book}`);
      const request: BodyOf<"makeSheets"> = body;
      const compare =
        request.compare === undefined
          ? null
          : await compareCase(
              deps.store,
              standing,
              book,
              request.compare,
              `${held.info.changeNo} ${shop.info.changeNo}`,
            );
      return jobs.make({
        request,
        compare,
        held,
        tables: shelf.jsonOf(held.tables),
        shop: shelf.jsonOf(shop.tables),
        personId: caller.person.id,
        creator: caller.sessionHash === null ? "" : caller.person.name,
        // What is made of the book is a draft, after the newest release.
        revision: draftAfter(newest?.name ?? ""),
        address: deps.reach.addresses()[0] ?? "",
      });
    },
    jobs: async () => [...jobs.list()],
    job: async ({ parts: { job } }) => jobs.get(job),
    cancelJob: async ({ parts: { job }, caller }) => {
      if (jobs.ownerOf(job) !== caller.person.id && !atLeast(caller.person.role, "designer"))
        throw new Refused(
          "not-allowed",
          "Someone else makes these sheets. Only they or a designer can stop it.",
        );
      return jobs.cancel(job);
    },
    jobFile: async ({ parts: { job, file } }) => {
      const found = jobs.file(job, file);
      const name = file === "all.zip" ? `${found.job.book}-sheets.zip` : file;
      return fileResponse(found.path, name);
    },
  };
}
