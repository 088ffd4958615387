import { fastenerBill, Line, type LineResult } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import { assemblyDocumentNames, assemblyDocumentsAbout, composeAssemblySheets } from "./assembly-sheets.ts";
import type { SheetDocument } from "./compose/document.ts";
import { leavesOf } from "./compose/leaves.ts";
import { ASSEMBLY_SHEET_KINDS } from "./identity.ts";
import { formatsOf, renderDocument } from "./print/index.ts";
import { composeStepCard } from "./step-cards/step-cards.ts";
import { OPTIONS, woodenLine } from "./testing/first-light.ts";
import { hiddenSigns, leastSignMm, overlapLines, strayLines } from "./testing/page-faults.ts";

let line: LineResult;
beforeAll(async () => {
  line = await woodenLine();
});

const textsOf = (document: SheetDocument): readonly string[] =>
  document.pages.flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])),
  );

const kindOf = (document: SheetDocument): string | undefined =>
  ASSEMBLY_SHEET_KINDS.find((kind) => document.id.startsWith(`machine.${kind}`));

describe.each(["en", "zh", "both"] as const satisfies readonly SheetLanguage[])(
  "the assembly of first-light in %s",
  (language) => {
    let documents: SheetDocument[] = [];
    beforeAll(() => {
      documents = [...composeAssemblySheets(line, { ...OPTIONS, language })];
    });

    test("every kind is there, under the names that it is told by", () => {
      expect(documents.map((d) => d.id)).toEqual(assemblyDocumentNames(line, language));
      expect(new Set(documents.map(kindOf))).toEqual(new Set(ASSEMBLY_SHEET_KINDS));
      expect(new Set(documents.map((d) => d.fileName)).size).toBe(documents.length);
    });

    test("no text overlaps another, nothing leaves the frame, no lettering is lower than 1.8 mm", () => {
      expect(documents.flatMap(overlapLines)).toEqual([]);
      expect(documents.flatMap(strayLines)).toEqual([]);
      for (const d of documents)
        for (const page of d.pages)
          for (const { leaf } of leavesOf(page.marks))
            if (leaf.kind === "text") expect(leaf.heightMm).toBeGreaterThanOrEqual(1.8);
    });

    test("nothing stands on a symbol, and every symbol is 4 mm at least but for its own shape", () => {
      expect(documents.filter((d) => !/-a[34]\./u.test(d.id)).flatMap(hiddenSigns)).toEqual([]);
      // A bar of 4 mm is as long as that; a drop or a half within the square of 4 mm is a little smaller.
      for (const d of documents) expect(leastSignMm(d), d.id).toBeGreaterThan(3.4);
    });

    test("each page names its sheet and its state", () => {
      const words = sheetWords(language === "zh" ? "zh" : "en");
      for (const d of documents) {
        const texts = textsOf(d);
        expect(texts.some((t) => t.includes(words.titleBlock.draft))).toBe(true);
        expect(texts).toContain(`${d.pages.length} / ${d.pages.length}`);
      }
    });

    test("every sheet can be written in each of its formats", async () => {
      for (const d of documents.filter((_, i) => i % 4 === 0))
        for (const format of formatsOf(d))
          expect((await renderDocument(d, format)).byteLength).toBeGreaterThan(0);
    });
  },
);

test("only steps with fasteners have maps and trays, and every step has a card", () => {
  const documents = [...composeAssemblySheets(line, OPTIONS)];
  const screwed = line.steps.steps.filter((s) => s.fastenerIds.length + s.recheckIds.length > 0);
  const rolls = documents.filter((d) => d.id.includes("screw-map") && d.id.includes("-roll."));
  expect(rolls).toHaveLength(screwed.length);
  const driven = line.steps.steps.filter((s) => s.fastenerIds.length > 0);
  expect(documents.filter((d) => d.id.includes("screw-tray"))).toHaveLength(driven.length);
  const [cards] = documents.filter((d) => d.id.includes("step-cards"));
  const texts = cards === undefined ? [] : textsOf(cards);
  for (const step of line.steps.steps) {
    expect(texts.join(" ")).toContain(step.labels.en);
    expect(composeStepCard(line, step, OPTIONS).pages.length).toBeGreaterThan(0);
  }
});

test("the underside is mirrored in x and says so, with the player's side below", () => {
  const documents = [...composeAssemblySheets(line, OPTIONS, ["screw-map"])];
  const under = documents.filter((d) => d.id.includes("-roll."));
  expect(under.length).toBeGreaterThan(0);
  for (const d of under) {
    const text = textsOf(d).join(" ");
    expect(text).toContain("Pose: inverted on the cradle.");
    expect(text).toContain("left and right have changed places");
    expect(text).toContain("player’s side");
  }
});

test("the kits of all places together are the fasteners of the machine", () => {
  const kits = [...composeAssemblySheets(line, OPTIONS, ["kit-list"])];
  const counts = new Map<string, number>();
  for (const kit of kits) {
    const boxes = kit.grids.find((grid) => grid.name === "Boxes of screws");
    for (const [, screw, count] of boxes?.rows ?? [])
      counts.set(String(screw), (counts.get(String(screw)) ?? 0) + Number(count));
  }
  expect([...counts]).toEqual(fastenerBill(line).map((f) => [f.labels.en, f.count]));
});

test("the table of holes has every hole to drill once, with its place as the panel lies", () => {
  const [table] = [...composeAssemblySheets(line, OPTIONS, ["drill-table"])].filter(
    (d) => d.grids.length > 0,
  );
  const rows = table?.grids[0]?.rows ?? [];
  const fasteners = rows.flatMap((row) => String(row[8]).split(" "));
  const drilled = [...line.fastening.fits.values()].filter((fit) => fit.hole !== null);
  expect(fasteners.toSorted()).toEqual(drilled.map((fit) => fit.fastenerId).toSorted());
  for (const row of rows) {
    // The deck is 400 mm wide; seen from below x runs the other way.
    expect(Number(row[2]) + Number(row[11])).toBeCloseTo(400, 6);
    expect(row[4]).toBe(line.fastening.fits.get(String(row[8]).split(" ")[0] ?? "")?.hole?.diameterMm);
  }
});

test("date and state leave the body's hash alone; made again it is the same", () => {
  const hashes = (options: typeof OPTIONS): string[] =>
    [...composeAssemblySheets(line, options)].map((d) => d.bodyHash);
  const usual = hashes(OPTIONS);
  expect(hashes({ ...OPTIONS, date: "2027-01-31" })).toEqual(usual);
  expect(new Set(usual).size).toBe(usual.length);
  expect(hashes({ ...OPTIONS, state: "released" })).toEqual(usual);
});

test.each(["stations", "fasteners", "mechanisms", "boards", "steps"] as const)(
  "a book without %s has sheets all the same",
  (table) => {
    const { book, shop } = line.machine;
    const without = new Line().run({ ...book, tables: { ...book.tables, [table]: [] } }, shop);
    const documents = [...composeAssemblySheets(without, { ...OPTIONS, language: "both" })];
    expect(documents.map((d) => d.id)).toEqual(assemblyDocumentNames(without, "both"));
    expect(documents.flatMap(overlapLines)).toEqual([]);
    expect(documents.flatMap(strayLines)).toEqual([]);
  },
);

test("threadlocker is told with its caution", () => {
  const { book, shop } = line.machine;
  const types = book.tables.fastener_types.map((type) => ({ ...type, threadlocker: true }));
  const locked = new Line().run({ ...book, tables: { ...book.tables, fastener_types: types } }, shop);
  const cards = (of: LineResult): string =>
    [...composeAssemblySheets(of, OPTIONS, ["step-cards"])].flatMap(textsOf).join(" ");
  for (const words of ["threadlocker: 1 drop", "not on skin", "never on plastics"]) {
    expect(cards(locked)).toContain(words);
    expect(cards(line)).not.toContain(words);
  }
});

test("the sheets that an item is on are those of its steps, and all of them exist", () => {
  const all = new Set(assemblyDocumentNames(line, "en"));
  for (const { itemIds, fastenerIds, mechanismTypeId } of line.steps.steps)
    for (const id of [...itemIds, ...fastenerIds]) {
      const names = assemblyDocumentsAbout(line, id, "en");
      expect(names.length, `${id} ${mechanismTypeId}`).toBeGreaterThan(0);
      for (const name of names) expect(all).toContain(name);
    }
  expect(assemblyDocumentsAbout(line, "nothing")).toEqual([]);
  expect(assemblyDocumentsAbout(line, null)).toEqual([]);
});
