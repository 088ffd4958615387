import type { UnitState } from "@pinwright/engine";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import type { TableRow } from "../compose/table.ts";
import { doubtful } from "./certificate-instruments.ts";
import { listed, row } from "./certificate-parts.ts";
import { passedOf, testLines } from "./certificate-tests.ts";
import {
  type CertificateInput,
  kindText,
  minutesText,
  optionsOf,
  optionText,
  type RecordSheetInput,
  sourceText,
  typeText,
  wordsOf,
} from "./texts.ts";

/** Share of the width that the names of the figures take. */
const LEFT = 0.38;

const inLine = (text: string): string => text.replace("\n", ", ");

/** What the first page says: what the unit is, whether it may ship, and what was found, in figures. */
export function frontBlocks(
  input: CertificateInput,
  state: UnitState,
  contents: readonly UnitState[],
  lines: ReturnType<typeof testLines>,
  widthMm: number,
): readonly Block[] {
  const words = wordsOf(input.options);
  const table = (left: string, right: string, rows: readonly TableRow[]): readonly Block[] =>
    listed(
      input,
      [
        { header: left, minMm: LEFT * widthMm, grow: true },
        { header: right, weight: "bold", minMm: (1 - LEFT) * widthMm - 6 },
      ],
      rows,
      widthMm,
    );
  return [
    paragraph(verdictText(input, state), widthMm, TEXT.large, true),
    gap(1),
    ...table(
      words((w) => w.records.serial),
      state.unit,
      aboutRows(input, state),
    ),
    gap(3),
    ...table(
      words((w) => w.records.certificate.summary),
      "",
      summaryRows(input, state, contents, lines),
    ),
  ];
}

/** Whether it may ship, and who says so. */
function verdictText({ blocks, ...input }: CertificateInput, { released }: UnitState): string {
  const words = wordsOf(input.options);
  const open = blocks.filter(({ lifted }) => !lifted).length;
  if (released === null) return words((w) => w.records.certificate.mayNotShip(open));
  const by = inLine(sourceText(input, released));
  return words((w) =>
    open === 0 ? w.records.certificate.mayShip(by) : w.records.certificate.noMoreShips(by, open),
  );
}

function aboutRows(input: RecordSheetInput, state: UnitState): readonly TableRow[] {
  const { options } = input;
  const words = wordsOf(options);
  const { begun } = state;
  const chosen = optionsOf(input, state);
  const facts: readonly (readonly [string, string])[] = [
    [
      words((w) => w.records.what),
      `${kindText(state, options)}: ${typeText(input, state)}${begun === null ? "" : ` (${begun.type})`}`,
    ],
    [
      words((w) => w.records.builtTo),
      begun === null ? "—" : [`${begun.book} ${begun.revision}`, begun.run ?? ""].filter(Boolean).join(" · "),
    ],
    [
      words((w) => w.records.options),
      chosen.length === 0
        ? words((w) => w.records.none)
        : chosen.map((option) => optionText(input, option)).join(", "),
    ],
    [words((w) => w.records.begun), begun === null ? "—" : inLine(sourceText(input, begun.source))],
  ];
  return facts.map(row);
}

const KINDS = ["board", "harness", "mechanism", "machine"] as const;

function summaryRows(
  input: CertificateInput,
  state: UnitState,
  contents: readonly UnitState[],
  lines: ReturnType<typeof testLines>,
): readonly TableRow[] {
  const words = wordsOf(input.options);
  const all = [state, ...contents];
  const count = (of: (one: UnitState) => number): number => all.reduce((sum, one) => sum + of(one), 0);
  const passed = ({ passed: good, all: asked }: ReturnType<typeof passedOf>): string =>
    words((w) => w.records.certificate.passed(good, asked));
  const inside = KINDS.flatMap((what): TableRow[] => {
    const own = contents.filter(({ begun }) => begun?.what === what);
    const [first] = own;
    if (first === undefined) return [];
    const tests = own.map((one) => passedOf(testLines(input, one)));
    const sum = {
      passed: tests.reduce((total, one) => total + one.passed, 0),
      all: tests.reduce((total, one) => total + one.all, 0),
    };
    const name = words((w) => w.records.certificate.insideOf);
    return [
      row([
        `${name}: ${kindText(first, input.options)}`,
        sum.all === 0 ? String(own.length) : `${own.length} · ${passed(sum)}`,
      ]),
    ];
  });
  const open = input.blocks.filter(({ lifted }) => !lifted);
  const mended = count(({ defects }) => [...defects.values()].filter((one) => one.mended !== null).length);
  const found = count(({ defects }) => defects.size);
  const allowed = (how: string): number =>
    count(({ alternates }) => alternates.filter((one) => one.allowed === how).length);
  const lifts = count(({ overrides }) => overrides.length);
  const doubts = doubtful(input, all).join(", ");
  return [
    row([words((w) => w.records.certificate.protectsShort), passed(passedOf(lines, "protects"))]),
    row([words((w) => w.records.certificate.worksShort), passed(passedOf(lines, "works"))]),
    ...inside,
    row([
      words((w) => w.records.certificate.openTitle),
      open.length === 0
        ? words((w) => w.records.certificate.nothingOpen)
        : words((w) => w.records.certificate.openOf(open.length, open.filter(({ firm }) => firm).length)),
    ]),
    row([
      words((w) => w.records.certificate.defectsShort),
      words((w) => w.records.certificate.foundMended(found, mended)),
    ]),
    row([
      words((w) => w.records.certificate.departuresShort),
      words((w) => w.records.certificate.departed(allowed("book"), allowed("concession"), lifts)),
    ]),
    row([
      words((w) => w.records.certificate.minutes),
      words((w) =>
        w.records.certificate.minutesOf(
          minutesText(state.minutes),
          minutesText(count(({ minutes }) => minutes) - state.minutes),
        ),
      ),
    ]),
    row([
      words((w) => w.records.certificate.instruments),
      doubts === ""
        ? words((w) => w.records.certificate.allCalibrated)
        : words((w) => w.records.certificate.notAllCalibrated(doubts)),
    ]),
  ];
}
