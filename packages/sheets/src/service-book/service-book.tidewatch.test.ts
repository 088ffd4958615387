import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { LineResult } from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import { beforeAll, expect, test } from "vitest";
import { anchorsOf, guideOf } from "../compose/guide.ts";
import { wireNo } from "../facts.ts";
import { ampsText, voltsText } from "../machine-facts.ts";
import { LISTED_KINDS, quantityText, rowsOfKind } from "../parts-list/part-rows.ts";
import { renderDocument } from "../print/index.ts";
import { missingCautions, neededCautions } from "../testing/book-cautions.ts";
import { boundRows } from "../testing/book-rows.ts";
import { factsOfBook, figuresIn } from "../testing/book-words.ts";
import { exampleLine, OPTIONS } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { faultsOfWords } from "../testing/pdf-words.ts";
import { chartOf } from "../wiring-chart/wiring-chart.ts";
import { composeServiceBook } from "./service-book.ts";

/** Twenty times what it takes alone: other programs may have the machine. */
const PATIENCE_MS = 300_000;

let line: LineResult;
beforeAll(async () => {
  line = await exampleLine("tidewatch");
}, PATIENCE_MS);

/** Figures that the layout makes: pages, counts, scales, runs of pages, the date and the number of the book. */
const LAYOUT: readonly RegExp[] = [
  /^\d{1,3}$/u,
  /^\d{1,3}[–-]\d{1,3}$/u,
  /^1:\d+(?:\.\d+)?$/u,
  /^\d{4}-\d{2}-\d{2}$/u,
  /^tidewatch-SB$/u,
  // The standard of the colours' letters.
  /^60757$/u,
];

/** Figures that follow from the book: numbers of circuits, volts at points, what fuses carry, metres of wire. */
function computed(): ReadonlySet<string> {
  const { electric } = line;
  return new Set([
    ...chartOf(line, "en").map(({ number }) => number),
    ...[...electric.volts.values()].map(({ nominal }) => voltsText(nominal)),
    ...[...electric.elements.values()].map(({ rmsA }) => ampsText(rmsA.most)),
    ...LISTED_KINDS.flatMap((kind) => rowsOfKind(line, kind).map(({ quantity }) => quantityText(quantity))),
    ...[...electric.loads.values()].map(({ amps }) => ampsText(amps.nominal)),
  ]);
}

/** A figure without a unit that stands close to it. */
const bare = (figure: string): string => figure.replace(/(?:A|V|Ω|%|J|mm|ms)$/u, "");

/** What Debian's pikepdf finds wrong with the tags, bookmarks and links of a PDF. */
function tagFaults(file: string): unknown {
  const script = join(import.meta.dirname, "../print/check_tagged.py");
  const told = execFileSync("/usr/bin/python3", [script, file], { encoding: "utf8", maxBuffer: 1 << 28 });
  const reports: Readonly<Record<string, { readonly findings: unknown }>> = JSON.parse(told);
  return reports[file]?.findings;
}

test(
  "the Chinese book has nothing over each other or beyond its page, leads everywhere, warns of all, and is tagged",
  async () => {
    const document = composeServiceBook(line, { ...OPTIONS, language: "zh", unit: null });
    expect(overlapLines(document)).toEqual([]);
    expect(strayLines(document)).toEqual([]);
    expect(guideOf(document.pages).missing).toEqual([]);
    const needed = neededCautions(line, new Set(anchorsOf(document.pages).keys()));
    expect(missingCautions(document, needed, "zh")).toEqual([]);
    const folder = mkdtempSync(join(tmpdir(), "service-book-"));
    try {
      const file = join(folder, "book.pdf");
      writeFileSync(file, await renderDocument(document, "pdf"));
      expect(faultsOfWords(file)).toEqual([]);
      expect(tagFaults(file)).toEqual([]);
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
  PATIENCE_MS,
);

test(
  "every pin, id, part and figure in the PDF is in the book; every wire has its own colour",
  async () => {
    const document = composeServiceBook(line, { ...OPTIONS, language: "en", unit: null });
    expect(overlapLines(document)).toEqual([]);
    expect(strayLines(document)).toEqual([]);
    expect(guideOf(document.pages).missing).toEqual([]);
    const bound = boundRows(line, document);
    expect(bound.wrong).toEqual([]);
    expect(bound.counted.pins).toBeGreaterThan(1000);
    expect(bound.counted.pages).toBeGreaterThan(1000);
    const needed = neededCautions(line, new Set(anchorsOf(document.pages).keys()));
    expect(needed.length).toBeGreaterThan(150);
    expect(missingCautions(document, needed, "en")).toEqual([]);
    const folder = mkdtempSync(join(tmpdir(), "service-book-"));
    try {
      const file = join(folder, "book.pdf");
      writeFileSync(file, await renderDocument(document, "pdf"));
      expect(faultsOfWords(file)).toEqual([]);
      expect(tagFaults(file)).toEqual([]);
      const text = execFileSync("pdftotext", ["-layout", file, "-"], {
        encoding: "utf8",
        maxBuffer: 1 << 28,
      });
      const facts = factsOfBook(line);
      // A long id is broken at a colon or a point: its pieces are looked up with what they are pieces of.
      const follows = computed();
      const known = (figure: string): boolean =>
        facts.has(figure) || follows.has(figure) || LAYOUT.some((shape) => shape.test(figure));
      const all = [...facts].join("\n");
      const strange = new Set<string>();
      for (const figure of figuresIn(text)) {
        if (known(figure) || known(bare(figure)) || document.code.includes(figure)) continue;
        if (figure.length >= 3 && all.includes(figure)) continue;
        if (figure.split(/[:/·–]+/u).every((part) => known(bare(part)))) continue;
        strange.add(figure);
      }
      expect([...strange].sort()).toEqual([]);
      checkColours(text);
    } finally {
      rmSync(folder, { recursive: true });
    }
  },
  PATIENCE_MS,
);

/** In each line of the text a wire's number is followed by its own colour wherever a colour follows it. */
function checkColours(text: string): void {
  const colourOf = new Map(
    [...line.harnesses.values()].flatMap((harness) =>
      harness.wires.map((wire) => [wireNo(harness, wire.number), wire.colour] as const),
    ),
  );
  const wrong: string[] = [];
  let seen = 0;
  for (const [, number = "", colour = ""] of text.matchAll(/\b(\d{1,2}-\d{1,3})\s+((?:[A-Z]{2}){1,2})\b/gu)) {
    const own = colourOf.get(number);
    if (own === undefined) continue;
    seen++;
    if (own !== colour) wrong.push(`${number} ${colour}, not ${own}`);
  }
  expect(wrong).toEqual([]);
  expect(seen).toBeGreaterThan(3 * 900);
  const known = new Set(Object.keys(sheetWords("en").colours));
  for (const colour of colourOf.values())
    for (const code of colour.match(/[A-Z]{2}/gu) ?? []) expect(known.has(code)).toBe(true);
}
