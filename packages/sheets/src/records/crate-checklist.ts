import type { BookRow } from "@pinwright/book";
import { appliesTo, type UnitState } from "@pinwright/engine";
import { languagesOf, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { shortNumber } from "../compose/number.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { FIELD, type TableColumn, type TableRow, TICK, table } from "../compose/table.ts";
import { recordIdentity } from "./identity.ts";
import {
  headsOf,
  optionText,
  partText,
  type RecordSheetInput,
  sourceText,
  typeText,
  wordsOf,
} from "./texts.ts";

type Choose = Parameters<typeof say>[1];

/**
 * What goes into the crate with one machine, and how it is made ready for the road: a list to be ticked. The parts are
 * those of the machine's own options in the book (cord, plate, labels, service book); how it is packed is common practice,
 * no source, beside the cautions that the book has for each pose.
 * @returns null when no record names the unit
 */
export function composeCrateChecklist(input: RecordSheetInput, unit: string): SheetDocument | null {
  const { line, options, units } = input;
  const state = units.get(unit);
  if (state === undefined) return null;
  const words = wordsOf(options);
  const name = typeText(input, state);
  const chosen = state.begun?.options ?? [];
  return composeListing({
    identity: recordIdentity(
      line,
      {
        kind: "crate-checklist",
        name: unit,
        title: `${unit}\n${name}`,
        ...(state.begun === null ? {} : { revision: state.begun.revision }),
      },
      options,
    ),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: unit,
      title: say(options.language, (w) => w.records.kinds["crate-checklist"]),
      subtitle: name,
      facts: [
        words((w) => w.records.revision(state.begun?.revision ?? "—")),
        ...chosen.map((option) => optionText(input, option)),
      ],
    },
    cautions: [
      say(options.language, (w) => w.records.crate.caution),
      say(options.language, (w) => w.records.crate.mains),
    ],
    blocks: (widthMm) => blocksOf(input, state, widthMm),
    grids: [gridOf(input, state)],
  });
}

/** Parts that a machine has because of its options, in the order of the book. */
function optionParts({ line }: RecordSheetInput, { begun }: UnitState): readonly BookRow<"bom">[] {
  const chosen = new Set(begun?.options ?? []);
  return line.machine.book.tables.bom.filter(
    (row) => row.parent === null && row.options.length > 0 && appliesTo(row, chosen),
  );
}

function blocksOf(input: RecordSheetInput, state: UnitState, widthMm: number): readonly Block[] {
  const { options } = input;
  const words = wordsOf(options);
  const heads = headsOf(options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.crate.done), heightMm: 3.5, align: "middle", minMm: 8 },
    { header: heads((w) => w.records.what), grow: true, detail: true },
    { header: heads((w) => w.records.crate.quantity), align: "end", heightMm: TEXT.large, weight: "bold" },
  ];
  return [
    ...(state.released === null
      ? [
          paragraph(
            say(options.language, (w) => w.records.crate.notYet),
            widthMm,
            TEXT.large,
            true,
          ),
          gap(1),
        ]
      : []),
    ...table(
      columns,
      rowsOf(input, state),
      widthMm,
      words((w) => w.common.continued),
    ),
    gap(3),
    ...table(
      [
        { header: heads((w) => w.records.crate.handed), heightMm: 5, grow: true },
        { header: heads((w) => w.records.crate.date), heightMm: 5, minMm: 45 },
      ],
      [{ kind: "row", cells: [FIELD, FIELD] }],
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

function rowsOf(input: RecordSheetInput, state: UnitState): readonly TableRow[] {
  const { line, options } = input;
  const words = wordsOf(options);
  const tick = (choose: Choose): TableRow => ({
    kind: "row",
    cells: [TICK, say(options.language, choose), ""],
  });
  const heading = (choose: Choose, detail = ""): TableRow => ({ kind: "group", text: words(choose), detail });
  const parts = optionParts(input, state);
  const poses = line.machine.book.tables.poses.filter((pose) => pose.usual === "no" && pose.caution !== "");
  const released = state.released;
  return [
    heading((w) => w.records.crate.before),
    ...(released === null
      ? []
      : [
          {
            kind: "row" as const,
            cells: [
              TICK,
              `${words((w) => w.records.crate.isReleased)}\n${sourceText(input, released).split("\n").join(", ")}`,
              "",
            ],
          },
        ]),
    tick((w) => w.records.crate.serial(state.unit)),
    tick((w) => w.records.crate.off),
    tick((w) => w.records.crate.cooled),
    tick((w) => w.records.crate.balls),
    tick((w) => w.records.crate.loose),
    tick((w) => w.records.crate.glass),
    tick((w) => w.records.crate.coinDoor),
    heading((w) => w.records.crate.fold),
    tick((w) => w.records.crate.twoFold),
    tick((w) => w.records.crate.strap),
    tick((w) => w.records.crate.legs),
    ...(poses.length === 0 ? [] : [heading((w) => w.records.crate.poses)]),
    ...poses.map((pose): TableRow => {
      const name = label(options.language, { en: pose.label, zh: pose.label_zh }, pose.id, " · ");
      return { kind: "row", cells: ["", `${name}\n${pose.caution}`, ""] };
    }),
    ...(parts.length === 0 ? [] : [heading((w) => w.records.crate.options)]),
    ...parts.map(
      (row): TableRow => ({
        kind: "row",
        cells: [
          TICK,
          `${partText(input, row.part)}\n${[row.part, ...row.options.map((o) => optionText(input, o))].join(" · ")}`,
          shortNumber(row.quantity, 3),
        ],
      }),
    ),
    heading((w) => w.records.crate.book),
    tick((w) => w.records.crate.certificate),
    tick((w) => w.records.crate.spares),
    heading((w) => w.records.crate.close),
    tick((w) => w.records.crate.lift),
    tick((w) => w.records.crate.blocked),
    tick((w) => w.records.crate.upright),
    tick((w) => w.records.crate.weight),
    tick((w) => w.records.crate.outside),
  ];
}

function gridOf(input: RecordSheetInput, state: UnitState): Grid {
  const [language = "en"] = languagesOf(input.options.language);
  const w = sheetWords(language).records;
  return {
    name: w.kinds["crate-checklist"],
    header: [w.serial, w.certificate.part, w.what, w.crate.quantity, w.options],
    rows: optionParts(input, state).map((row) => [
      state.unit,
      row.part,
      partText(input, row.part),
      row.quantity,
      row.options.join(" "),
    ]),
  };
}
