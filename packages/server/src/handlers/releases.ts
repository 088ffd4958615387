import { setImmediate } from "node:timers/promises";
import { PRINT_DIGITS, type PrintState, printStateSchema, type ReleaseItem } from "@pinwright/contract";
import { pageSvg } from "@pinwright/sheets";
import { formatsOf, renderDocument } from "@pinwright/sheets/print";
import { actorOf } from "../accounts/caller.ts";
import type { Handlers } from "../http/bind.ts";
import { fileResponse, madeResponse } from "../http/file-response.ts";
import { done, Refused } from "../http/problem.ts";
import { isDraftSheet } from "../releases/draft-sheets.ts";
import { exportRelease } from "../releases/export-release.ts";
import { releasedDocument, releasedSheet, releasedSheets } from "../releases/released-sheets.ts";
import type { ServerParts } from "./parts.ts";

type Names =
  | "releases"
  | "addRelease"
  | "releaseJobs"
  | "releaseJob"
  | "cancelReleaseJob"
  | "release"
  | "releaseItems"
  | "releaseSheets"
  | "releaseSheet"
  | "releaseResults"
  | "releaseFile"
  | "releaseBook"
  | "releaseExport"
  | "checkReleases"
  | "printState";

/** What kinds of file a release holds are sent as. */
const jsonResponse = (bytes: Uint8Array | string): Response =>
  new Response(typeof bytes === "string" ? bytes : new Uint8Array(bytes), {
    headers: { "content-type": "application/json; charset=utf-8", "cache-control": "private, no-store" },
  });

/** Revisions that were released. */
export function releaseHandlers(parts: ServerParts): Pick<Handlers, Names> {
  const { deps, shelf, releaseJobs } = parts;
  const { releases } = deps.store;
  const one = async (book: string, name: string) =>
    done(await releases.get(book, name), `release ${name} of ${book}`);

  return {
    releases: async ({ parts: { book } }) => [...done(await releases.list(book), `book ${book}`)],
    addRelease: ({ parts: { book }, body, caller, place }) =>
      releaseJobs.make({
        ...{ id: body.id, book, name: body.name, note: body.note, actor: actorOf(caller), place },
        creator: caller.sessionHash === null ? "" : caller.person.name,
      }),
    releaseJobs: async () => [...releaseJobs.list()],
    releaseJob: async ({ parts: { job } }) => releaseJobs.get(job),
    cancelReleaseJob: async ({ parts: { job } }) => releaseJobs.cancel(job),
    release: ({ parts: { book, release } }) => one(book, release),
    releaseItems: async ({ parts: { book, release } }) => [
      ...done(await releases.items(book, release), `release ${release} of ${book}`),
    ],
    releaseSheets: ({ parts: { book, release } }) => releasedSheets(deps.store, book, release),
    releaseSheet: async ({ parts: { book, release, sheet }, query: { format } }) => {
      const document = await releasedDocument(deps.store, book, release, sheet);
      if (format === "json") return jsonResponse(JSON.stringify(document));
      const formats = formatsOf(document);
      const name = `${document.fileName}.${release}.${format}`;
      const [page] = document.pages;
      // Every page can be looked at; files of drawings are written of those that are drawings.
      if (format === "svg" && page !== undefined)
        return madeResponse(new TextEncoder().encode(pageSvg(page, document.title)), name);
      if (!formats.includes(format))
        throw new Refused("bad-request", `Sheet ${sheet} is no ${format}; it is ${formats.join(", ")}.`);
      return madeResponse(await renderDocument(document, format), name);
    },
    releaseResults: async ({ parts: { book, release, name } }) =>
      jsonResponse(
        done(await releases.body(book, release, "results", name), `result ${name} in release ${release}`),
      ),
    releaseFile: async ({ parts: { book, release, file } }) => {
      const bytes = done(
        await releases.body(book, release, "file", file),
        `file ${file} in release ${release}`,
      );
      return madeResponse(bytes, file);
    },
    releaseBook: async ({ parts: { book, release } }) =>
      jsonResponse(
        done(await releases.body(book, release, "tables", "book"), `release ${release} of ${book}`),
      ),
    releaseExport: async ({ parts: { book, release } }) => {
      await one(book, release);
      const path = await exportRelease(deps.store, book, release, parts.files.freePath());
      return fileResponse(path, `${book}-${release}.zip`, true);
    },
    checkReleases: async () => [...(await releases.verify())],
    printState: async ({ parts: { book, sheet, print } }): Promise<PrintState> => {
      const { info, tables } = await shelf.now(book);
      if (!/^[0-9a-f]+$/u.test(print) || print.length !== PRINT_DIGITS)
        throw new Refused("bad-request", `A print's code ends in ${PRINT_DIGITS} hexadecimal digits.`);
      const all = done(await releases.list(book), `book ${book}`);
      await setImmediate();
      const same = (await releases.printed(book, print)).filter(({ id }) => id === sheet);
      const [newest = null] = all;
      const held = newest === null ? [] : done(await releases.items(book, newest.name, "frame"), "release");
      const item: ReleaseItem | undefined = held.find(({ id }) => id === sheet);
      const isCurrent = newest !== null && same.some(({ release }) => release === newest.name);
      const is = isCurrent
        ? "current"
        : same.length > 0
          ? "superseded"
          : isDraftSheet(tables, sheet)
            ? "draft"
            : "unknown";
      return printStateSchema.parse({
        ...{ is, book, sheet, releases: same.map(({ release }) => release), newest },
        now: item === undefined ? null : releasedSheet(item),
        changeNo: info.changeNo,
        changesSince: info.changeNo - (newest?.changeNo ?? 0),
      });
    },
  };
}
