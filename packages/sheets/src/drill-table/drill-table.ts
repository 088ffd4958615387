import type { LineResult } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { stepSlug } from "../assembly/step-facts.ts";
import { bareViewText, panelSideName } from "../assembly/step-texts.ts";
import { symbolOf } from "../assembly/symbol-mark.ts";
import { type SymbolRow, symbolTable } from "../assembly/symbol-table.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import { itemName } from "../machine-facts.ts";
import type { SheetOptions } from "../options.ts";
import { depthText, drillBlocks, mm } from "./drill-blocks.ts";
import { composeDrillDrawing } from "./drill-drawing.ts";
import { type Drill, type DrillHole, type DrillSide, drillSides, lettersOf } from "./drill-facts.ts";

const sideName = ({ panelId, side }: DrillSide): string => `${stepSlug(panelId)}-${side}`;

/** For each panel side that is drilled: the table of its holes, and the same as a drawing for the router. */
export function* composeDrillTables(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  for (const side of drillSides(line)) {
    yield composeTable(line, side, options);
    yield composeDrillDrawing(line, side, options);
  }
}

/** Names of the sheets that `composeDrillTables` makes. */
export function drillTableNames(line: LineResult, language: SheetLanguage): readonly string[] {
  return drillSides(line).flatMap((side) => [
    assemblySheetName("drill-table", sideName(side), language),
    assemblySheetName("drill-table", `${sideName(side)}-drawing`, language),
  ]);
}

function holeRow(line: LineResult, drill: Drill, hole: DrillHole, language: SheetLanguage): SymbolRow {
  const first = hole.fasteners[0];
  const symbol = first === undefined ? null : symbolOf(line, first.type.id);
  const holds = first?.holds ?? null;
  return {
    symbol,
    row: {
      kind: "row",
      cells: [
        [...new Set(hole.fasteners.map((f) => symbolOf(line, f.type.id).letter))].join(", "),
        String(hole.number),
        hole.xMm.toFixed(2),
        hole.yMm.toFixed(2),
        mm(drill.diameterMm),
        depthText(drill, language),
        holds === null ? "" : itemName(line, holds, language),
        hole.row.fastenerIds.join(" "),
      ],
    },
  };
}

function composeTable(line: LineResult, side: DrillSide, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const title = panelSideName(line, side.panelId, side.side, language, "\n");
  const count = side.drills.reduce((sum, d) => sum + d.holes.length, 0);
  const right = { align: "end", whole: true } as const;
  return composeListing({
    identity: assemblyIdentity(
      line,
      { kind: "drill-table", name: sideName(side), letters: sideName(side).toUpperCase(), title },
      options,
    ),
    language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds["drill-table"]),
      subtitle: title,
      facts: [words((w) => w.steps.holes(count))],
    },
    cautions: [say(language, (w) => w.steps.caution.drill)],
    blocks: (widthMm) => [
      paragraph(
        say(language, (w) => w.steps.drill.hint),
        widthMm,
        TEXT.normal,
        true,
      ),
      paragraph(bareViewText(side.side, language), widthMm, TEXT.normal),
      gap(1),
      ...drillBlocks(line, side, language, widthMm),
      gap(4),
      ...symbolTable(
        words((w) => w.steps.columns.symbol),
        [
          { header: words((w) => w.steps.columns.letter), heightMm: TEXT.large, weight: "bold", whole: true },
          { ...right, header: words((w) => w.steps.columns.numbers) },
          { ...right, header: "x", weight: "bold" },
          { ...right, header: "y", weight: "bold" },
          { ...right, header: words((w) => w.steps.drill.diameter) },
          { header: words((w) => w.steps.drill.depth), align: "end" },
          { header: words((w) => w.steps.drill.holds), grow: true, heightMm: TEXT.small },
          { header: words((w) => w.steps.drill.fastener), heightMm: TEXT.small },
        ],
        side.drills.flatMap((drill): SymbolRow[] => [
          {
            symbol: null,
            row: {
              kind: "group",
              text: `${drill.mark}: Ø ${mm(drill.diameterMm)}, ${depthText(drill, language)}`,
              detail: words((w) => w.steps.holes(drill.holes.length)),
            },
          },
          ...drill.holes.map((hole) => holeRow(line, drill, hole, language)),
        ]),
        widthMm,
        words((w) => w.common.continued),
        line.machine.shop.numbers.symbol_mm,
      ),
    ],
    grids: [holeGrid(line, side, language)],
  });
}

function holeGrid(line: LineResult, side: DrillSide, language: SheetLanguage): Grid {
  const own = language === "both" ? "en" : language;
  const { drill: d, columns: c, pilot } = sheetWords(own).steps;
  return {
    name: `${side.panelId} ${side.side}`.slice(0, 31),
    header: [
      c.numbers,
      pilot.mark,
      "x_mm",
      "y_mm",
      d.diameter,
      d.depth,
      d.kind,
      c.letter,
      d.fastener,
      d.holds,
      d.layer,
      d.frameX,
    ],
    rows: side.drills.flatMap((drill) =>
      drill.holes.map((hole) => [
        hole.number,
        drill.mark,
        Number(hole.xMm.toFixed(3)),
        Number(hole.yMm.toFixed(3)),
        drill.diameterMm,
        drill.depthMm ?? d.through,
        d.kinds[drill.kind],
        lettersOf(line, [hole]),
        hole.row.fastenerIds.join(" "),
        [...new Set(hole.fasteners.map((f) => f.holds ?? ""))].join(" "),
        drill.layer,
        hole.row.xMm,
      ]),
    ),
  };
}
