import type { CostKind, MachineCost } from "@pinwright/engine";
import { currencyPlaces } from "@pinwright/kernel";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { runIdentity } from "./identity.ts";
import { cellNumber, moneyText, type RunSheetInput, runTitle, wordsOf } from "./texts.ts";

/** Contributors that are printed; the spreadsheet has all of them. */
const MOST_SHOWN = 30;
/** Things that a figure lacks which are named. */
const MOST_NAMED = 12;

type Contributor = MachineCost["contributors"][number];

/** What one machine of a run costs, by kind and by what contributes most. */
export function composeCostSheet(input: RunSheetInput, cost: MachineCost): SheetDocument {
  const { line, plan, options } = input;
  const words = wordsOf(options);
  const money = moneyText(cost.each.value, currencyPlaces(plan.currency));
  return composeListing({
    identity: runIdentity(line, "run-cost", cost.runId, runTitle(input, cost.runId), options),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: "",
      title: words((w) => w.runs.kinds["run-cost"]),
      subtitle: runTitle(input, cost.runId),
      facts: [words((w) => w.runs.machines(cost.machines)), `${money} ${plan.currency}`.trim()],
    },
    cautions: [],
    blocks: (widthMm) => blocks(input, cost, widthMm),
    grids: [grid(input, cost)],
  });
}

const END = { align: "end", whole: true } as const;
const percent = (part: bigint, all: bigint): string =>
  all === 0n ? "" : `${((100 * Number(part)) / Number(all)).toFixed(1)} %`;

function blocks(
  input: RunSheetInput,
  { each, kinds, contributors }: MachineCost,
  widthMm: number,
): readonly Block[] {
  const { plan, options } = input;
  const words = wordsOf(options);
  const places = currencyPlaces(plan.currency);
  const heads = (first: string): readonly TableColumn[] => [
    { header: first, grow: true, weight: "bold", detail: true },
    { header: words((w) => w.runs.each(plan.currency)), ...END },
    { header: words((w) => w.runs.share), ...END },
  ];
  const row = (text: string, amount: bigint): TableRow => ({
    kind: "row",
    cells: [text, moneyText(amount, places), percent(amount, each.value)],
  });
  const continued = words((w) => w.common.continued);
  const missing = each.missing.map(({ id }) => id);
  const named = missing.slice(0, MOST_NAMED).join(", ") + (missing.length > MOST_NAMED ? " …" : "");
  return [
    paragraph(
      words((w) => w.runs.costHint),
      widthMm,
      TEXT.small,
    ),
    ...(missing.length === 0
      ? []
      : [
          gap(1),
          paragraph(
            words((w) => w.runs.costMissing(named)),
            widthMm,
            TEXT.normal,
            true,
          ),
        ]),
    gap(2),
    ...table(
      heads(words((w) => w.runs.kind)),
      [
        ...kinds.map(({ kind, each: amount }) => row(kindText(input, kind), amount)),
        { kind: "total", cells: [words((w) => w.runs.total), moneyText(each.value, places), ""] },
      ],
      widthMm,
      continued,
    ),
    gap(5),
    ...table(
      heads(words((w) => w.runs.contributor)),
      contributors.slice(0, MOST_SHOWN).map((own) => row(contributorText(input, own), own.each)),
      widthMm,
      continued,
    ),
  ];
}

const kindText = ({ options }: RunSheetInput, kind: CostKind): string =>
  wordsOf(options)((w) => w.runs.costKinds[kind]);

/** Name of a contributor, and its id below where that says more. */
function contributorText(input: RunSheetInput, { id, kind, labels }: Contributor): string {
  if (labels.en === "" && labels.zh === "") return kindText(input, kind);
  const name = label(input.options.language, labels, id, " · ");
  return name === id ? id : `${name}\n${id}`;
}

function grid(input: RunSheetInput, { contributors }: MachineCost): Grid {
  const { plan, options } = input;
  const words = wordsOf(options);
  return {
    name: words((w) => w.runs.kinds["run-cost"]),
    header: [
      words((w) => w.runs.kind),
      words((w) => w.runs.part),
      words((w) => w.parts.name),
      words((w) => w.runs.each(plan.currency)),
    ],
    rows: contributors.map((own) => [
      kindText(input, own.kind),
      own.id,
      contributorText(input, own).split("\n")[0] ?? own.id,
      cellNumber(own.each),
    ]),
  };
}
