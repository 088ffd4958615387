import type { LineResult } from "@pinwright/engine";
import { assemblyDocumentNames, composeAssemblySheets } from "./assembly-sheets.ts";
import type { SheetDocument } from "./compose/document.ts";
import { composeHarnessSheets, documentNames } from "./harness-sheets.ts";
import {
  ASSEMBLY_SHEET_KINDS,
  type AssemblySheetKind,
  HARNESS_SHEET_KINDS,
  type HarnessSheetKind,
  MACHINE_SHEET_KINDS,
  MACHINE_SHEETS,
  MAKING_SHEET_KINDS,
  type MachineSheetKind,
  type MakingSheetKind,
  type SheetKind,
} from "./identity.ts";
import { composeMachineSheets, machineDocumentNames } from "./machine-sheets.ts";
import { composeMakingSheets, makingDocumentNames } from "./making-sheets.ts";
import type { SheetOptions } from "./options.ts";

/** Which sheets somebody asks for. */
export interface SheetsChoice {
  /** Kinds to make; none: all, and of these those of the whole machine and its assembly only when no harness is named either. */
  readonly kinds: readonly SheetKind[];
  /** Harnesses to make sheets for; none: all. */
  readonly harnessIds: readonly string[];
}

interface Wanted {
  readonly machine: readonly MachineSheetKind[];
  readonly assembly: readonly AssemblySheetKind[];
  readonly making: readonly MakingSheetKind[];
  readonly harness: readonly HarnessSheetKind[];
  readonly harnessIds: readonly string[];
}

function wantedOf(line: LineResult, { kinds, harnessIds }: SheetsChoice): Wanted {
  const isWanted = (kind: SheetKind): boolean => kinds.length === 0 || kinds.includes(kind);
  const harness = HARNESS_SHEET_KINDS.filter(isWanted);
  const isAboutHarnesses = kinds.length === 0 && harnessIds.length > 0;
  return {
    machine: isAboutHarnesses ? [] : MACHINE_SHEET_KINDS.filter(isWanted),
    assembly: isAboutHarnesses ? [] : ASSEMBLY_SHEET_KINDS.filter(isWanted),
    making: isAboutHarnesses ? [] : MAKING_SHEET_KINDS.filter(isWanted),
    harness,
    harnessIds: harnessIds.length > 0 ? harnessIds : [...line.harnesses.keys()],
  };
}

/** A sheet, with what it is about: a harness by its id, or `machine`. */
export interface MadeSheet {
  readonly of: string;
  readonly kind: SheetKind;
  readonly document: SheetDocument;
}

/** The sheets that are asked for, one after the other: those of the machine first, then those of its assembly and
 * of making its parts, then harness by harness. */
export function* composeSheets(
  line: LineResult,
  options: SheetOptions,
  choice: SheetsChoice,
): Generator<MadeSheet, void> {
  const { machine, assembly, making, harness, harnessIds } = wantedOf(line, choice);
  for (const kind of machine)
    for (const document of composeMachineSheets(line, options, [kind]))
      yield { of: MACHINE_SHEETS, kind, document };
  for (const kind of assembly)
    for (const document of composeAssemblySheets(line, options, [kind]))
      yield { of: MACHINE_SHEETS, kind, document };
  for (const kind of making)
    for (const document of composeMakingSheets(line, options, [kind]))
      yield { of: MACHINE_SHEETS, kind, document };
  if (harness.length === 0) return;
  for (const id of line.harnesses.keys()) {
    if (!harnessIds.includes(id)) continue;
    for (const kind of harness)
      for (const document of composeHarnessSheets(line, options, { kinds: [kind], harnessIds: [id] }))
        yield { of: id, kind, document };
  }
}

/** Names of the documents that `composeSheets` makes, without composing them. */
export function sheetNames(
  line: LineResult,
  language: SheetOptions["language"],
  choice: SheetsChoice,
): readonly string[] {
  const { machine, assembly, making, harness, harnessIds } = wantedOf(line, choice);
  return [
    ...machineDocumentNames(language, machine),
    ...assemblyDocumentNames(line, language, assembly),
    ...makingDocumentNames(line, language, making),
    ...(harness.length === 0 ? [] : documentNames(line, harnessIds, language, harness)),
  ];
}
