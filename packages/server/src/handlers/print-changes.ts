import type { Handlers } from "../http/bind.ts";
import { done, Refused } from "../http/problem.ts";
import type { Lane } from "../threads/lane.ts";
import type { Task } from "../threads/messages.ts";
import type { ServerParts } from "./parts.ts";

type Kept = Extract<Task, { kind: "print-changes" }>["old"];

/** What changed on a sheet since it was printed. @param lane a lane in which nobody waits long */
export function printChangeHandlers({ deps }: ServerParts, lane: Lane): Pick<Handlers, "printChanges"> {
  const { releases } = deps.store;
  return {
    printChanges: async ({ parts: { book, sheet, print }, query: { language } }) => {
      const all = done(await releases.list(book), `book ${book}`);
      const printed = (await releases.printed(book, print)).filter(({ id }) => id === sheet);
      const from = all.find(({ name }) => printed.some(({ release }) => release === name))?.name;
      const to = all[0]?.name;
      if (from === undefined || to === undefined)
        throw new Refused("not-found", `No release of ${book} has a sheet ${sheet} with this print.`);
      const body = async (release: string, kind: string, id: string): Promise<Uint8Array> =>
        done(await releases.body(book, release, kind, id), `${id} in release ${release} of ${book}`);
      const keptIn = async (release: string): Promise<Kept> => ({
        body: await body(release, "body", sheet),
        frame: await body(release, "frame", sheet),
      });
      const held = done(await releases.items(book, to, "frame"), `release ${to} of ${book}`);
      const changes = await lane.run({
        kind: "print-changes",
        of: sheet.slice(0, Math.max(0, sheet.indexOf(".", sheet.indexOf(".") + 1))),
        before: await body(from, "results", "facts"),
        after: await body(to, "results", "facts"),
        old: await keptIn(from),
        now: held.some(({ id }) => id === sheet) ? await keptIn(to) : null,
        language,
      });
      return { from, to, ...changes };
    },
  };
}
