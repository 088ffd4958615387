import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { boardKitNames, composeBoardKits } from "./board-kit/board-kit.ts";
import { boardRegisterNames, composeBoardRegister } from "./board-register/board-register.ts";
import { boardTestNames, composeBoardTests } from "./board-test/board-test.ts";
import type { SheetDocument } from "./compose/document.ts";
import { composeCuttingOrders, cuttingOrderNames } from "./cutting-order/cutting-order.ts";
import { composeCuttingPlans, cuttingPlanNames } from "./cutting-plan/cutting-plan.ts";
import { MAKING_SHEET_KINDS, type MakingSheetKind } from "./identity.ts";
import type { SheetOptions } from "./options.ts";
import { composePaintPlans, paintPlanNames } from "./paint-plan/paint-plan.ts";
import { composePanelDrawings, panelDrawingNames } from "./panel-drawing/panel-drawing.ts";
import { composePanelLabels, panelLabelNames } from "./panel-labels/panel-labels.ts";
import { composePartsLists, partsListNames } from "./parts-list/parts-list.ts";
import { composeStuffingGuides, stuffingGuideNames } from "./stuffing-guide/stuffing-guide.ts";

interface Maker {
  readonly compose: (line: LineResult, options: SheetOptions) => Iterable<SheetDocument>;
  /** The same names that `compose` gives, without composing. */
  readonly names: (line: LineResult, language: SheetLanguage) => readonly string[];
}

const MAKERS: Readonly<Record<MakingSheetKind, Maker>> = {
  "cutting-plan": { compose: composeCuttingPlans, names: cuttingPlanNames },
  "cutting-order": { compose: composeCuttingOrders, names: cuttingOrderNames },
  "panel-labels": { compose: composePanelLabels, names: panelLabelNames },
  "panel-drawing": { compose: composePanelDrawings, names: panelDrawingNames },
  "paint-plan": { compose: composePaintPlans, names: paintPlanNames },
  "board-register": { compose: composeBoardRegister, names: boardRegisterNames },
  "stuffing-guide": { compose: composeStuffingGuides, names: stuffingGuideNames },
  "board-kit": { compose: composeBoardKits, names: boardKitNames },
  "board-test": { compose: composeBoardTests, names: boardTestNames },
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
