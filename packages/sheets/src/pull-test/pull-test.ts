import {
  type EndKind,
  type HarnessResult,
  type LineResult,
  type PullTestContact,
  type PullTestRow,
  pullTest,
} from "@pinwright/engine";
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
  const columns: TableColumn[] = [
    { header: words((w) => w.pull.family), grow: true, detail: true },
    { header: words((w) => w.pull.contact), grow: true, detail: true },
    { whole: true, header: words((w) => w.pull.strip), heightMm: TEXT.large, weight: "bold", align: "end" },
    { header: words((w) => w.pull.crimpHeight), align: "end" },
    { header: words((w) => w.pull.tool), grow: true },
    { header: words((w) => w.pull.ends), align: "end" },
    { whole: true, header: words((w) => w.pull.force), heightMm: TEXT.large, weight: "bold", align: "end" },
    { header: words((w) => w.pull.measured), minMm: 18 },
    { header: words((w) => w.pull.initials), minMm: 12 },
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
        list.flatMap((row) => typeRows(row, language)),
        widthMm,
        words((w) => w.common.continued),
      ),
      gap(3),
      paragraph(closingNote(list, language), widthMm, TEXT.small),
    ],
    grids: [pullGrid(harness, list, language)],
  });
}

/** Ends that are crimped, and so pulled and measured: what is soldered, screwed or pressed is not. */
const CRIMPED: ReadonlySet<EndKind> = new Set(["crimp", "tab", "ring"]);

/** Height for the conductor at hand in mm; `—` where nothing is crimped. */
function heightText(contact: PullTestContact, language: SheetLanguage): string {
  if (!CRIMPED.has(contact.made)) return "—";
  if (contact.crimpHeightMm === null) return say(language, (w) => w.pull.notGiven);
  return contact.crimpHeightMm.toFixed(2);
}

/** Tool as in the book; a lug's is the iron when the book names none. */
function toolText(contact: PullTestContact, language: SheetLanguage): string {
  return contact.made === "solder" && contact.tool === "" ? say(language, (w) => w.ends.iron) : contact.tool;
}

/** What the contact is: its part and name; without one how the end is made. */
function contactText(contact: PullTestContact, language: SheetLanguage): string {
  const done = say(language, (w) => w.ends.done[contact.made], " · ");
  if (contact.contactPartId === null) return done;
  const name = label(language, contact.contactLabels, "", " · ");
  return [contact.contactPartId, [name, done].filter((t) => t !== "").join("\n")].join("\n");
}

/** Where the forces come from, each source once, what is not pulled, and what to do without a height. */
function closingNote(list: readonly PullTestRow[], language: SheetLanguage): string {
  const sources = [...new Set(list.filter((r) => r.newton !== null && r.source !== "").map((r) => r.source))];
  const lacking = list.some((r) => r.contacts.some((c) => CRIMPED.has(c.made) && c.crimpHeightMm === null));
  return say(language, (w) =>
    [
      sources.length === 0 ? "" : `${w.pull.source}: ${sources.join("; ")}.`,
      w.pull.notPulled,
      lacking ? w.pull.heights : "",
    ]
      .filter((t) => t !== "")
      .join(" "),
  );
}

function typeRows(row: PullTestRow, language: SheetLanguage): TableRow[] {
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
          contactText(c, language),
          shortMm(c.stripMm),
          heightText(c, language),
          toolText(c, language),
          String(c.count),
          CRIMPED.has(c.made) ? force : "—",
          "",
          "",
        ],
      }),
    ),
  ];
}

function pullGrid(harness: HarnessResult, list: readonly PullTestRow[], language: SheetLanguage): Grid {
  const w = sheetWords(language === "zh" ? "zh" : "en");
  return {
    name: w.kinds["pull-test"],
    header: [
      w.common.harness,
      w.common.gauge,
      w.pull.family,
      w.pull.contact,
      w.ends.how,
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
        c.contactPartId ?? "",
        w.ends.done[c.made],
        c.stripMm,
        CRIMPED.has(c.made) ? (c.crimpHeightMm ?? w.pull.notGiven) : "",
        c.made === "solder" && c.tool === "" ? w.ends.iron : c.tool,
        c.count,
        CRIMPED.has(c.made) ? (row.newton ?? "") : "",
        CRIMPED.has(c.made) ? row.source : "",
      ]),
    ),
  };
}
