import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { LineResult } from "@pinwright/engine";
import { type Language, sheetWords } from "@pinwright/words";
import { describe, expect, test } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { anchorsOf, guideOf } from "../compose/guide.ts";
import { leavesOf } from "../compose/leaves.ts";
import { wireNo } from "../facts.ts";
import { renderDocument } from "../print/index.ts";
import { boundRows } from "../testing/book-rows.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { faultsOfWords } from "../testing/pdf-words.ts";
import { HAZARDS, hazardsOf } from "./hazards.ts";
import type { ServiceUnit } from "./options.ts";
import { composeServiceBook } from "./service-book.ts";

const line = await exampleLine("first-light");
const made = (language: Language, unit: ServiceUnit | null = null, of: LineResult = line): SheetDocument =>
  composeServiceBook(of, { ...OPTIONS, language, unit });

const textsOf = (document: SheetDocument): readonly string[] =>
  document.pages.flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])),
  );
const pageTexts = (document: SheetDocument, page: number): string =>
  leavesOf(document.pages[page]?.marks ?? [])
    .flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : []))
    .join(" ");

describe.each(["en", "zh"] as const)("the service book of first-light in %s", (language) => {
  const document = made(language);

  test("no text overlaps another, nothing leaves its frame, no lettering is lower than 1.8 mm", () => {
    expect(overlapLines(document)).toEqual([]);
    expect(strayLines(document)).toEqual([]);
    for (const page of document.pages)
      for (const { leaf } of leavesOf(page.marks))
        if (leaf.kind === "text") expect(leaf.heightMm).toBeGreaterThanOrEqual(1.8);
  });

  test("every link leads somewhere, every page that is named is right", () => {
    expect(guideOf(document.pages).missing).toEqual([]);
    const again = made(language);
    expect(again.bodyHash).toBe(document.bodyHash);
    // Contents: each line ends with the number of the page that its link leads to.
    for (const { text, to } of guideOf(document.pages).links.slice(0, 2).flat())
      if ("page" in to && /\d$/u.test(text)) expect(text.endsWith(String(to.page + 1))).toBe(true);
  });

  test("every hazard has its caution on the page of safety and where it bites, each with who decides", () => {
    const anchors = anchorsOf(document.pages);
    const words = sheetWords(language).serviceBook.safety;
    const own = hazardsOf(line, language);
    expect(own.length).toBeGreaterThan(3);
    for (const { id } of own) {
      const safety = anchors.get(`safety:${id}`);
      const places = [...anchors].filter(([name]) => name.startsWith(`hazard:${id}@`));
      expect(safety, id).toBeDefined();
      expect(places.length, id).toBeGreaterThan(0);
      for (const { page } of [...(safety === undefined ? [] : [safety]), ...places.map(([, at]) => at)]) {
        const said = pageTexts(document, page);
        expect(said, id).toContain(words.hazards[id].title);
        expect(said, id).toContain(words.defer.slice(0, 12));
      }
    }
    for (const id of HAZARDS)
      if (!own.some((hazard) => hazard.id === id)) expect(anchors.has(`safety:${id}`)).toBe(false);
  });
});

test("the book of one machine says what is really in it, at the front and where it bites", () => {
  const [harness] = line.harnesses.values();
  const [wire] = harness?.wires ?? [];
  if (harness === undefined || wire === undefined) throw new Error("first-light has no wire");
  const number = wireNo(harness, wire.number);
  const document = made("en", {
    serial: "0017",
    address: "",
    alternates: [{ part: number, instead: "PKTQ", allowed: "concession", why: "reel empty" }],
  });
  expect(document.id).toBe("machine.service-book-0017.en");
  const texts = textsOf(document);
  expect(texts.filter((t) => t === "PKTQ*").length).toBeGreaterThanOrEqual(3);
  expect(texts).toContain(number);
  expect(texts.join(" ")).toContain("reel empty");
  expect(pageTexts(document, 0)).toContain("0017");
  expect(overlapLines(document)).toEqual([]);
  expect(textsOf(made("en")).join(" ")).not.toContain("PKTQ");
});

test("numbers stand with what they are of: pages, pins, wires, terminals, devices, parts", () => {
  const { wrong, counted } = boundRows(line, made("en"));
  expect(wrong).toEqual([]);
  for (const [what, count] of Object.entries(counted)) expect(count, what).toBeGreaterThan(5);
});

test("its PDF has its texts, its pages and its outline", async () => {
  const folder = mkdtempSync(join(tmpdir(), "service-book-"));
  try {
    const document = made("en");
    const file = join(folder, "book.pdf");
    writeFileSync(file, await renderDocument(document, "pdf"));
    expect(faultsOfWords(file)).toEqual([]);
    const text = execFileSync("pdftotext", ["-layout", file, "-"], { encoding: "utf8" });
    expect(text.split("\f")).toHaveLength(document.pages.length + 1);
    for (const title of Object.values(sheetWords("en").serviceBook.chapters)) expect(text).toContain(title);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
