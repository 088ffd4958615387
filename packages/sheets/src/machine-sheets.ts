import { type LineResult, programMap } from "@pinwright/engine";
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

/**
 * Names of the sheets of the machine that something is on.
 * @param itemId the item that it is or is part of; null: none
 * @param hasWires whether a wire is it, or ends on it
 */
export function machineDocumentsAbout(
  line: LineResult,
  itemId: string | null,
  hasWires: boolean,
  language: SheetLanguage = "en",
): readonly string[] {
  const { machine, electric } = line;
  const isOn = (pointId: string | null): boolean =>
    pointId !== null && machine.points.get(pointId)?.itemId === itemId;
  const holds: Readonly<Record<MachineSheetKind, () => boolean>> = {
    "supply-schedule": () =>
      machine.elements.some((e) => e.itemId === itemId && e.row.kind === "fuse") ||
      machine.book.tables.supplies.some((s) => isOn(s.positive) || isOn(s.negative)),
    "wiring-chart": () => hasWires,
    loads: () => [...electric.loads.values()].some((load) => load.itemId === itemId),
    "program-map": () => programMap(machine).some((p) => p.deviceId === itemId || p.boardId === itemId),
  };
  return MACHINE_SHEET_KINDS.filter((kind) => holds[kind]()).map((kind) => machineSheetName(kind, language));
}
