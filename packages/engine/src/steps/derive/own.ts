import { compareText } from "@pinwright/kernel";
import { labelsOf, type Machine } from "../../model/index.ts";
import { type Draft, emptyDraft } from "./draft.ts";
import { sideOf } from "./side.ts";

/** The designer's own steps with what they claim; where the table names no panel, the one of most of their items. */
export function ownDrafts(
  machine: Machine,
  inSteps: ReadonlyMap<
    string,
    { readonly itemIds: readonly string[]; readonly fastenerIds: readonly string[] }
  >,
): readonly Draft[] {
  const { steps, stations } = machine.book.tables;
  const known = new Set(stations.map((row) => row.id));
  return steps.map((row, i): Draft => {
    const { itemIds = [], fastenerIds = [] } = inSteps.get(row.id) ?? {};
    const empty = emptyDraft("own", row.id, labelsOf(row, row.id));
    const places = [...itemIds, ...fastenerIds].flatMap((id) => machine.items.get(id)?.place ?? []);
    const at = row.panel === null ? sideOf(places) : { panelId: row.panel, side: row.side };
    const caution = labelsOf({ label: row.caution, label_zh: row.caution_zh }, "");
    return {
      ...empty,
      ...at,
      itemIds: [...itemIds].sort(compareText),
      fastenerIds: [...fastenerIds].sort(compareText),
      skill: row.skill,
      cautions: caution.en === "" ? [] : [caution],
      stationId: row.station !== null && known.has(row.station) ? row.station : null,
      setSeconds: row.minutes === null ? null : row.minutes * 60,
      // Rows that are as good as each other keep the order of the table.
      rank: empty.rank + (i + 1) / (steps.length + 1),
    };
  });
}
