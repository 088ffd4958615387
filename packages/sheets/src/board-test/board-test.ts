import type { BookRow } from "@pinwright/book";
import { type BoardRegisterRow, boardTests, type LineResult } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { boardName, boardSlug } from "../board-picture/board-texts.ts";
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
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";

type Test = BookRow<"tests">;

/** Boards that one sheet has room for. */
const BOARDS = 4;
/** Least width of a field for a serial number or a reading. */
const FIELD_MM = 22;

const testedTypes = (line: LineResult): readonly BoardRegisterRow[] =>
  line.boards.register.filter(
    (row) => row.boardIds.length > 0 && boardTests(line.machine, row.typeId).length > 0,
  );

/** The test of each board type that the machine has, with limits and fields for some boards. */
export function* composeBoardTests(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  for (const row of testedTypes(line)) yield composeTest(line, row, options);
}

/** Names of the sheets that `composeBoardTests` makes. */
export const boardTestNames = (line: LineResult, language: SheetLanguage): readonly string[] =>
  testedTypes(line).map((row) => assemblySheetName("board-test", boardSlug(row.typeId), language));

function composeTest(line: LineResult, row: BoardRegisterRow, options: SheetOptions): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const tests = boardTests(line.machine, row.typeId);
  const own = tests.flatMap((test) => cautionOf(test, language) ?? []);
  return composeListing({
    identity: assemblyIdentity(
      line,
      {
        kind: "board-test",
        name: boardSlug(row.typeId),
        letters: boardSlug(row.typeId).toUpperCase(),
        title: boardName(row, language),
      },
      options,
    ),
    language,
    paper: PAPERS["a4-landscape"],
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds["board-test"]),
      subtitle: `${boardName(row, language, " · ")} · ${row.typeId}`,
      facts: [
        `${words((w) => w.boards.revision)} ${row.revision}`,
        words((w) => w.boards.test.steps(tests.length)),
      ],
    },
    cautions: [...new Set([...own, say(language, (w) => w.boards.caution.test)])],
    blocks: (widthMm) => testBlocks(tests, language, widthMm),
    grids: [testGrid(tests, language)],
  });
}

/** The designer's own caution of a test; null: none. */
function cautionOf(test: Test, language: SheetLanguage): string | null {
  if (test.caution === "" && test.caution_zh === "") return null;
  return label(language, { en: test.caution, zh: test.caution_zh }, test.caution_zh);
}

const valueText = (value: number, unit: string): string => `${shortNumber(value, 3)} ${unit}`.trim();

/** `30 … 70 mA`, with the nominal value below it. */
export function limitText(test: Test, language: SheetLanguage): string {
  if (test.kind !== "measure") return say(language, (w) => w.boards.test.visual);
  const { min, max, nominal, unit } = test;
  const limits = say(
    language,
    ({ boards: { test: w } }) => {
      if (min !== null && max !== null) return `${shortNumber(min, 3)} … ${valueText(max, unit)}`;
      if (min !== null) return w.atLeast(valueText(min, unit));
      return max === null ? w.none : w.atMost(valueText(max, unit));
    },
    "\n",
  );
  if (nominal === null) return limits;
  return `${limits}\n${say(language, (w) => w.boards.test.nominal(valueText(nominal, unit)), " · ")}`;
}

/** What is done, in a line for each language; the label of the test when it says nothing. */
const doText = (test: Test, language: SheetLanguage): string =>
  label(language, { en: test.do || test.label, zh: test.do_zh || test.label_zh }, test.id);

function testBlocks(tests: readonly Test[], language: SheetLanguage, widthMm: number): readonly Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const numbers = Array.from({ length: BOARDS }, (_, i) => i + 1);
  const columns: readonly TableColumn[] = [
    { header: "", heightMm: TEXT.head, weight: "bold", whole: true },
    { header: words((w) => w.boards.test.doIt), grow: true, detail: true },
    {
      header: words((w) => w.boards.test.limits),
      heightMm: TEXT.large,
      weight: "bold",
      detail: true,
      minMm: 30,
      whole: true,
    },
    ...numbers.map(
      (n): TableColumn => ({
        header: words((w) => w.boards.test.reading(n)),
        heightMm: TEXT.large,
        align: "middle",
        minMm: FIELD_MM,
      }),
    ),
  ];
  const fields = (text: string): TableRow => ({
    kind: "row",
    cells: ["", text, "", ...numbers.map(() => FIELD)],
  });
  const rows = [
    fields(words((w) => w.boards.test.serial)),
    ...tests.map(
      (test, i): TableRow => ({
        kind: "row",
        cells: [
          String(i + 1),
          doText(test, language),
          limitText(test, language),
          ...numbers.map(() => (test.kind === "measure" ? FIELD : TICK)),
        ],
      }),
    ),
    {
      kind: "row",
      cells: ["", words((w) => w.boards.test.passed), "", ...numbers.map(() => TICK)],
    } satisfies TableRow,
    fields(words((w) => w.boards.test.tester)),
  ];
  return [
    paragraph(
      say(language, (w) => w.boards.test.hint),
      widthMm,
      TEXT.small,
    ),
    gap(1),
    ...table(
      columns,
      rows,
      widthMm,
      words((w) => w.common.continued),
    ),
  ];
}

function testGrid(tests: readonly Test[], language: SheetLanguage): Grid {
  const own = language === "both" ? "en" : language;
  const w = sheetWords(own).boards.test;
  return {
    name: w.step,
    header: [w.step, "id", w.doIt, "min", "nominal", "max", "unit"],
    rows: tests.map((test, i) => [
      i + 1,
      test.id,
      doText(test, own),
      test.min ?? "",
      test.nominal ?? "",
      test.max ?? "",
      test.unit,
    ]),
  };
}
