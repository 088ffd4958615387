import { rowLabel } from "../assembly/step-texts.ts";
import { TEXT } from "../compose/draw.ts";
import { filledColumns } from "../compose/filled-columns.ts";
import { type Block, gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { label } from "../compose/say.ts";
import { bookTable, hazardBlocks, note, row, sectionHead } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { isLicensed, machineTests, type Test, testAnchor } from "./test-facts.ts";
import { pointText } from "./wire-texts.ts";

/** Tests of the machine that its owner can do, and those that he must not. */
export function testBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { words } = context;
  const tests = machineTests(context);
  const licensed = tests.filter((test) => isLicensed(context, test));
  const own = tests.filter((test) => !isLicensed(context, test));
  return [
    ...(own.length === 0
      ? []
      : [
          sectionHead(
            words((w) => w.tests.owner),
            "tests:owner",
            widthMm,
          ),
          note(
            words((w) => w.tests.hint),
            widthMm,
          ),
          ...hazardBlocks(context, ["mains", "volts", "moving", "hot", "glass"], "tests", widthMm),
          ...testTable(context, own, widthMm),
          gap(3),
        ]),
    ...(licensed.length === 0
      ? []
      : [
          sectionHead(
            words((w) => w.tests.licensed),
            "tests:licensed",
            widthMm,
            50,
          ),
          ...hazardBlocks(context, ["mains", "stored", "earth"], "tests-licensed", widthMm),
          note(
            words((w) => w.tests.licensedHint),
            widthMm,
          ),
          ...testTable(context, licensed, widthMm),
        ]),
  ];
}

function testTable(context: BookContext, tests: readonly Test[], widthMm: number): readonly Block[] {
  const { words } = context;
  const small = { heightMm: TEXT.small } as const;
  const columns = [
    { header: words((w) => w.tests.test), weight: "bold" as const, grow: true },
    { header: words((w) => w.tests.how), grow: true, detail: true },
    { header: words((w) => w.tests.between), ...small, minMm: 32 },
    { header: words((w) => w.tests.expect), weight: "bold" as const, align: "end" as const, whole: true },
  ];
  const rows = tests.map((test) => row(cellsOf(context, test), testAnchor(test)));
  const filled = filledColumns(columns, rows);
  const kept = columns.map((column) => filled.columns.includes(column));
  return bookTable(
    context,
    filled.columns,
    rows.map((own) => ({ ...own, cells: own.cells.filter((_, i) => kept[i]) })),
    widthMm,
  );
}

function cellsOf(context: BookContext, test: Test): readonly string[] {
  const { words, language } = context;
  const caution = label(language, { en: test.caution, zh: test.caution_zh }, "");
  const how = label(language, { en: test.do, zh: test.do_zh }, "");
  return [
    rowLabel(test, test.id, language),
    caution === "" ? how : `${how}\n⚠ ${caution}`,
    [test.from, test.to].flatMap((point) => (point === null ? [] : [pointText(context, point)])).join("\n"),
    limitsText(test) || words((w) => w.tests.yes),
  ];
}

/** `46.56–49.44 V`; a lower limit alone where the upper is beyond any meter. */
function limitsText({ min, max, unit }: Test): string {
  const n = (value: number): string => shortNumber(value, 3);
  const open = max === null || (min !== null && min > 0 && max >= BEYOND * min);
  const text =
    min !== null && !open && max !== null
      ? `${n(min)}–${n(max)}`
      : min !== null && min !== 0
        ? `≥ ${n(min)}`
        : max === null
          ? ""
          : `≤ ${n(max)}`;
  return text === "" ? "" : `${text} ${unit}`.trim();
}

/** An upper limit so many times the lower one only says that there is none. */
const BEYOND = 10_000;
