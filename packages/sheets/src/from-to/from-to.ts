import { type FromToRow, fromToList, type HarnessResult, type LineResult } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { colourKey } from "../colour-key.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { endCavity, endPlace, endPlaceNamed, gaugeText, netName, wireNo, wiresById } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";

function gauge(line: LineResult, row: FromToRow): string {
  const type = line.machine.wireTypes.get(row.wireTypeId);
  return type === undefined ? row.wireTypeId : gaugeText(type);
}

/** The from-to list of a harness: every wire, where it starts and where it ends. */
export function composeFromTo(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const list = fromToList(line.machine, harness);
  const wires = wiresById(harness);
  const columns: TableColumn[] = [
    { whole: true, header: words((w) => w.common.wire), heightMm: TEXT.large, weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.common.colour), heightMm: TEXT.large, weight: "bold" },
    { whole: true, header: words((w) => w.common.gauge) },
    { header: words((w) => w.common.from), grow: true, detail: true },
    { whole: true, header: words((w) => w.common.cavity), heightMm: TEXT.large, weight: "bold" },
    { header: words((w) => w.common.to), grow: true, detail: true },
    { whole: true, header: words((w) => w.common.cavity), heightMm: TEXT.large, weight: "bold" },
    {
      whole: true,
      header: words((w) => w.common.finishedMm),
      heightMm: TEXT.large,
      weight: "bold",
      align: "end",
    },
    { whole: true, header: words((w) => w.common.tolerance), align: "end" },
    { whole: true, header: words((w) => w.common.cutMm), align: "end" },
    { header: words((w) => w.common.net), grow: true, detail: true },
  ];
  const rows = list.map(
    (row): TableRow => ({
      kind: "row",
      cells: [
        wireNo(harness, row.number),
        row.colour,
        gauge(line, row),
        endPlaceNamed(row.from, language),
        endCavity(row.from),
        endPlaceNamed(row.to, language),
        endCavity(row.to),
        shortMm(row.finishedMm),
        `+${shortMm(row.tolerancePlusMm)} −0`,
        shortMm(wires.get(row.wireId)?.cutMm ?? 0),
        `${row.netId}\n${netName(line, row.netId, language)}`,
      ],
    }),
  );
  return composeHarnessListing(line, harness, options, {
    kind: "from-to",
    paper: "a4-landscape",
    blocks: (widthMm) => [
      paragraph(
        words(
          (w) => `${w.fromTo.hint} ${w.fromTo.toleranceRule(shortMm(line.machine.shop.numbers.trim_mm))}`,
        ),
        widthMm,
        TEXT.small,
      ),
      colourKey(harness, language, widthMm),
      ...table(
        columns,
        rows,
        widthMm,
        words((w) => w.common.continued),
      ),
    ],
    grids: [fromToGrid(line, list, harness, language)],
  });
}

/** The short from-to table beside a pinboard. */
export function fromToBlocks(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): (widthMm: number) => readonly Block[] {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const wires = wiresById(harness);
  const columns: TableColumn[] = [
    { whole: true, header: words((w) => w.common.wire), weight: "bold", align: "end" },
    { whole: true, header: words((w) => w.common.colour), weight: "bold" },
    { whole: true, header: words((w) => w.common.gauge) },
    { header: words((w) => w.common.from), grow: true },
    { whole: true, header: words((w) => w.common.cavity), weight: "bold" },
    { header: words((w) => w.common.to), grow: true },
    { whole: true, header: words((w) => w.common.cavity), weight: "bold" },
    { whole: true, header: words((w) => w.common.cutMm), weight: "bold", align: "end" },
  ];
  const rows = fromToList(line.machine, harness).map(
    (row): TableRow => ({
      kind: "row",
      cells: [
        wireNo(harness, row.number),
        row.colour,
        gauge(line, row),
        endPlace(row.from, language),
        endCavity(row.from),
        endPlace(row.to, language),
        endCavity(row.to),
        shortMm(wires.get(row.wireId)?.cutMm ?? 0),
      ],
    }),
  );
  return (widthMm) =>
    table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    );
}

/** The from-to list for a spreadsheet. Headings are in the first language of the sheet. */
function fromToGrid(
  line: LineResult,
  list: readonly FromToRow[],
  harness: HarnessResult,
  language: SheetLanguage,
): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  const wires = wiresById(harness);
  return {
    name: w.kinds["from-to"],
    header: [
      w.common.harness,
      w.common.wire,
      w.common.colour,
      w.common.gauge,
      w.common.from,
      w.common.cavity,
      w.common.contact,
      w.common.to,
      w.common.cavity,
      w.common.contact,
      w.common.finishedMm,
      w.common.tolerance,
      w.common.cutMm,
      w.common.net,
    ],
    rows: list.map((row) => [
      harness.harness.number,
      wireNo(harness, row.number),
      row.colour,
      gauge(line, row),
      row.from.landingId ?? row.from.id,
      row.from.pin ?? (row.from.kind === "splice" ? "" : row.from.localId),
      row.from.contactPartId ?? "",
      row.to.landingId ?? row.to.id,
      row.to.pin ?? (row.to.kind === "splice" ? "" : row.to.localId),
      row.to.contactPartId ?? "",
      row.finishedMm,
      row.tolerancePlusMm,
      wires.get(row.wireId)?.cutMm ?? 0,
      row.netId,
    ]),
  };
}
