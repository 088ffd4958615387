import { continuityTest, isWithin, type ReadingRecord, testsOf, type UnitState } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import type { SheetLanguage } from "@pinwright/words";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { isCalibrated } from "./certificate-instruments.ts";
import { headed } from "./certificate-parts.ts";
import {
  type CertificateInput,
  type GateSheetInput,
  headsOf,
  kindText,
  minuteText,
  personText,
  SOURCE_MM,
  typeText,
  wordsOf,
} from "./texts.ts";

type Test = ReturnType<typeof testsOf>[number];
/** What a line says of a test: of the book's row, or of a step of one that is a sequence. */
type TestRow = Pick<Test, "label" | "label_zh" | "unit" | "min" | "max" | "kind" | "from" | "to">;

/** One line of a certificate: a test that the book asks for, a step of one, or one that was read besides. */
interface TestLine {
  readonly id: string;
  readonly part: "protects" | "works" | "others";
  /** Null: derived, or not in the book. */
  readonly row: TestRow | null;
  /** A step of the test before it: it is shown and does not count by itself. */
  readonly isStep: boolean;
  readonly last: ReadingRecord | null;
  readonly times: number;
  readonly verdict: "good" | "bad" | "missing" | "stale";
  /** Somebody lifted what keeps it open. */
  readonly lifted: boolean;
}

/** What stands between a person and mains or a moving coil: these come first, as nobody may lift them. */
const PROTECTS: ReadonlySet<Test["purpose"]> = new Set(["bond", "insulation", "polarity", "interlock"]);

/** Judged by the book's limits; without a row of the book, by what the tester said. */
const isGood = (row: TestRow | null, last: ReadingRecord): boolean =>
  row === null ? last.good : isWithin(row, last);

/**
 * Every test of a unit: those that protect people, then the others, both in the order of risk, then what was read without
 * being asked for, by id. Limits are those of the line's book; nothing is asked of a unit of another book.
 */
export function testLines({ line, bookId, blocks }: GateSheetInput, state: UnitState): readonly TestLine[] {
  const { begun, readings } = state;
  if (begun === null) return [];
  const own = new Map(
    blocks.filter(({ gate, unit }) => gate === "test" && unit === state.unit).map((one) => [one.of, one]),
  );
  const lineOf = (id: string, part: TestLine["part"], row: TestRow | null, isStep = false): TestLine => {
    const all = readings.get(id) ?? [];
    const last = all.at(-1) ?? null;
    const block = own.get(id);
    const isStale = block?.why === "not-retested";
    const verdict = last === null ? "missing" : !isGood(row, last) ? "bad" : isStale ? "stale" : "good";
    return { id, part, row, isStep, last, times: all.length, verdict, lifted: block?.lifted ?? false };
  };
  const rows = begun.book === bookId ? testsOf(line, begun.what, begun.type) : [];
  const withSteps = (row: Test): readonly TestLine[] => {
    const part = PROTECTS.has(row.purpose) ? "protects" : "works";
    const steps = line.machine.book.tables.test_steps.filter((step) => step.test === row.id);
    return [
      lineOf(row.id, part, row),
      ...[...steps]
        .sort((a, b) => a.no - b.no)
        .map((step) => {
          const kind = step.min === null && step.max === null ? "yes-no" : "measure";
          return lineOf(`${row.id}/${step.no}`, part, { ...step, kind, from: null, to: null }, true);
        })
        // A sequence may be told as a whole.
        .filter(({ last }) => last !== null),
    ];
  };
  const asked = [
    ...rows.filter(({ purpose }) => PROTECTS.has(purpose)).flatMap(withSteps),
    ...(begun.what === "harness" && begun.book === bookId
      ? [lineOf(continuityTest(begun.type), "works", null)]
      : []),
    ...rows.filter(({ purpose }) => !PROTECTS.has(purpose)).flatMap(withSteps),
  ];
  const known = new Set(asked.map(({ id }) => id));
  const others = [...readings.keys()].filter((id) => !known.has(id)).sort(compareText);
  return [...asked, ...others.map((id) => lineOf(id, "others", null))];
}

/** How many tests that the book asks for are good, and how many there are. */
export function passedOf(
  lines: readonly TestLine[],
  part?: TestLine["part"],
): { readonly passed: number; readonly all: number } {
  const asked = lines.filter(
    (one) => one.part !== "others" && !one.isStep && (part === undefined || one.part === part),
  );
  return { passed: asked.filter(({ verdict }) => verdict === "good").length, all: asked.length };
}

/** A value with its unit: three figures below one, for milliohms. */
const valueText = (value: number, unit: string): string => `${shortNumber(value, 4)} ${unit}`.trim();

/** `30 … 70 mA`, or how a test without figures is judged. */
function limitText(row: TestRow | null, language: SheetLanguage): string {
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
  const { value } = last;
  if (value === null) return say(language, ({ records: { certificate: w } }) => (last.good ? w.yes : w.no));
  // A figure that rounding would bring within the limits is told whole.
  const rounded = { ...last, value: Number(shortNumber(value, 4)) };
  const isSame = row === null || isWithin(row, rounded) === isWithin(row, last);
  return isSame ? valueText(value, row?.unit ?? "") : `${value} ${row?.unit ?? ""}`.trim();
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

/** The instrument, and whether it could not be trusted. */
function instrumentText(input: CertificateInput, { last }: TestLine): string {
  if (last === null || last.instrument === "") return "";
  if (isCalibrated(input, last) !== false) return last.instrument;
  return `${last.instrument}\n${headsOf(input.options)((w) => w.records.certificate.notCalibrated)}`;
}

function lineRow(input: CertificateInput, state: UnitState, one: TestLine, name?: string): TableRow {
  const { language } = input.options;
  const heads = headsOf(input.options);
  const verdict = heads((w) => w.records.certificate[one.verdict]);
  return {
    kind: "row",
    cells: [
      name ?? nameText(one, state, language),
      limitText(one.row, language),
      readingText(one, language),
      one.lifted ? `${verdict}\n${heads((w) => w.records.certificate.lifted)}` : verdict,
      instrumentText(input, one),
      one.last === null
        ? ""
        : `${personText(input, one.last.source.person)}\n${minuteText(one.last.source.at)}`,
    ],
  };
}

/** Room for a short verdict and a short name on one line: other columns would take it. */
const VERDICT_MM = 10;
const INSTRUMENT_MM = 17;

function columnsOf(input: CertificateInput, heightMm: number): readonly TableColumn[] {
  const heads = headsOf(input.options);
  const columns: readonly TableColumn[] = [
    { header: heads((w) => w.records.certificate.test), grow: true, detail: true },
    { header: heads((w) => w.records.certificate.limits) },
    { header: heads((w) => w.records.certificate.reading), weight: "bold", align: "end" },
    { header: heads((w) => w.records.certificate.verdict), weight: "bold", minMm: VERDICT_MM },
    { header: heads((w) => w.records.certificate.instrument), detail: true, minMm: INSTRUMENT_MM },
    { header: heads((w) => w.records.whoWhen), detail: true, minMm: SOURCE_MM },
  ];
  return columns.map((column) => ({ ...column, heightMm }));
}

/** The table of tests of the unit itself. */
export function testBlocks(
  input: CertificateInput,
  state: UnitState,
  lines: readonly TestLine[],
  widthMm: number,
): readonly Block[] {
  const words = wordsOf(input.options);
  const rows = (["protects", "works", "others"] as const).flatMap((part): TableRow[] => {
    const own = lines.filter((one) => one.part === part);
    if (own.length === 0) return [];
    return [
      { kind: "group", text: words((w) => w.records.certificate[part]) },
      ...own.map((one) => lineRow(input, state, one)),
    ];
  });
  if (rows.length === 0) return [];
  return headed(
    input,
    (w) => w.records.certificate.testsTitle,
    widthMm,
    table(
      columnsOf(input, TEXT.normal),
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  );
}

/** Letters of the tests of what is inside: there are hundreds, and the summary stands on the first page. */
const INSIDE_MM = 2;

/** Tests of one unit inside under its name; a single one in one row with it. */
function insideRows(input: CertificateInput, state: UnitState): readonly TableRow[] {
  const { language } = input.options;
  const lines = testLines(input, state);
  const place = state.within.find(({ until }) => until === null)?.place ?? "";
  const name = [state.unit, kindText(state, input.options), typeText(input, state), place]
    .filter((text) => text !== "")
    .join(" · ");
  const [only] = lines;
  if (only === undefined) return [];
  if (lines.length === 1)
    return [
      lineRow(input, state, only, `${name}\n${nameText(only, state, language).split("\n").join(" · ")}`),
    ];
  const { passed, all } = passedOf(lines);
  const detail = wordsOf(input.options)((w) => w.records.certificate.passed(passed, all));
  return [{ kind: "group", text: name, detail }, ...lines.map((one) => lineRow(input, state, one))];
}

/** The tests of the units inside, one unit after the other; a unit without a test is left out. */
export function insideTestBlocks(
  input: CertificateInput,
  contents: readonly UnitState[],
  widthMm: number,
): readonly Block[] {
  const words = wordsOf(input.options);
  const units = contents.map((state) => insideRows(input, state)).filter((rows) => rows.length > 0);
  if (units.length === 0) return [];
  const blocksOf = (rows: readonly TableRow[]): readonly Block[] =>
    rows.length === 0
      ? []
      : table(
          columnsOf(input, INSIDE_MM),
          rows,
          widthMm,
          words((w) => w.common.continued),
        );
  // Those with one test come last, in a table of their own: no heading of another unit stands over them.
  return headed(input, (w) => w.records.certificate.insideTests, widthMm, [
    ...blocksOf(units.filter((rows) => rows.length > 1).flat()),
    ...(units.some((rows) => rows.length > 1) && units.some((rows) => rows.length === 1) ? [gap(3)] : []),
    ...blocksOf(units.filter((rows) => rows.length === 1).flat()),
  ]);
}
