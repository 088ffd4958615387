import { type CashWeek, dayText } from "@pinwright/engine";
import { currencyPlaces } from "@pinwright/kernel";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, table } from "../compose/table.ts";
import { runIdentity } from "./identity.ts";
import { cellNumber, moneyText, type RunSheetInput, wordsOf } from "./texts.ts";

const END = { align: "end", whole: true } as const;

/** Money that goes out week by week, for all runs. */
export function composeCashSheet(input: RunSheetInput): SheetDocument {
  const { line, plan, options } = input;
  const words = wordsOf(options);
  const places = currencyPlaces(plan.currency);
  const figures = (week: CashWeek): readonly bigint[] => [week.material, week.tooling, week.work, week.total];
  const total = plan.cash.at(-1)?.total ?? 0n;
  const columns: readonly TableColumn[] = [
    { header: words((w) => w.runs.week), weight: "bold", grow: true },
    { header: words((w) => w.runs.material), ...END },
    { header: words((w) => w.runs.tooling), ...END },
    { header: words((w) => w.runs.work), ...END },
    { header: words((w) => w.runs.sum), weight: "bold", ...END },
    { header: words((w) => w.runs.ofRuns), heightMm: TEXT.small },
  ];
  const forRuns = (week: CashWeek): string =>
    week.runs.map(({ runId, amount }) => `${runId} ${moneyText(amount, places)}`).join("\n");
  const header = columns.map((column) => column.header);
  return composeListing({
    identity: runIdentity(
      line,
      "run-cash",
      "",
      say(options.language, (w) => w.runs.allRuns),
      options,
    ),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: words((w) => w.runs.kinds["run-cash"]),
      subtitle: words((w) => w.runs.allRuns),
      facts: [`${moneyText(total, places)} ${plan.currency}`.trim()],
    },
    cautions: [],
    blocks: (widthMm) => [
      paragraph(
        words((w) => w.runs.cashHint(plan.currency)),
        widthMm,
        TEXT.small,
      ),
      gap(2),
      ...table(
        columns,
        plan.cash.map((week) => ({
          kind: "row" as const,
          cells: [
            dayText(week.week),
            ...figures(week).map((amount) => moneyText(amount, places)),
            forRuns(week),
          ],
        })),
        widthMm,
        words((w) => w.common.continued),
      ),
    ],
    grids: [
      {
        name: words((w) => w.runs.kinds["run-cash"]),
        header: [...header.slice(0, -1), ...plan.runs.map((run) => run.runId)],
        rows: plan.cash.map((week) => [
          dayText(week.week),
          ...figures(week).map(cellNumber),
          ...plan.runs.map((run) =>
            cellNumber(week.runs.find((own) => own.runId === run.runId)?.amount ?? 0n),
          ),
        ]),
      },
    ],
  });
}
