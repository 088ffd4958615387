import type { Block as Barrier, UnitState } from "@pinwright/engine";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { FIELD, type TableColumn, type TableRow, table } from "../compose/table.ts";
import { passedOf, testLines } from "./certificate-tests.ts";
import {
  type CertificateInput,
  headsOf,
  kindText,
  partText,
  type RecordSheetInput,
  SOURCE_MM,
  sourceText,
  typeText,
  wordsOf,
  workText,
} from "./texts.ts";

type Choose = Parameters<typeof say>[1];

/** A heading over the table or words that follow it. */
const headed = (
  input: RecordSheetInput,
  title: Choose,
  widthMm: number,
  blocks: readonly Block[],
): Block[] => [
  gap(3),
  { ...paragraph(wordsOf(input.options)(title), widthMm, TEXT.large, true), keepMm: 20 },
  ...blocks,
];

const plain = (
  input: RecordSheetInput,
  says: Choose,
  widthMm: number,
  heightMm: number = TEXT.normal,
): Block => paragraph(say(input.options.language, says), widthMm, heightMm);

const row = (cells: readonly string[]): TableRow => ({ kind: "row", cells });

const listed = (
  input: RecordSheetInput,
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  widthMm: number,
): readonly Block[] =>
  table(
    columns,
    rows,
    widthMm,
    wordsOf(input.options)((w) => w.common.continued),
  );

/** Name of what a gate is about, and under it its id. */
function matterText(input: RecordSheetInput, gate: Barrier["gate"], of: string): string {
  const name =
    gate === "step" ? workText(input, "steps", of) : gate === "test" ? workText(input, "tests", of) : of;
  return name === of ? of : `${name}\n${of}`;
}

/** What keeps the unit, or a unit inside it, from being released. */
export function openBlocks(
  input: RecordSheetInput,
  barriers: readonly Barrier[],
  widthMm: number,
): readonly Block[] {
  const words = wordsOf(input.options);
  const heads = headsOf(input.options);
  const open = barriers.filter(({ lifted }) => !lifted);
  if (open.length === 0)
    return [gap(2), plain(input, (w) => w.records.certificate.nothingOpen, widthMm, TEXT.large)];
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.unit), weight: "bold", whole: true },
    { header: heads((w) => w.records.certificate.matter), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.state), weight: "bold", detail: true },
  ];
  const rows = open.map(({ unit, gate, of, why, firm }) =>
    row([
      unit,
      `${words((w) => w.records.certificate.gates[gate])}: ${matterText(input, gate, of)}`,
      words((w) => w.records.certificate.whys[why]) +
        (firm ? `\n${words((w) => w.records.certificate.firm)}` : ""),
    ]),
  );
  return headed(input, (w) => w.records.certificate.openTitle, widthMm, [
    plain(input, (w) => w.records.certificate.openHint, widthMm),
    ...listed(input, columns, rows, widthMm),
  ]);
}

/** Units inside at any depth, each with the place that it has in the one that holds it. */
export function insideBlocks(
  input: RecordSheetInput,
  outer: string,
  contents: readonly UnitState[],
  barriers: readonly Barrier[],
  widthMm: number,
): readonly Block[] {
  const heads = headsOf(input.options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.serial), weight: "bold", whole: true },
    { header: heads((w) => w.records.what), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.revision) },
    { header: heads((w) => w.records.certificate.place), detail: true },
    { header: heads((w) => w.records.certificate.tests), align: "end" },
    { header: heads((w) => w.records.certificate.fitted), detail: true, minMm: SOURCE_MM },
  ];
  const rows = contents.map((state) => {
    const fitting = state.within.find(({ until }) => until === null);
    const { passed, all } = passedOf(testLines(input, state, barriers));
    const kind = [kindText(state, input.options), state.begun?.type ?? ""].filter((text) => text !== "");
    return row([
      state.unit,
      `${typeText(input, state)}\n${kind.join(" · ")}`,
      state.begun?.revision ?? "",
      fitting === undefined ? "" : fitting.place + (fitting.unit === outer ? "" : `\n${fitting.unit}`),
      `${passed} / ${all}`,
      fitting === undefined ? "" : sourceText(input, fitting.from),
    ]);
  });
  return headed(
    input,
    (w) => w.records.certificate.inside,
    widthMm,
    rows.length === 0
      ? [plain(input, (w) => w.records.certificate.nothingInside, widthMm)]
      : listed(input, columns, rows, widthMm),
  );
}

/** Alternates and concessions, overrides and defects of the unit and of what is inside it, with why. */
export function departureBlocks(
  input: RecordSheetInput,
  states: readonly UnitState[],
  widthMm: number,
): readonly Block[] {
  const words = wordsOf(input.options);
  const heads = headsOf(input.options);
  const { language } = input.options;
  const unit: TableColumn = { header: heads((w) => w.records.unit), weight: "bold", whole: true };
  const why: TableColumn = { header: heads((w) => w.records.why), grow: true };
  const who: TableColumn = {
    header: heads((w) => w.records.whoWhen),
    ...{ detail: true, minMm: SOURCE_MM },
  };
  const column = (choose: Choose): TableColumn => ({ header: heads(choose), detail: true });
  const part = (id: string): string => {
    const name = partText(input, id);
    return name === id ? id : `${name}\n${id}`;
  };
  const alternates = states.flatMap((state) =>
    state.alternates.map((one) =>
      row([
        state.unit,
        part(one.part),
        part(one.instead),
        words((w) => w.records.certificate.allowed[one.allowed]),
        one.why,
        sourceText(input, one.source),
      ]),
    ),
  );
  const overrides = states.flatMap((state) =>
    state.overrides.map((one) =>
      row([
        state.unit,
        `${words((w) => w.records.certificate.gates[one.gate])}: ${matterText(input, one.gate, one.of)}`,
        one.why,
        sourceText(input, one.source),
      ]),
    ),
  );
  const defects = states.flatMap((state) =>
    [...state.defects.values()].map(({ what, says, where, found, mended }) =>
      row([
        state.unit,
        `${what}\n${[says, where.item, where.point, where.panel].filter((text) => (text ?? "") !== "").join(" · ")}`,
        sourceText(input, found),
        mended === null ? "" : [mended.cause, mended.says].filter((text) => text !== "").join("\n"),
        mended === null
          ? say(language, (w) => w.records.certificate.notMended, " · ")
          : sourceText(input, mended.source),
      ]),
    ),
  );
  const section = (
    title: Choose,
    none: Choose,
    columns: readonly TableColumn[],
    rows: readonly TableRow[],
  ): readonly Block[] =>
    headed(
      input,
      title,
      widthMm,
      rows.length === 0 ? [plain(input, none, widthMm)] : listed(input, columns, rows, widthMm),
    );
  return [
    ...section(
      (w) => w.records.certificate.departures,
      (w) => w.records.certificate.noDepartures,
      [
        unit,
        column((w) => w.records.certificate.part),
        column((w) => w.records.certificate.instead),
        column((w) => w.records.certificate.allowedBy),
        why,
        who,
      ],
      alternates,
    ),
    ...section(
      (w) => w.records.certificate.overrides,
      (w) => w.records.certificate.noOverrides,
      [unit, column((w) => w.records.certificate.matter), why, who],
      overrides,
    ),
    ...section(
      (w) => w.records.certificate.defects,
      (w) => w.records.certificate.noDefects,
      [
        unit,
        { ...column((w) => w.records.certificate.matter), grow: true },
        { ...column((w) => w.records.certificate.found), minMm: SOURCE_MM },
        { ...column((w) => w.records.certificate.cause), grow: true },
        { ...column((w) => w.records.certificate.mended), minMm: SOURCE_MM },
      ],
      defects,
    ),
  ];
}

/** The heads of the streams, and room for those who sign. */
export function endBlocks(input: CertificateInput, widthMm: number): readonly Block[] {
  const heads = headsOf(input.options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.certificate.stream), heightMm: TEXT.small, grow: true },
    { header: heads((w) => w.records.certificate.number), heightMm: TEXT.small, align: "end", whole: true },
    { header: heads((w) => w.records.certificate.hash), heightMm: TEXT.small, whole: true },
  ];
  const rows = input.heads.map(({ stream, seq, hash }) => row([stream, String(seq), hash]));
  const field = (choose: Choose): TableColumn => ({ header: heads(choose), heightMm: 5, grow: true });
  return [
    ...headed(
      input,
      (w) => w.records.certificate.heads,
      widthMm,
      rows.length === 0
        ? [plain(input, (w) => w.records.certificate.noHeads, widthMm)]
        : [
            plain(input, (w) => w.records.certificate.headsHint, widthMm, TEXT.small),
            gap(1),
            ...listed(input, columns, rows, widthMm),
          ],
    ),
    gap(4),
    ...listed(
      input,
      [
        field((w) => w.records.certificate.tester),
        field((w) => w.records.certificate.releaser),
        { ...field((w) => w.records.certificate.date), grow: false, minMm: 38 },
      ],
      [row([FIELD, FIELD, FIELD])],
      widthMm,
    ),
  ];
}
