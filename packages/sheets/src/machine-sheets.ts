import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import type { SheetDocument } from "./compose/document.ts";
import { MACHINE_SHEET_KINDS, type MachineSheetKind, machineSheetName } from "./identity.ts";
import { composeLoads } from "./loads/loads.ts";
import type { SheetOptions } from "./options.ts";
import { composeProgramMap } from "./program-map/program-map.ts";
import { composeSupplySchedule } from "./supply-schedule/supply-schedule.ts";
import { composeWiringChart } from "./wiring-chart/wiring-chart.ts";

type Compose = (line: LineResult, options: SheetOptions) => SheetDocument;

const COMPOSE: Readonly<Record<MachineSheetKind, Compose>> = {
  "supply-schedule": composeSupplySchedule,
  "wiring-chart": composeWiringChart,
  loads: composeLoads,
  "program-map": composeProgramMap,
};

/** The sheets of the machine as a whole, one after the other. @param kinds kinds to make; absent: all */
export function* composeMachineSheets(
  line: LineResult,
  options: SheetOptions,
  kinds: readonly MachineSheetKind[] = MACHINE_SHEET_KINDS,
): Generator<SheetDocument, void> {
  for (const kind of MACHINE_SHEET_KINDS) if (kinds.includes(kind)) yield COMPOSE[kind](line, options);
}

/** Names of the documents that `composeMachineSheets` makes, without composing them. */
export function machineDocumentNames(
  language: SheetLanguage = "en",
  kinds: readonly MachineSheetKind[] = MACHINE_SHEET_KINDS,
): readonly string[] {
  return MACHINE_SHEET_KINDS.filter((kind) => kinds.includes(kind)).map((kind) =>
    machineSheetName(kind, language),
  );
}
