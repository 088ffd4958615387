import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import type { SheetDocument } from "./compose/document.ts";
import { MAKING_SHEET_KINDS, type MakingSheetKind } from "./identity.ts";
import type { SheetOptions } from "./options.ts";
import { composePartsLists, partsListNames } from "./parts-list/parts-list.ts";

interface Maker {
  readonly compose: (line: LineResult, options: SheetOptions) => Iterable<SheetDocument>;
  /** The same names that `compose` gives, without composing. */
  readonly names: (line: LineResult, language: SheetLanguage) => readonly string[];
}

const NONE: Maker = { compose: () => [], names: () => [] };

const MAKERS: Readonly<Record<MakingSheetKind, Maker>> = {
  "cutting-plan": NONE,
  "cutting-order": NONE,
  "panel-labels": NONE,
  "panel-drawing": NONE,
  "paint-plan": NONE,
  "board-register": NONE,
  "stuffing-guide": NONE,
  "board-kit": NONE,
  "board-test": NONE,
  "parts-list": { compose: composePartsLists, names: partsListNames },
};

/**
 * The sheets that panels and boards are made from and the lists of parts, one after the other. What the machine does not
 * have has none.
 * @param kinds kinds to make; absent: all
 */
export function* composeMakingSheets(
  line: LineResult,
  options: SheetOptions,
  kinds: readonly MakingSheetKind[] = MAKING_SHEET_KINDS,
): Generator<SheetDocument, void> {
  for (const kind of MAKING_SHEET_KINDS) if (kinds.includes(kind)) yield* MAKERS[kind].compose(line, options);
}

/** Names of the documents that `composeMakingSheets` makes, without composing them. */
export function makingDocumentNames(
  line: LineResult,
  language: SheetLanguage = "en",
  kinds: readonly MakingSheetKind[] = MAKING_SHEET_KINDS,
): readonly string[] {
  return MAKING_SHEET_KINDS.filter((kind) => kinds.includes(kind)).flatMap((kind) =>
    MAKERS[kind].names(line, language),
  );
}
