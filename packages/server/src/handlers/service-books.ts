import { readFile } from "node:fs/promises";
import type { Handlers } from "../http/bind.ts";
import { fileResponse } from "../http/file-response.ts";
import type { ServerParts } from "./parts.ts";

type Names =
  | "makeServiceBook"
  | "serviceBook"
  | "serviceBookGuide"
  | "serviceBookTexts"
  | "serviceBookPage"
  | "serviceBookPdf";

/** A file of JSON that this program wrote, as an answer. */
const jsonOf = async (path: string): Promise<Response> =>
  new Response(new Uint8Array(await readFile(path)), {
    headers: { "content-type": "application/json; charset=utf-8", "cache-control": "private, no-store" },
  });

/** Service books: of releases, of the book as it is now, of single machines. */
export function serviceBookHandlers({ deps, shelf, serviceBooks }: ServerParts): Pick<Handlers, Names> {
  const { store, now, reach } = deps;
  return {
    makeServiceBook: ({ parts: { book }, body, caller }) => {
      const creator = caller.sessionHash === null ? "" : caller.person.name;
      const today = new Date(now()).toISOString().slice(0, 10);
      return serviceBooks.make(
        { store, shelf, creator, today, address: reach.addresses()[0] ?? "" },
        book,
        body,
      );
    },
    serviceBook: async ({ parts: { job } }) => serviceBooks.get(job),
    serviceBookGuide: ({ parts: { job } }) => jsonOf(serviceBooks.path(job, "guide")),
    serviceBookTexts: ({ parts: { job } }) => jsonOf(serviceBooks.path(job, "texts")),
    serviceBookPage: ({ parts: { job, page } }) => fileResponse(serviceBooks.page(job, page), `${page}.svg`),
    serviceBookPdf: ({ parts: { job } }) => {
      const { book, revision, unit, language } = serviceBooks.get(job);
      const of = unit ?? (revision.startsWith("@") ? "draft" : revision);
      return fileResponse(serviceBooks.path(job, "pdf"), `${book}-service-book-${of}.${language}.pdf`);
    },
  };
}
