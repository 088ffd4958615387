import {
  type Block as Barrier,
  continuityTest,
  isWithin,
  type ReadingRecord,
  testsOf,
  type UnitState,
} from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { headsOf, minuteText, personText, type RecordSheetInput, SOURCE_MM, wordsOf } from "./texts.ts";

type Test = ReturnType<typeof testsOf>[number];

/** One line of a certificate: a test that the book asks for, or one that was read besides. */
interface TestLine {
  readonly id: string;
  readonly part: "protects" | "works" | "others";
  /** The row of the book; null: derived, or not in the book. */
  readonly row: Test | null;
  readonly last: ReadingRecord | null;
  readonly times: number;
  readonly verdict: "good" | "bad" | "missing" | "stale";
}

/** What stands between a person and mains or a moving coil: these come first, as nobody may lift them. */
const PROTECTS: ReadonlySet<Test["purpose"]> = new Set(["bond", "insulation", "polarity", "interlock"]);

/** Judged by the book's limits; without a row of the book, by what the tester said. */
const isGood = (row: Test | null, last: ReadingRecord): boolean =>
  row === null ? last.good : isWithin(row, last);

/**
 * Every test of a unit: those that protect people, then the others, both in the order of risk, then what was read without
 * being asked for, by id.
 * @param barriers what keeps the unit from being released: they tell a test that must be done again
 */
export function testLines(
  { line }: Pick<RecordSheetInput, "line">,
  state: UnitState,
  barriers: readonly Barrier[],
): readonly TestLine[] {
  const { begun, readings } = state;
  if (begun === null) return [];
  const stale = new Set(
    barriers
      .filter(({ gate, why, unit }) => gate === "test" && why === "not-retested" && unit === state.unit)
      .map(({ of }) => of),
  );
  const lineOf = (id: string, part: TestLine["part"], row: Test | null): TestLine => {
    const own = readings.get(id) ?? [];
    const last = own.at(-1) ?? null;
    const verdict = last === null ? "missing" : !isGood(row, last) ? "bad" : stale.has(id) ? "stale" : "good";
    return { id, part, row, last, times: own.length, verdict };
  };
  const rows = testsOf(line, begun.what, begun.type);
  const asked = [
    ...rows.filter(({ purpose }) => PROTECTS.has(purpose)).map((row) => lineOf(row.id, "protects", row)),
    ...(begun.what === "harness" ? [lineOf(continuityTest(begun.type), "works", null)] : []),
    ...rows.filter(({ purpose }) => !PROTECTS.has(purpose)).map((row) => lineOf(row.id, "works", row)),
  ];
  const known = new Set(asked.map(({ id }) => id));
  const others = [...readings.keys()].filter((id) => !known.has(id)).sort();
  return [...asked, ...others.map((id) => lineOf(id, "others", null))];
}

/** How many tests that the book asks for are good, and how many there are. */
export function passedOf(lines: readonly TestLine[]): { readonly passed: number; readonly all: number } {
  const asked = lines.filter(({ part }) => part !== "others");
  return { passed: asked.filter(({ verdict }) => verdict === "good").length, all: asked.length };
}

/** A value with its unit: three figures below one, for milliohms. */
const valueText = (value: number, unit: string): string => `${shortNumber(value, 4)} ${unit}`.trim();

/** `30 … 70 mA`, or how a test without figures is judged. */
function limitText(row: Test | null, language: SheetLanguage): string {
  return say(
    language,
    ({ records: { certificate: w }, boards: { test: b } }) => {
      if (row === null) return "—";
      const { min, max, unit, kind } = row;
      if (min !== null && max !== null) return `${shortNumber(min, 4)} … ${valueText(max, unit)}`;
      if (min !== null) return b.atLeast(valueText(min, unit));
      if (max !== null) return b.atMost(valueText(max, unit));
      if (kind === "visual") return w.looked;
      return kind === "sequence" ? w.sequence : w.judged;
    },
    " · ",
  );
}

function readingText({ row, last }: TestLine, language: SheetLanguage): string {
  if (last === null) return "—";
  if (last.value !== null) return valueText(last.value, row?.unit ?? "");
  return say(language, ({ records: { certificate: w } }) => (last.good ? w.yes : w.no));
}

function nameText({ id, row, times }: TestLine, state: UnitState, language: SheetLanguage): string {
  const isContinuity = row === null && id === continuityTest(state.begun?.type ?? "");
  const name = isContinuity
    ? say(language, (w) => w.records.certificate.continuity, " · ")
    : label(language, { en: row?.label ?? "", zh: row?.label_zh ?? "" }, id, " · ");
  const between = [row?.from ?? null, row?.to ?? null].filter((point) => point !== null && point !== "");
  const details = [
    name === id ? "" : id,
    between.join(" → "),
    times > 1 ? say(language, (w) => w.records.certificate.times(times), " · ") : "",
  ].filter((text) => text !== "");
  return details.length === 0 ? name : `${name}\n${details.join(" · ")}`;
}

/** The table of tests. */
export function testBlocks(
  input: RecordSheetInput,
  state: UnitState,
  lines: readonly TestLine[],
  widthMm: number,
): readonly Block[] {
  const { language } = input.options;
  const words = wordsOf(input.options);
  const heads = headsOf(input.options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.certificate.test), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.limits) },
    { header: heads((w) => w.records.certificate.reading), weight: "bold", align: "end" },
    { header: heads((w) => w.records.certificate.verdict), weight: "bold" },
    { header: heads((w) => w.records.certificate.instrument) },
    {
      header: heads((w) => w.records.whoWhen),
      detail: true,
      minMm: SOURCE_MM,
    },
  ];
  const rows = (["protects", "works", "others"] as const).flatMap((part): TableRow[] => {
    const own = lines.filter((one) => one.part === part);
    if (own.length === 0) return [];
    return [
      { kind: "group", text: words((w) => w.records.certificate[part]) },
      ...own.map(
        (one): TableRow => ({
          kind: "row",
          cells: [
            nameText(one, state, language),
            limitText(one.row, language),
            readingText(one, language),
            heads((w) => w.records.certificate[one.verdict]),
            one.last?.instrument ?? "",
            one.last === null
              ? ""
              : `${personText(input, one.last.source.person)}\n${minuteText(one.last.source.at)}`,
          ],
        }),
      ),
    ];
  });
  if (rows.length === 0) return [];
  return table(
    columns.map((column) => ({ ...column, heightMm: TEXT.normal })),
    rows,
    widthMm,
    words((w) => w.common.continued),
  );
}
