import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import type { SheetDocument } from "./compose/document.ts";
import { composeDrillTables, drillTableNames } from "./drill-table/drill-table.ts";
import { ASSEMBLY_SHEET_KINDS, type AssemblySheetKind, assemblySheetName } from "./identity.ts";
import { composeKitLists, kitListNames } from "./kit-list/kit-list.ts";
import type { SheetOptions } from "./options.ts";
import { composePilotTemplates, pilotTemplateNames } from "./pilot-template/pilot-template.ts";
import { composeScrewMaps, screwMapNames } from "./screw-map/index.ts";
import { composeScrewPoster } from "./screw-poster/screw-poster.ts";
import { composeScrewTrays, screwTrayNames } from "./screw-tray/screw-tray.ts";
import { composeStepCards } from "./step-cards/step-cards.ts";

interface Maker {
  readonly compose: (line: LineResult, options: SheetOptions) => Iterable<SheetDocument>;
  readonly names: (line: LineResult, language: SheetLanguage) => readonly string[];
}

const hasSteps = (line: LineResult): boolean => line.steps.steps.length > 0;
const hasFasteners = (line: LineResult): boolean =>
  [...line.machine.items.values()].some((item) => item.kind === "fastener");

const MAKERS: Readonly<Record<AssemblySheetKind, Maker>> = {
  "step-cards": {
    compose: (line, options) => (hasSteps(line) ? [composeStepCards(line, options)] : []),
    names: (line, language) => (hasSteps(line) ? [assemblySheetName("step-cards", "", language)] : []),
  },
  "screw-map": { compose: composeScrewMaps, names: screwMapNames },
  "kit-list": { compose: composeKitLists, names: kitListNames },
  "screw-poster": {
    compose: (line, options) => (hasFasteners(line) ? [composeScrewPoster(line, options)] : []),
    names: (line, language) => (hasFasteners(line) ? [assemblySheetName("screw-poster", "", language)] : []),
  },
  "screw-tray": { compose: composeScrewTrays, names: screwTrayNames },
  "drill-table": { compose: composeDrillTables, names: drillTableNames },
  "pilot-template": { compose: composePilotTemplates, names: pilotTemplateNames },
};

/**
 * The sheets that the machine is assembled from, one after the other: a caller that writes each as it comes holds one
 * in memory. A machine without steps or fasteners has none.
 * @param kinds kinds to make; absent: all
 */
export function* composeAssemblySheets(
  line: LineResult,
  options: SheetOptions,
  kinds: readonly AssemblySheetKind[] = ASSEMBLY_SHEET_KINDS,
): Generator<SheetDocument, void> {
  for (const kind of ASSEMBLY_SHEET_KINDS)
    if (kinds.includes(kind)) yield* MAKERS[kind].compose(line, options);
}

/** Names of the documents that `composeAssemblySheets` makes, without composing them. */
export function assemblyDocumentNames(
  line: LineResult,
  language: SheetLanguage = "en",
  kinds: readonly AssemblySheetKind[] = ASSEMBLY_SHEET_KINDS,
): readonly string[] {
  return ASSEMBLY_SHEET_KINDS.filter((kind) => kinds.includes(kind)).flatMap((kind) =>
    MAKERS[kind].names(line, language),
  );
}

/**
 * Names of the assembly sheets that an item is on: the cards, and the maps and trays of the steps that put it in or
 * drive it. A device within a mechanism is on those of the mechanism.
 */
export function assemblyDocumentsAbout(
  line: LineResult,
  itemId: string | null,
  language: SheetLanguage = "en",
): readonly string[] {
  const item = line.machine.items.get(itemId ?? "");
  if (item === undefined) return [];
  const ids = item.kind === "fastener" ? [item.id] : [item.id, item.parentId ?? item.id];
  const own = line.steps.steps.filter(({ itemIds, fastenerIds, recheckIds }) =>
    ids.some((id) => itemIds.includes(id) || fastenerIds.includes(id) || recheckIds.includes(id)),
  );
  const part = { ...line, steps: { ...line.steps, steps: own } };
  return assemblyDocumentNames(part, language, ["step-cards", "screw-map", "screw-tray"]);
}
