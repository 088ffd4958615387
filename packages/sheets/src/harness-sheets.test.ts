import { type SheetLanguage, sheetWords } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import type { SheetDocument } from "./compose/document.ts";
import { leavesOf } from "./compose/leaves.ts";
import { composeHarnessSheets, documentNames } from "./harness-sheets.ts";
import { HARNESS_SHEET_KINDS } from "./identity.ts";
import { exampleLine, OPTIONS } from "./testing/first-light.ts";
import { overlapLines, strayLines } from "./testing/page-faults.ts";

describe.each(["en", "zh", "both"] as const satisfies readonly SheetLanguage[])(
  "first-light in %s",
  (language) => {
    let documents: SheetDocument[] = [];
    let names: readonly string[] = [];

    beforeAll(async () => {
      const line = await exampleLine("first-light");
      documents = [...composeHarnessSheets(line, { ...OPTIONS, language })];
      names = documentNames(line, [...line.harnesses.keys()], language);
    }, 60_000);

    test("every kind of sheet is there, under the name that it is told by", () => {
      expect(documents.map((d) => d.id)).toEqual(names);
      for (const kind of HARNESS_SHEET_KINDS) {
        expect(documents.some((d) => d.id.includes(`.${kind}`))).toBe(true);
      }
    });

    test("no text overlaps another", () => {
      expect(documents.flatMap(overlapLines)).toEqual([]);
    });

    test("nothing leaves the frame of its page", () => {
      expect(documents.flatMap(strayLines)).toEqual([]);
    });

    test("no lettering is lower than 1.8 mm", () => {
      for (const d of documents) {
        for (const page of d.pages) {
          for (const { leaf } of leavesOf(page.marks)) {
            if (leaf.kind === "text") expect(leaf.heightMm).toBeGreaterThanOrEqual(1.8);
          }
        }
      }
    });

    test("each page names its machine's number, its sheet and its state", () => {
      const state = sheetWords(language === "zh" ? "zh" : "en").titleBlock.draft;
      for (const d of documents) {
        d.pages.forEach((page, i) => {
          const texts = leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : []));
          expect(texts).toContain(`${i + 1} / ${d.pages.length}`);
          expect(texts.some((t) => t.includes(state))).toBe(true);
          expect(texts.some((t) => d.identity.number.startsWith(t))).toBe(true);
        });
      }
    });
  },
);
