import type { Caller } from "../accounts/caller.ts";
import type { Handlers } from "../http/bind.ts";
import { fileResponse } from "../http/file-response.ts";
import type { Lane } from "../threads/lane.ts";
import { type MadeOut, type MadeSheet, RecordSheets } from "../units/record-sheets.ts";
import type { ServerParts } from "./parts.ts";

type Names = "unitLabels" | "unitCertificate" | "crateChecklist" | "transportList";

const madeOut = (
  { language, date }: Pick<MadeOut, "language" | "date">,
  { sessionHash, person }: Caller,
): MadeOut => ({ language, date, creator: sessionHash === null ? "" : person.name });

const answer = ({ path, name }: MadeSheet): Promise<Response> => fileResponse(path, name, true);

/** Sheets that are printed of the floor's records. @param lane the lane of the gates, whose lines are at hand */
export function recordSheetHandlers(
  { deps, shelf, standing, gateFacts }: ServerParts,
  lane: Lane,
): Pick<Handlers, Names> {
  const { store, newId, now } = deps;
  const folder = deps.paths.temp;
  const sheets = new RecordSheets({ store, shelf, standing, gateFacts, lane, folder, newId, now });
  return {
    unitLabels: async ({ query, caller }) => answer(await sheets.labels(query, madeOut(query, caller))),
    unitCertificate: async ({ parts: { unit }, query, caller }) =>
      answer(await sheets.certificate(unit, madeOut(query, caller))),
    crateChecklist: async ({ parts: { unit }, query, caller }) =>
      answer(await sheets.crate(unit, madeOut(query, caller))),
    transportList: async ({ query, caller }) =>
      answer(await sheets.transport(query.book, query.transport ?? null, madeOut(query, caller))),
  };
}
