import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { assemblyDocumentsAbout } from "./assembly-sheets.ts";
import { documentNames } from "./harness-sheets.ts";
import { machineDocumentsAbout } from "./machine-sheets.ts";

/**
 * Names of the documents on which an item, or what lies in some harnesses, stands: those of the harnesses, of the machine and
 * of its assembly.
 */
export const documentsAbout = (
  line: LineResult,
  itemId: string | null,
  harnessIds: readonly string[],
  language: SheetLanguage = "en",
): readonly string[] => [
  ...documentNames(line, harnessIds, language),
  ...machineDocumentsAbout(line, itemId, harnessIds.length > 0, language),
  ...assemblyDocumentsAbout(line, itemId, language),
];
