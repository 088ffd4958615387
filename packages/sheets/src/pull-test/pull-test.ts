import { type HarnessResult, type LineResult, type PullTestRow, pullTest } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import type { Grid } from "../compose/grid.ts";
import { shortMm, shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { label, say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { gaugeText } from "../facts.ts";
import { composeHarnessListing } from "../listing.ts";
import type { SheetOptions } from "../options.ts";

/** Strip lengths and pull-off forces of a harness, a row for each wire type and termination. */
export function composePullTest(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const list = pullTest(line.machine, harness);
  const crimped = crimpedFamilies(line);
  const columns: TableColumn[] = [
    { header: words((w) => w.pull.family), grow: true, detail: true },
    { whole: true, header: words((w) => w.pull.strip), heightMm: TEXT.large, weight: "bold", align: "end" },
    { header: words((w) => w.pull.crimpHeight) },
    { header: words((w) => w.pull.tool), grow: true },
    { header: words((w) => w.pull.ends), align: "end" },
    { whole: true, header: words((w) => w.pull.force), heightMm: TEXT.large, weight: "bold", align: "end" },
    { header: words((w) => w.pull.measured), minMm: 22 },
    { header: words((w) => w.pull.initials), minMm: 14 },
  ];
  return composeHarnessListing(line, harness, options, {
    kind: "pull-test",
    paper: "a4-portrait",
    blocks: (widthMm) => [
      paragraph(
        words((w) => w.pull.hint),
        widthMm,
        TEXT.small,
      ),
      ...table(
        columns,
        list.flatMap((row) => typeRows(row, crimped, language)),
        widthMm,
        words((w) => w.common.continued),
      ),
      gap(3),
      paragraph(sourceNote(list, language), widthMm, TEXT.small),
    ],
    grids: [pullGrid(harness, list, crimped, language)],
  });
}

/** Families whose contact is crimped: what is soldered or screwed is not pulled. */
function crimpedFamilies(line: LineResult): ReadonlySet<string> {
  return new Set(
    line.machine.book.tables.connector_families
      .filter((f) => f.kind !== "lug" && f.kind !== "screw")
      .map((f) => f.id),
  );
}

/** `0.52 mm²: 1.15`: one area's part of a family's crimp heights. */
const CRIMP_HEIGHT = /^\s*([\d.]+)\s*mm²\s*:\s*(.+)$/u;

/** The crimp height for a wire; all that the family says when it names no height for this very area. */
function crimpHeightFor(text: string, areaMm2: number): string {
  for (const part of text.split(";")) {
    const [, area, height] = CRIMP_HEIGHT.exec(part) ?? [];
    if (height !== undefined && Math.abs(Number(area) - areaMm2) <= 0.02 * areaMm2) return height.trim();
  }
  return text;
}

/** Where the forces come from, each source once. */
function sourceNote(list: readonly PullTestRow[], language: SheetLanguage): string {
  const sources = [...new Set(list.filter((r) => r.newton !== null && r.source !== "").map((r) => r.source))];
  if (sources.length === 0) return "";
  return say(language, (w) => `${w.pull.source}: ${sources.join("; ")}. ${w.pull.notPulled}`);
}

function typeRows(row: PullTestRow, crimped: ReadonlySet<string>, language: SheetLanguage): TableRow[] {
  const { wireType } = row;
  const name = label(language, { en: wireType.label, zh: wireType.label_zh }, wireType.id, " · ");
  const force = row.newton === null ? "—" : shortNumber(row.newton, 1);
  return [
    {
      kind: "group",
      text: `${gaugeText(wireType)} · ${name}`,
      detail: [
        say(language, (w) => `${w.pull.insulation} ${shortNumber(wireType.od_mm, 2)}`, " · "),
        row.newton === null ? say(language, (w) => w.pull.noForce) : "",
      ]
        .filter((t) => t !== "")
        .join("\n"),
    },
    ...row.contacts.map(
      (c): TableRow => ({
        kind: "row",
        cells: [
          `${c.familyId}\n${label(language, c.labels, "", " · ")}`,
          shortMm(c.stripMm),
          crimpHeightFor(c.crimpHeight, wireType.area_mm2),
          c.tool,
          String(c.count),
          crimped.has(c.familyId) ? force : "—",
          "",
          "",
        ],
      }),
    ),
  ];
}

function pullGrid(
  harness: HarnessResult,
  list: readonly PullTestRow[],
  crimped: ReadonlySet<string>,
  language: SheetLanguage,
): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  return {
    name: w.kinds["pull-test"],
    header: [
      w.common.harness,
      w.common.gauge,
      w.pull.family,
      w.pull.strip,
      w.pull.crimpHeight,
      w.pull.tool,
      w.pull.ends,
      w.pull.force,
      w.pull.source,
    ],
    rows: list.flatMap((row) =>
      row.contacts.map((c) => [
        harness.harness.number,
        gaugeText(row.wireType),
        c.familyId,
        c.stripMm,
        c.crimpHeight,
        c.tool,
        c.count,
        crimped.has(c.familyId) ? (row.newton ?? "") : "",
        crimped.has(c.familyId) ? row.source : "",
      ]),
    ),
  };
}
