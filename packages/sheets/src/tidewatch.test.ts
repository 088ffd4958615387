import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import { composeAssemblySheets } from "./assembly-sheets.ts";
import { circuitsOf, powerOf } from "./circuits/index.ts";
import { stepsOf } from "./circuits/walk.ts";
import type { SheetDocument } from "./compose/document.ts";
import { leavesOf } from "./compose/leaves.ts";

import { composeHarnessSheets, documentNames } from "./harness-sheets.ts";
import { ASSEMBLY_SHEET_KINDS } from "./identity.ts";
import { composeMachineSheets } from "./machine-sheets.ts";
import { exampleLine, OPTIONS } from "./testing/first-light.ts";
import { hiddenSigns, overlapLines, strayLines } from "./testing/page-faults.ts";

/** Twenty times what it takes alone: other programs may have the machine. */
const PATIENCE_MS = 240_000;

let line: LineResult;
beforeAll(async () => {
  line = await exampleLine("tidewatch");
}, PATIENCE_MS);

/** Sheets in both languages are the fullest: all of them are looked at, of the others those of every fifth harness. */
const EVERY: Readonly<Record<SheetLanguage, number>> = { both: 1, en: 5, zh: 5 };

describe.each(["both", "en", "zh"] as const)("the full-size machine in %s", (language) => {
  test(
    "no text overlaps another, nothing leaves its frame, and every sheet is there",
    () => {
      const harnessIds = [...line.harnesses.keys()].filter((_, i) => i % EVERY[language] === 0);
      expect(harnessIds.length).toBeGreaterThanOrEqual(2);
      const faults: string[] = [];
      const names: string[] = [];
      let texts = 0;
      for (const document of composeHarnessSheets(line, { ...OPTIONS, language }, { harnessIds })) {
        names.push(document.id);
        faults.push(...overlapLines(document), ...strayLines(document));
        for (const page of document.pages) {
          texts += leavesOf(page.marks).filter(({ leaf }) => leaf.kind === "text").length;
        }
      }
      expect(faults).toEqual([]);
      expect(names).toEqual(documentNames(line, harnessIds, language));
      // Eleven texts stand in the title block alone.
      expect(texts).toBeGreaterThan(11 * names.length);
    },
    PATIENCE_MS,
  );

  test(
    "the sheets of the whole machine have no overlap and nothing outside their frame",
    () => {
      const faults: string[] = [];
      for (const document of composeMachineSheets(line, { ...OPTIONS, language }))
        faults.push(...overlapLines(document), ...strayLines(document));
      expect(faults).toEqual([]);
    },
    PATIENCE_MS,
  );
});

test(
  "the sheets of its assembly have no overlap, nothing outside their frame and nothing on a symbol",
  () => {
    // A sample of sheets and pages: all of them take a minute.
    const documents: SheetDocument[] = [];
    let made = 0;
    const take = (document: SheetDocument): void => {
      const isBooklet = document.pages.length > 20;
      if (isBooklet || made % 5 === 0)
        documents.push({ ...document, pages: document.pages.filter((_, i) => !isBooklet || i % 5 === 0) });
      made++;
    };
    const options = { ...OPTIONS, language: "both" } as const;
    const kinds = ASSEMBLY_SHEET_KINDS.filter((kind) => kind !== "screw-map");
    for (const document of composeAssemblySheets(line, options, kinds)) take(document);
    // The overview of all steps, and some of the maps at true size.
    for (const document of composeAssemblySheets(line, options, ["screw-map"])) {
      take(document);
      if (document.id.includes("mount-") && document.id.includes("-a4.")) break;
    }
    expect(made).toBeGreaterThan(100);
    expect(documents.flatMap(overlapLines)).toEqual([]);
    expect(documents.flatMap(strayLines)).toEqual([]);
    expect(documents.filter((d) => !/-a[34]\./u.test(d.id)).flatMap(hiddenSigns)).toEqual([]);
  },
  PATIENCE_MS,
);

test("the wiring chart of the full-size machine has every wire", () => {
  const { graph, rails, supplies } = powerOf(line);
  const charted = new Set<string>();
  for (const { feed, returns } of circuitsOf(line, graph, rails, supplies))
    for (const stop of [...feed, ...returns])
      for (const { step } of stepsOf(stop)) if (step.kind === "wire") charted.add(step.laid.wire.id);
  const wires = [...line.harnesses.values()].flatMap((h) => h.wires.map((w) => w.id));
  expect(wires.length).toBeGreaterThan(900);
  expect(wires.filter((id) => !charted.has(id))).toEqual([]);
});
