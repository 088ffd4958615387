import {
  type Block as Barrier,
  contentsOf,
  neededFor,
  releaseBlocks,
  type UnitState,
} from "@pinwright/engine";
import { languagesOf, sheetWords } from "@pinwright/words";
import { machineCautions, wireCautions } from "../cautions.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableRow, table } from "../compose/table.ts";
import { departureBlocks, endBlocks, insideBlocks, openBlocks } from "./certificate-blocks.ts";
import { passedOf, testBlocks, testLines } from "./certificate-tests.ts";
import { recordIdentity } from "./identity.ts";
import {
  type CertificateInput,
  kindText,
  minuteText,
  optionText,
  type RecordSheetInput,
  sourceText,
  typeText,
  wordsOf,
} from "./texts.ts";

/** Everything that a certificate says, gathered. */
interface Certificate {
  readonly state: UnitState;
  readonly contents: readonly UnitState[];
  readonly barriers: readonly Barrier[];
  readonly lines: ReturnType<typeof testLines>;
}

/**
 * The test certificate of one unit: what it is and with which options, every test with limits, last reading, instrument,
 * who and when (what protects people first, then by risk), what is inside, how it departs from the book and why, and at the
 * end the heads of the record streams. A unit that is not released, or of which something is open, says so.
 * @returns null when no record names the unit
 */
export function composeTestCertificate(input: CertificateInput, unit: string): SheetDocument | null {
  const state = input.units.get(unit);
  if (state === undefined) return null;
  const { line, options } = input;
  const words = wordsOf(options);
  const contents = contentsOf(input.units, unit).flatMap((id) => input.units.get(id) ?? []);
  const neededOf = input.neededOf ?? ((one: UnitState) => neededFor(line, one));
  const barriers = releaseBlocks(
    input.units,
    [unit, ...contents.map((one) => one.unit)],
    neededOf,
    input.recalls,
  );
  const lines = testLines(input, state, barriers);
  const certificate: Certificate = { state, contents, barriers, lines };
  const { passed, all } = passedOf(lines);
  const open = barriers.filter(({ lifted }) => !lifted).length;
  const name = typeText(input, state);
  return composeListing({
    identity: recordIdentity(
      line,
      {
        kind: "test-certificate",
        name: unit,
        title: `${unit}\n${name}`,
        ...(state.begun === null ? {} : { revision: state.begun.revision }),
      },
      // Nobody takes a certificate of a unit that may not ship for one of a unit that may.
      state.released === null || open > 0 ? { ...options, state: "draft" } : options,
    ),
    language: options.language,
    paper: PAPERS["a4-portrait"],
    heading: {
      badge: unit,
      title: say(options.language, (w) => w.records.kinds["test-certificate"]),
      subtitle: name,
      facts: [
        words((w) => w.records.certificate.passed(passed, all)),
        words((w) => (open === 0 ? w.records.certificate.nothingOpen : w.records.certificate.open(open))),
        ...(state.released === null ? [words((w) => w.records.notReleased)] : []),
      ],
    },
    cautions: cautionsFor(input, state),
    blocks: (widthMm) => blocksOf(input, certificate, widthMm),
    grids: [gridOf(input, certificate)],
  });
}

/** What is dangerous about the unit itself. */
function cautionsFor({ line, options }: RecordSheetInput, { begun }: UnitState): readonly string[] {
  if (begun?.what === "machine") return machineCautions(line, options.language);
  const harness = begun?.what === "harness" ? line.harnesses.get(begun.type) : undefined;
  return harness === undefined ? [] : wireCautions(line, harness, options.language);
}

function blocksOf(input: CertificateInput, certificate: Certificate, widthMm: number): readonly Block[] {
  const { state, contents, barriers, lines } = certificate;
  return [
    ...aboutBlocks(input, state, widthMm),
    gap(2),
    paragraph(
      say(input.options.language, (w) => w.records.certificate.says),
      widthMm,
      TEXT.small,
    ),
    ...openBlocks(input, barriers, widthMm),
    gap(3),
    ...testBlocks(input, state, lines, widthMm),
    ...insideBlocks(input, state.unit, contents, barriers, widthMm),
    ...departureBlocks(input, [state, ...contents], widthMm),
    ...endBlocks(input, widthMm),
  ];
}

/** What the unit is: two columns of a name and what stands for it. */
function aboutBlocks(input: RecordSheetInput, state: UnitState, widthMm: number): readonly Block[] {
  const { options } = input;
  const words = wordsOf(options);
  const { begun, released } = state;
  const inLine = (text: string): string => text.replace("\n", ", ");
  const chosen = begun?.options ?? [];
  const facts: readonly (readonly [string, string])[] = [
    [words((w) => w.records.what), [kindText(state, options), typeText(input, state)].join(": ")],
    [words((w) => w.records.type), begun?.type ?? "—"],
    [words((w) => w.records.book), begun === null ? "—" : `${begun.book} ${begun.revision}`],
    [words((w) => w.records.run), begun?.run ?? "—"],
    [
      words((w) => w.records.options),
      chosen.length === 0
        ? words((w) => w.records.none)
        : chosen.map((option) => optionText(input, option)).join(", "),
    ],
    [words((w) => w.records.begun), begun === null ? "—" : inLine(sourceText(input, begun.source))],
    [
      words((w) => w.records.releasedBy),
      released === null ? words((w) => w.records.notReleased) : inLine(sourceText(input, released)),
    ],
    [words((w) => w.records.minutes), String(Math.round(state.minutes * 10) / 10)],
  ];
  return table(
    [
      { header: words((w) => w.records.serial), whole: true },
      { header: state.unit, weight: "bold", grow: true },
    ],
    facts.map((cells): TableRow => ({ kind: "row", cells })),
    widthMm,
    words((w) => w.common.continued),
  );
}

function gridOf(input: RecordSheetInput, { state, lines }: Certificate): Grid {
  const [language = "en"] = languagesOf(input.options.language);
  const w = sheetWords(language).records;
  return {
    name: w.kinds["test-certificate"],
    header: [
      w.serial,
      w.certificate.test,
      "min",
      "max",
      "unit",
      w.certificate.reading,
      w.certificate.verdict,
      w.certificate.instrument,
      w.who,
      w.when,
    ],
    rows: lines.map(({ id, row, last, verdict }) => [
      state.unit,
      id,
      row?.min ?? "",
      row?.max ?? "",
      row?.unit ?? "",
      last === null ? "" : (last.value ?? (last.good ? w.certificate.yes : w.certificate.no)),
      w.certificate[verdict],
      last?.instrument ?? "",
      last?.source.person ?? "",
      last === null ? "" : minuteText(last.source.at),
    ]),
  };
}
