import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { faultPageOf, readFaultFile } from "@pinwright/engine";
import type { Handlers } from "../http/bind.ts";
import { savedResponse } from "../http/file-response.ts";
import { Refused } from "../http/problem.ts";
import type { Asker } from "../service-book/book-case.ts";
import { FaultFiles } from "../service-page/fault-files.ts";
import type { Lane } from "../threads/lane.ts";
import type { ServerParts } from "./parts.ts";

/** The empty page, in the folder of the built app. */
const PAGE = "service-page.html";

/** What faults are found with, and the page for an owner. @param lane the lane that makes them */
export function faultPageHandlers(
  { deps, shelf }: ServerParts,
  lane: Lane,
): Pick<Handlers, "faultFile" | "faultPage"> {
  const { store, now, newId, paths } = deps;
  const files = new FaultFiles({ store, lane, folder: paths.temp, newId });
  const asker = (): Asker => {
    const today = new Date(now()).toISOString().slice(0, 10);
    return { store, shelf, creator: "", today, address: "" };
  };
  return {
    faultFile: async ({ parts: { book }, query }) => {
      const { json } = await files.of(asker(), book, query);
      return new Response(json, {
        headers: { "content-type": "application/json; charset=utf-8", "cache-control": "private, no-store" },
      });
    },
    faultPage: async ({ parts: { book }, query }) => {
      const page =
        paths.web === null ? null : await readFile(join(paths.web, PAGE), "utf8").catch(() => null);
      if (page === null)
        throw new Refused("not-found", "The app is not built, so there is no page to fill in.");
      const { json, name } = await files.of(asker(), book, query);
      const filled = faultPageOf(page, readFaultFile(JSON.parse(json)), query.language ?? "");
      return savedResponse(new TextEncoder().encode(filled), `${book}-faults-${name}.html`);
    },
  };
}
