import type { LineResult, SheetCutting } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing, type Heading, headingBlock, roomOf } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { cuttings, goodsIds, goodsSlug, noPlanText, panelName, thicknessText } from "./panel-facts.ts";
import { patternBlock } from "./pattern-block.ts";

const PAPER = PAPERS["a3-landscape"];

/** For each kind of sheet goods: every different way in which a sheet is cut, to scale, a page each. */
export function* composeCuttingPlans(
  line: LineResult,
  options: SheetOptions,
): Generator<SheetDocument, void> {
  for (const cutting of cuttings(line, options.machines)) yield composePlan(line, cutting, options);
}

/** Names of the sheets that `composeCuttingPlans` makes. */
export const cuttingPlanNames = (line: LineResult, language: SheetLanguage): readonly string[] =>
  goodsIds(line).map((id) => assemblySheetName("cutting-plan", goodsSlug(id), language));

function composePlan(line: LineResult, cutting: SheetCutting, options: SheetOptions): SheetDocument {
  const { language, machines } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const name = goodsSlug(cutting.sheetPartId);
  const title = label(language, cutting.labels, cutting.sheetPartId);
  const heading: Heading = {
    badge: "",
    title: say(language, (w) => w.kinds["cutting-plan"]),
    subtitle: title,
    facts: [
      words((w) => w.panels.machines(machines)),
      ...(cutting.plan === null
        ? []
        : [words((w) => w.panels.bound(cutting.newSheets, cutting.fewestNewSheets))]),
      thicknessText(line, cutting, language),
    ],
  };
  const room = roomOf(PAPER, 0);
  const notes = notesOf(line, cutting, language, room.widthMm);
  const notesMm = notes.reduce((sum, block) => sum + block.heightMm, 0);
  const headMm = headingBlock(heading, room.widthMm).heightMm;
  const drawing = { widthMm: room.widthMm, heightMm: room.heightMm - headMm - notesMm - 1 };
  return composeListing({
    identity: assemblyIdentity(
      line,
      { kind: "cutting-plan", name, letters: name.toUpperCase(), title },
      options,
    ),
    language,
    paper: PAPER,
    heading,
    cautions: [say(language, (w) => w.panels.caution.sheet)],
    blocks: () => [
      ...notes,
      ...cutting.sheets.map((sheet, i) => {
        const block = patternBlock(
          line,
          sheet,
          { number: i + 1, of: cutting.sheets.length },
          language,
          drawing,
        );
        // Each on a page of its own: it is pinned up at the saw.
        return { ...block, heightMm: Math.max(block.heightMm, drawing.heightMm) };
      }),
    ],
    grids: gridsOf(line, cutting, language),
  });
}

function notesOf(
  line: LineResult,
  cutting: SheetCutting,
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const none = noPlanText(line, cutting, language);
  if (none !== "") return [paragraph(none, widthMm, TEXT.large, true)];
  const areas = [cutting.usedAreaM2, cutting.sheetAreaM2, cutting.offcutAreaM2].map((m2) =>
    shortNumber(m2, 2),
  );
  const facts = [
    ...(cutting.sheetsForMates === 0 ? [] : [words((w) => w.panels.forMates(cutting.sheetsForMates))]),
    words((w) => w.panels.settingsBound(cutting.settings.length, cutting.fewestSettings)),
    ...(cutting.offcutSheets === 0 ? [] : [words((w) => w.panels.offcutsUsed(cutting.offcutSheets))]),
    words((w) => w.panels.plan.areas(areas[0] ?? "", areas[1] ?? "", areas[2] ?? "")),
  ];
  return [
    paragraph(facts.join(". "), widthMm, TEXT.normal),
    paragraph(
      words((w) => w.panels.plan.hint),
      widthMm,
      TEXT.small,
    ),
    gap(1),
  ];
}

function gridsOf(line: LineResult, cutting: SheetCutting, language: SheetLanguage): readonly Grid[] {
  const own = language === "both" ? "en" : language;
  const w = sheetWords(own);
  return [
    {
      name: w.kinds["cutting-plan"],
      header: ["pattern", "stock_sheet", "copies", "panel", "x_mm", "y_mm", "width_mm", "height_mm"],
      rows: cutting.sheets.flatMap((sheet, i) => [
        ...sheet.panels.map((panel) => [
          i + 1,
          sheet.stockId,
          sheet.copies,
          panel.panelIds.map((id) => panelName(line, id, own)).join(" / "),
          panel.xMm,
          panel.yMm,
          panel.widthMm,
          panel.heightMm,
        ]),
        ...sheet.offcuts.map((area) => [
          i + 1,
          sheet.stockId,
          sheet.copies,
          w.panels.plan.keep,
          area.xMm,
          area.yMm,
          area.widthMm,
          area.heightMm,
        ]),
      ]),
    },
  ].filter((grid) => grid.rows.length > 0);
}
