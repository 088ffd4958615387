import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { type Drill, type DrillSide, lettersOf } from "./drill-facts.ts";

/** A length with two decimals at most. */
export const mm = (value: number, places = 2): string => shortNumber(value, places);

/** Depth of a hole, or that it goes right through. */
export function depthText(drill: Pick<Drill, "depthMm">, language: SheetLanguage): string {
  return drill.depthMm === null ? say(language, (w) => w.steps.drill.through, " · ") : mm(drill.depthMm, 1);
}

/** What a drill is: mark, diameter, depth, how many holes, what for, and its layer. */
export function drillBlocks(
  line: LineResult,
  side: DrillSide,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const columns: TableColumn[] = [
    { header: words((w) => w.steps.pilot.mark), heightMm: TEXT.large, weight: "bold", whole: true },
    {
      header: words((w) => w.steps.drill.diameter),
      heightMm: TEXT.large,
      weight: "bold",
      align: "end",
      whole: true,
    },
    { header: words((w) => w.steps.drill.depth), heightMm: TEXT.large, align: "end" },
    { header: words((w) => w.steps.drill.kind) },
    { header: words((w) => w.steps.columns.count), align: "end", whole: true },
    { header: words((w) => w.steps.drill.symbolFor), grow: true },
    { header: words((w) => w.steps.drill.layer), heightMm: TEXT.small },
  ];
  const rows = side.drills.map(
    (d): TableRow => ({
      kind: "row",
      cells: [
        d.mark,
        mm(d.diameterMm),
        depthText(d, language),
        words((w) => w.steps.drill.kinds[d.kind]),
        String(d.holes.length),
        lettersOf(line, d.holes),
        d.layer,
      ],
    }),
  );
  return table(
    columns,
    rows,
    widthMm,
    words((w) => w.common.continued),
  );
}
