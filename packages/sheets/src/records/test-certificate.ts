import { contentsOf, type UnitState } from "@pinwright/engine";
import { languagesOf, sheetWords } from "@pinwright/words";
import { machineCautions, wireCautions } from "../cautions.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { composeListing } from "../compose/listing.ts";
import { PAPERS } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import { departureBlocks, openBlocks } from "./certificate-blocks.ts";
import { frontBlocks } from "./certificate-front.ts";
import { headBlocks } from "./certificate-heads.ts";
import { insideBlocks } from "./certificate-inside.ts";
import { instrumentBlocks } from "./certificate-instruments.ts";
import { plain } from "./certificate-parts.ts";
import { insideTestBlocks, passedOf, testBlocks, testLines } from "./certificate-tests.ts";
import { recordIdentity } from "./identity.ts";
import { type CertificateInput, minuteText, typeText, wordsOf } from "./texts.ts";

/** Everything that a certificate says, gathered. */
interface Certificate {
  readonly state: UnitState;
  readonly contents: readonly UnitState[];
  readonly lines: ReturnType<typeof testLines>;
}

/**
 * The test certificate of one unit. On the first page: what it is, with which options, to which revision; whether it may
 * ship; how many tests, defects, departures. Then what keeps it open; every test with limits, last reading, instrument, who
 * and when (what protects people first, then by risk); what is inside, and every test of that; how it departs from the book
 * and why; the instruments with their calibration; and at the end the heads of the record streams. A unit that is not
 * released, or of which something is open, says so.
 * @returns null when no record names the unit
 */
export function composeTestCertificate(input: CertificateInput, unit: string): SheetDocument | null {
  const state = input.units.get(unit);
  if (state === undefined) return null;
  const { line, options, blocks } = input;
  const words = wordsOf(options);
  const contents = contentsOf(input.units, unit).flatMap((id) => input.units.get(id) ?? []);
  const lines = testLines(input, state);
  const certificate: Certificate = { state, contents, lines };
  const { passed, all } = passedOf(lines);
  const open = blocks.filter(({ lifted }) => !lifted).length;
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
      { ...options, state: state.released === null || open > 0 ? "draft" : "released" },
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
function cautionsFor({ line, options }: CertificateInput, { begun }: UnitState): readonly string[] {
  if (begun?.what === "machine") return machineCautions(line, options.language);
  const harness = begun?.what === "harness" ? line.harnesses.get(begun.type) : undefined;
  return harness === undefined ? [] : wireCautions(line, harness, options.language);
}

function blocksOf(input: CertificateInput, certificate: Certificate, widthMm: number): readonly Block[] {
  const { state, contents, lines } = certificate;
  return [
    ...frontBlocks(input, state, contents, lines, widthMm),
    gap(2),
    plain(input, (w) => w.records.certificate.says, widthMm, TEXT.small),
    ...openBlocks(input, input.blocks, widthMm),
    ...testBlocks(input, state, lines, widthMm),
    ...insideBlocks(input, state.unit, contents, widthMm),
    ...insideTestBlocks(input, contents, widthMm),
    ...departureBlocks(input, [state, ...contents], widthMm),
    ...instrumentBlocks(input, [state, ...contents], widthMm),
    ...headBlocks(input, state.unit, widthMm),
  ];
}

function gridOf(input: CertificateInput, { state, contents, lines }: Certificate): Grid {
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
    rows: [
      { unit: state.unit, lines },
      ...contents.map((one) => ({ unit: one.unit, lines: testLines(input, one) })),
    ]
      .flatMap((own) => own.lines.map((one) => ({ unit: own.unit, ...one })))
      .map(({ unit, id, row, last, verdict }) => [
        unit,
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
