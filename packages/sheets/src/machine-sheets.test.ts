import { Line } from "@pinwright/engine";
import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import { composeSheets, sheetNames } from "./all-sheets.ts";
import type { SheetDocument } from "./compose/document.ts";
import { leavesOf } from "./compose/leaves.ts";
import { MACHINE_SHEET_KINDS } from "./identity.ts";
import { composeMachineSheets, machineDocumentNames, machineDocumentsAbout } from "./machine-sheets.ts";
import { renderDocument } from "./print/index.ts";
import { exampleLine, OPTIONS } from "./testing/first-light.ts";
import { overlapLines, strayLines } from "./testing/page-faults.ts";

const line = await exampleLine("first-light");

const textsOf = (document: SheetDocument): readonly string[] =>
  document.pages.flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])),
  );

describe.each(["en", "zh", "both"] as const satisfies readonly SheetLanguage[])(
  "the whole of first-light in %s",
  (language) => {
    let documents: SheetDocument[] = [];
    beforeAll(() => {
      documents = [...composeMachineSheets(line, { ...OPTIONS, language })];
    });

    test("every kind is there, under the name that it is told by", () => {
      expect(documents.map((d) => d.id)).toEqual(machineDocumentNames(language));
      expect(documents).toHaveLength(MACHINE_SHEET_KINDS.length);
    });

    test("no text overlaps another, nothing leaves the frame, no lettering is lower than 1.8 mm", () => {
      expect(documents.flatMap(overlapLines)).toEqual([]);
      expect(documents.flatMap(strayLines)).toEqual([]);
      for (const d of documents)
        for (const page of d.pages)
          for (const { leaf } of leavesOf(page.marks))
            if (leaf.kind === "text") expect(leaf.heightMm).toBeGreaterThanOrEqual(1.8);
    });

    test("each says its number, its state and its cautions", () => {
      const words = sheetWords(language === "zh" ? "zh" : "en");
      for (const d of documents) {
        const texts = textsOf(d);
        expect(texts.some((t) => t.includes(words.titleBlock.draft))).toBe(true);
        expect(texts.some((t) => d.identity.number.startsWith(t))).toBe(true);
        expect(texts.some((t) => t.startsWith(words.caution.heading))).toBe(true);
      }
    });

    test("each has its lists for spreadsheets, every row as wide as its header", async () => {
      for (const d of documents) {
        expect(d.grids.length).toBeGreaterThan(0);
        for (const grid of d.grids) {
          expect(grid.rows.length).toBeGreaterThan(0);
          for (const row of grid.rows) expect(row).toHaveLength(grid.header.length);
        }
        expect((await renderDocument(d, "xlsx")).byteLength).toBeGreaterThan(0);
      }
    });
  },
);

test("date and state leave the body's hash alone; made again it is the same", () => {
  const hashes = (options: typeof OPTIONS): string[] =>
    [...composeMachineSheets(line, options)].map((d) => d.bodyHash);
  const usual = hashes(OPTIONS);
  expect(hashes({ ...OPTIONS, date: "2027-01-31" })).toEqual(usual);
  expect(new Set(usual).size).toBe(usual.length);
  expect(hashes({ ...OPTIONS, state: "released" })).toEqual(usual);
});

test("sheets of a named harness come without those of the machine, kinds of the machine without harnesses", () => {
  const made = (
    kinds: Parameters<typeof composeSheets>[2]["kinds"],
    harnessIds: readonly string[],
  ): string[] => {
    const choice = { kinds, harnessIds };
    const ids = [...composeSheets(line, OPTIONS, choice)].map(({ document }) => document.id);
    expect(ids).toEqual(sheetNames(line, OPTIONS.language, choice));
    return ids;
  };
  const [first = ""] = line.harnesses.keys();
  expect(made([], [first]).every((id) => id.startsWith(`${first}.`))).toBe(true);
  expect(made(["loads"], [])).toEqual(["machine.loads.en"]);
  expect(made(["loads", "from-to"], [first])).toEqual(["machine.loads.en", `${first}.from-to.en`]);
});

test("something is on the sheets of the machine that name it", () => {
  const lists = [...composeMachineSheets(line, OPTIONS)].map((d) => ({
    id: d.id,
    text: JSON.stringify(d.grids.map((grid) => grid.rows)),
  }));
  for (const itemId of ["lp.a", "sw.left", "bd.io", "bd.power", "mech.bumper/coil"]) {
    const named = machineDocumentsAbout(line, itemId, true);
    expect(named).not.toEqual([]);
    for (const { id, text } of lists)
      if (named.includes(id)) expect(text, `${itemId} on ${id}`).toContain(itemId);
  }
  expect(machineDocumentsAbout(line, null, false)).toEqual([]);
});

test.each(["supplies", "fuses", "elements", "ends", "boards"] as const)(
  "a book without %s has sheets all the same",
  async (table) => {
    const { book, shop } = line.machine;
    const without = { ...book, tables: { ...book.tables, [table]: [] } };
    const documents = [
      ...composeMachineSheets(new Line().run(without, shop), { ...OPTIONS, language: "both" }),
    ];
    expect(documents.flatMap(overlapLines)).toEqual([]);
    expect(documents.flatMap(strayLines)).toEqual([]);
    for (const d of documents) expect((await renderDocument(d, "pdf")).byteLength).toBeGreaterThan(0);
  },
);
