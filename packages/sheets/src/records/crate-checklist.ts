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
import { openBlocks } from "./certificate-blocks.ts";
import { recordIdentity } from "./identity.ts";
import {
  type GateSheetInput,
  headsOf,
  optionsOf,
  optionText,
  partText,
  type RecordSheetInput,
  sourceText,
  typeText,
  wordsOf,
} from "./texts.ts";

type Choose = Parameters<typeof say>[1];
type BomRow = BookRow<"bom">;

/** What stands where a box would be while the machine may not ship. */
const LOCKED = "—";

/**
 * What goes into the crate with one machine, and how it is made ready for the road: a list to be ticked. What lies loose in
 * it, what is in the bag of spares, its papers and its packing are those of the machine's own options in the book; how it is
 * folded, lifted and closed is common practice, no source, beside the cautions that the book has for each pose. Of a machine
 * that may not ship it has no boxes, and says what stands against it.
 * @returns null when no record names the unit
 */
export function composeCrateChecklist(input: GateSheetInput, unit: string): SheetDocument | null {
  const { line, options, units } = input;
  const state = units.get(unit);
  if (state === undefined) return null;
  const words = wordsOf(options);
  const name = typeText(input, state);
  const chosen = optionsOf(input, state);
  const locked = isLocked(input, state);
  return composeListing({
    identity: recordIdentity(
      line,
      {
        kind: "crate-checklist",
        name: unit,
        title: `${unit}\n${name}`,
        ...(state.begun === null ? {} : { revision: state.begun.revision }),
      },
      { ...options, state: locked ? "draft" : "released" },
    ),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: unit,
      title: say(options.language, (w) => w.records.kinds["crate-checklist"]),
      subtitle: name,
      facts: [
        ...(locked ? [words((w) => w.records.crate.locked)] : []),
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

/** Whether the machine may not ship. */
const isLocked = ({ blocks }: GateSheetInput, { released }: UnitState): boolean =>
  released === null || blocks.some(({ lifted }) => !lifted);

/** Rows of the machine that go beside it or round it, in the order of the book. */
function travelling(input: RecordSheetInput, state: UnitState, how: BomRow["travels"]): readonly BomRow[] {
  const chosen = new Set(optionsOf(input, state));
  return input.line.machine.book.tables.bom.filter(
    (row) => row.parent === null && row.travels === how && appliesTo(row, chosen),
  );
}

/** What a part that goes beside the machine holds: a bag of spares. */
const contentOf = ({ line }: RecordSheetInput, part: string): readonly BomRow[] =>
  line.machine.book.tables.bom.filter((row) => row.parent === part);

function blocksOf(input: GateSheetInput, state: UnitState, widthMm: number): readonly Block[] {
  const { options } = input;
  const words = wordsOf(options);
  const heads = headsOf(options);
  const locked = isLocked(input, state);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.crate.done), heightMm: 3.5, align: "middle", minMm: 8 },
    { header: heads((w) => w.records.what), grow: true, detail: true },
    {
      ...{
        header: heads((w) => w.records.crate.quantity),
        align: "end",
        heightMm: TEXT.large,
        weight: "bold",
      },
      whole: true,
    },
  ];
  const lock = [
    paragraph(
      say(options.language, (w) => w.records.crate.notYet),
      widthMm,
      TEXT.large,
      true,
    ),
    ...openBlocks(input, input.blocks, widthMm),
    gap(3),
  ];
  const sign = [
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
  return [
    ...(locked ? lock : []),
    ...table(
      columns,
      rowsOf(input, state, locked ? LOCKED : TICK),
      widthMm,
      words((w) => w.common.continued),
    ),
    ...(locked ? [] : sign),
  ];
}

/** `4`, `14 m`: how many of a part, in its unit. */
function quantityText({ line }: RecordSheetInput, { part, quantity }: BomRow): string {
  const unit = line.machine.book.tables.parts.find(({ id }) => id === part)?.unit ?? "each";
  return unit === "each" ? shortNumber(quantity, 3) : `${shortNumber(quantity, 3)} ${unit}`;
}

function rowsOf(input: GateSheetInput, state: UnitState, box: string): readonly TableRow[] {
  const { options } = input;
  const words = wordsOf(options);
  const tick = (choose: Choose): TableRow => ({
    kind: "row",
    cells: [box, say(options.language, choose), ""],
  });
  const heading = (choose: Choose): TableRow => ({ kind: "group", text: words(choose) });
  const partRow = (row: BomRow, before = ""): TableRow => {
    const details = [row.part, row.remark, ...row.options.map((o) => optionText(input, o))];
    return {
      kind: "row",
      cells: [
        box,
        `${before}${partText(input, row.part)}\n${details.filter((text) => text !== "").join(" · ")}`,
        quantityText(input, row),
      ],
    };
  };
  const loose = travelling(input, state, "loose");
  const packing = travelling(input, state, "packing");
  const { released } = state;
  return [
    heading((w) => w.records.crate.before),
    ...(released === null || box === LOCKED
      ? []
      : [
          {
            kind: "row" as const,
            cells: [
              box,
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
    ...glassRows(input, box),
    tick((w) => w.records.crate.coinDoor),
    heading((w) => w.records.crate.fold),
    tick((w) => w.records.crate.twoFold),
    tick((w) => w.records.crate.strap),
    tick((w) => w.records.crate.legs),
    ...poseRows(input),
    heading((w) => w.records.crate.looseParts),
    ...(loose.length === 0 ? [tick((w) => w.records.crate.spares)] : []),
    ...loose.flatMap((row) => [
      partRow(row),
      ...contentOf(input, row.part).map((content) => partRow(content, "– ")),
    ]),
    heading((w) => w.records.crate.papers),
    tick((w) => w.records.crate.certificate),
    tick((w) => w.records.crate.list),
    heading((w) => w.records.crate.close),
    ...packing.map((row) => partRow(row)),
    tick((w) => w.records.crate.lift),
    tick((w) => w.records.crate.blocked),
    tick((w) => w.records.crate.upright),
    tick((w) => w.records.crate.weight),
    tick((w) => w.records.crate.outside),
  ];
}

/** The panes of glass that the book has, with their sizes. */
function glassRows({ line, options }: RecordSheetInput, box: string): readonly TableRow[] {
  const panes = line.machine.book.tables.panels.filter(({ purpose }) => purpose === "glass");
  const text = say(options.language, (w) => w.records.crate.glass);
  if (panes.length === 0) return [{ kind: "row", cells: [box, text, ""] }];
  return panes.map((pane) => {
    const name = label(options.language, { en: pane.label, zh: pane.label_zh }, pane.id, " · ");
    const size = [pane.width_mm, pane.height_mm, pane.thickness_mm].filter((mm) => mm !== null).join(" × ");
    return { kind: "row", cells: [box, `${name}: ${size} mm\n${text.split("\n").join(" · ")}`, "1"] };
  });
}

/** Cautions of the book for each pose in which it is not played. */
function poseRows({ line, options }: RecordSheetInput): readonly TableRow[] {
  const poses = line.machine.book.tables.poses.filter(
    (pose) => pose.usual === "no" && (pose.caution || pose.caution_zh) !== "",
  );
  if (poses.length === 0) return [];
  return [
    { kind: "group", text: wordsOf(options)((w) => w.records.crate.poses) },
    ...poses.map((pose): TableRow => {
      const name = label(options.language, { en: pose.label, zh: pose.label_zh }, pose.id, " · ");
      const caution = label(options.language, { en: pose.caution, zh: pose.caution_zh }, "");
      return { kind: "row", cells: ["", `${name}\n${caution}`, ""] };
    }),
  ];
}

function gridOf(input: RecordSheetInput, state: UnitState): Grid {
  const [language = "en"] = languagesOf(input.options.language);
  const w = sheetWords(language).records;
  const rows = (["loose", "packing"] as const).flatMap((how) => travelling(input, state, how));
  return {
    name: w.kinds["crate-checklist"],
    header: [w.serial, w.certificate.part, w.what, w.crate.quantity, w.options],
    rows: rows.map((row) => [
      state.unit,
      row.part,
      partText(input, row.part),
      row.quantity,
      row.options.join(" "),
    ]),
  };
}
