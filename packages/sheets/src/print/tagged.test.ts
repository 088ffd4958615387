import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { LineResult } from "@pinwright/engine";
import { afterAll, beforeAll, expect, test } from "vitest";
import { composeSheets } from "../all-sheets.ts";
import { assemble, type SheetDocument } from "../compose/document.ts";
import { at, line as drawn, group, write } from "../compose/draw.ts";
import { guideOf } from "../compose/guide.ts";
import type { Mark } from "../compose/mark.ts";
import { PAPERS } from "../compose/paper.ts";
import { anchored, figure, linked, tagged } from "../compose/tag.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { renderPdf } from "./pdf.ts";

const folder = mkdtempSync(join(tmpdir(), "pinwright-tagged-"));
afterAll(() => rmSync(folder, { recursive: true }));

const ALL = { kinds: [], harnessIds: [] };

let line: LineResult;
beforeAll(async () => {
  line = await exampleLine("first-light");
});

interface Report {
  readonly findings: readonly string[];
  readonly counts: Readonly<Record<string, number>>;
}

function written(documents: readonly SheetDocument[]): string[] {
  return documents.map((document, i) => {
    const path = join(folder, `${i}-${document.fileName}.pdf`);
    writeFileSync(path, renderPdf(document));
    return path;
  });
}

/** What Debian's pikepdf finds, by the script beside this test. */
function checked(paths: readonly string[]): Readonly<Record<string, Report>> {
  const script = join(import.meta.dirname, "check_tagged.py");
  return JSON.parse(
    execFileSync("/usr/bin/python3", [script, ...paths], { encoding: "utf8", maxBuffer: 1 << 28 }),
  );
}

/** A small book: contents that lead to two chapters, a list, a figure, a link to the web, two languages. */
function smallBook(identity: SheetDocument["identity"]): SheetDocument {
  const page = (marks: readonly Mark[]) => ({ paper: PAPERS["a4-portrait"], marks });
  const entry = (text: string, anchor: string, y: number): Mark =>
    tagged({ role: "TOCI" }, [linked({ anchor }, [write(text, at(30, y))])]);
  const chapter = (anchor: string, title: string, level: number, marks: readonly Mark[], y: number): Mark =>
    group(
      [
        anchored(anchor, [tagged({ role: level === 1 ? "H1" : "H3" }, [write(title, at(30, y))])], {
          title,
          level,
        }),
        ...marks,
      ],
      0,
      2,
    );
  return assemble(
    identity,
    "both",
    [
      page([entry("Opening", "a", 40), entry("Fuses", "b", 50), entry("Lost", "nowhere", 60)]),
      page([
        chapter("a", "Opening", 1, [], 40),
        tagged({ role: "LI" }, [write("Take the key.", at(30, 60))]),
        tagged({ role: "LI" }, [write("Lift the glass. 取下玻璃。", at(30, 70))]),
        figure("The lock, at the left of the coin door", [
          drawn(at(30, 80), at(60, 90)),
          write("lock", at(30, 95)),
        ]),
        chapter("b", "Fuses (保险丝)", 2, [], 120),
        tagged({ role: "P" }, [
          write("See ", at(30, 140)),
          linked({ url: "https://example.org/fuses?a=1&b=ü" }, [write("the web", at(40, 140))]),
        ]),
      ]),
    ],
    [],
  );
}

test("a document with contents, chapters, lists, figures and links has each as what it is", () => {
  const first = [...composeSheets(line, OPTIONS, ALL)][0]?.document;
  if (first === undefined) throw new Error("a machine has sheets");
  const book = smallBook(first.identity);
  const guide = guideOf(book.pages);
  expect(guide.outline.map(({ title, level, page }) => [title, level, page])).toEqual([
    ["Opening", 1, 1],
    ["Fuses (保险丝)", 2, 1],
  ]);
  expect(guide.missing).toEqual(["nowhere"]);
  expect(guide.links.map((links) => links.length)).toEqual([2, 1]);
  const [path = ""] = written([book]);
  const report = checked([path])[path];
  expect(report?.findings).toEqual([]);
  // H3 under H1 would skip a level; the code of the first page is a figure too.
  expect(report?.counts).toMatchObject({
    H1: 1,
    H2: 1,
    LI: 2,
    LBody: 2,
    L: 1,
    TOC: 1,
    TOCI: 3,
    Link: 3,
    Figure: 2,
  });
  expect(report?.counts).toMatchObject({ links: 3, bookmarks: 2 });
  const said = execFileSync("pdfinfo", ["-struct-text", path], { encoding: "utf8" });
  expect(said).toMatch(/Figure.*\n.*lock/u);
  expect(said.indexOf("Take the key")).toBeLessThan(said.indexOf("the web"));
  const urls = execFileSync("pdfinfo", ["-url", path], { encoding: "utf8" });
  expect(urls).toContain("https://example.org/fuses?a=1&b=%C3%BC");
  expect(renderPdf(book)).toEqual(renderPdf(book));
  // The script is no yes-man: the same pages without their tags are refused.
  const bare = join(folder, "bare.pdf");
  execFileSync("pdftocairo", ["-pdf", path, bare]);
  expect(checked([bare])[bare]?.findings.map((f) => f.slice(0, 6))).toEqual(
    expect.arrayContaining(["05-001", "06-001", "11-006", "01-005"]),
  );
});

for (const language of ["en", "zh", "both"] as const)
  test(`every sheet of a machine passes pikepdf's, qpdf's and poppler's reading (${language})`, () => {
    const sheets = [...composeSheets(line, { ...OPTIONS, language }, ALL)];
    // All that is said in two languages is said in one: a part of these is enough.
    const documents = sheets
      .map(({ document }) => document)
      .filter((_, i) => language === "both" || i % 7 === 0);
    const paths = written(documents.filter((d) => d.pages.every((p) => p.widthMm < 5000)));
    const reports = checked(paths);
    expect(
      Object.entries(reports).flatMap(([path, { findings }]) => findings.map((f) => `${path} ${f}`)),
    ).toEqual([]);
    // Lists are tables with heads, drawings figures.
    const sum = (type: string): number =>
      Object.values(reports).reduce((n, { counts }) => n + (counts[type] ?? 0), 0);
    expect(Math.min(sum("TH"), sum("TD"), sum("Figure"), sum("H1"))).toBeGreaterThan(
      language === "both" ? 10 : 0,
    );
    for (const path of paths.filter((_, i) => i % 8 === 0)) {
      expect(spawnSync("qpdf", ["--check", path], { encoding: "utf8" }).status).toBe(0);
      const read = spawnSync("pdfinfo", ["-struct-text", path], { encoding: "utf8", maxBuffer: 1 << 28 });
      expect(read.stderr).toBe("");
    }
  }, 180_000);
