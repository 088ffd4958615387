import type { Block as Barrier, UnitState } from "@pinwright/engine";
import type { Block } from "../compose/flow.ts";
import { say } from "../compose/say.ts";
import type { TableColumn, TableRow } from "../compose/table.ts";
import { type Choose, headed, listed, plain, row } from "./certificate-parts.ts";
import {
  headsOf,
  overId,
  partText,
  type RecordSheetInput,
  SOURCE_MM,
  sourceText,
  wordsOf,
  workText,
} from "./texts.ts";

/** Name of what a gate is about, and under it its id. */
function matterText(input: RecordSheetInput, gate: Barrier["gate"], of: string): string {
  const name =
    gate === "step" ? workText(input, "steps", of) : gate === "test" ? workText(input, "tests", of) : of;
  return overId(name, of);
}

/** Most matters that stand in one row: a row is never broken over two pages. */
const MOST_IN_ROW = 40;
/** Beyond so many of one sort, they are told by their ids alone. */
const MOST_NAMED = 6;

/** Rows of what keeps one unit for one reason: named one by one, or only their ids where they are many. */
function openRows(input: RecordSheetInput, own: readonly Barrier[]): TableRow[] {
  const words = wordsOf(input.options);
  const [first] = own;
  if (first === undefined) return [];
  const { unit, gate, why, firm } = first;
  const state =
    words((w) => w.records.certificate.whys[why]) +
    (firm ? `\n${words((w) => w.records.certificate.firm)}` : "");
  const name = words((w) => w.records.certificate.gates[gate]);
  if (own.length <= MOST_NAMED)
    return own.map(({ of }) => row([unit, `${name}: ${matterText(input, gate, of)}`, state]));
  const rows: TableRow[] = [];
  for (let at = 0; at < own.length; at += MOST_IN_ROW) {
    const some = own.slice(at, at + MOST_IN_ROW).map(({ of }) => of);
    rows.push(row([unit, `${name}: ${some.length}\n${some.join(" · ")}`, state]));
  }
  return rows;
}

/** What keeps the unit, or a unit inside it, from being released; what protects people comes first. */
export function openBlocks(
  input: RecordSheetInput,
  barriers: readonly Barrier[],
  widthMm: number,
): readonly Block[] {
  const heads = headsOf(input.options);
  const open = barriers.filter(({ lifted }) => !lifted);
  if (open.length === 0) return [];
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.unit), weight: "bold", whole: true },
    { header: heads((w) => w.records.certificate.matter), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.state), weight: "bold", detail: true },
  ];
  const sorts = new Map<string, Barrier[]>();
  for (const one of [...open.filter(({ firm }) => firm), ...open.filter(({ firm }) => !firm)]) {
    const key = [one.firm, one.unit, one.gate, one.why].join(" ");
    sorts.set(key, [...(sorts.get(key) ?? []), one]);
  }
  return headed(input, (w) => w.records.certificate.openTitle, widthMm, [
    plain(input, (w) => w.records.certificate.openHint, widthMm),
    ...listed(
      input,
      columns,
      [...sorts.values()].flatMap((own) => openRows(input, own)),
      widthMm,
    ),
  ]);
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
  const part = (id: string): string => overId(partText(input, id), id);
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
