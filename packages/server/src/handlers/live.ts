import { rm } from "node:fs/promises";
import { join } from "node:path";
import { openApi } from "@pinwright/contract";
import type { Handlers } from "../http/bind.ts";
import { fileResponse } from "../http/file-response.ts";
import type { ServerParts } from "./parts.ts";

type Names = "events" | "backUp" | "openApi";

/** The stream of events, back-ups, and what the API is. */
export function liveHandlers({ deps, hub, audit }: ServerParts): Pick<Handlers, Names> {
  const document = JSON.stringify(openApi(deps.version));
  return {
    events: async ({ caller, request }) =>
      new Response(hub.stream(caller, request.headers.get("last-event-id")), {
        headers: {
          "content-type": "text/event-stream; charset=utf-8",
          "cache-control": "no-store",
          "x-accel-buffering": "no",
        },
      }),
    backUp: async ({ caller, place }) => {
      const path = join(deps.paths.temp, `${deps.newId()}.part`);
      await audit.write("back-up", caller.person.name, "", place);
      try {
        await deps.store.backUp(path);
        const day = new Date(deps.now()).toISOString().slice(0, 10);
        return await fileResponse(path, `pinwright-${day}.zip`, true);
      } catch (error) {
        await rm(path, { force: true });
        throw error;
      }
    },
    openApi: async () =>
      new Response(document, {
        headers: { "content-type": "application/json; charset=utf-8", "cache-control": "no-cache" },
      }),
  };
}
