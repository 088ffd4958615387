import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { Line, type LineResult, PanelsSolver } from "@pinwright/engine";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { leavesOf } from "../compose/leaves.ts";
import type { MakingSheetKind } from "../identity.ts";
import { composeMakingSheets, makingDocumentNames } from "../making-sheets.ts";
import { renderDocument } from "../print/render.ts";
import { OPTIONS } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { readDxf } from "../testing/read-dxf.ts";
import { cuttings } from "./panel-facts.ts";

const KINDS = [
  "cutting-plan",
  "cutting-order",
  "panel-labels",
  "panel-drawing",
  "paint-plan",
] as const satisfies readonly MakingSheetKind[];

const folder = mkdtempSync(join(tmpdir(), "pinwright-panels-"));
afterAll(() => rmSync(folder, { recursive: true }));

let line: LineResult;
beforeAll(async () => {
  const { book, shop } = await readBook(join(import.meta.dirname, "../../../../examples/tidewatch"));
  // Panels need nothing of the wiring.
  const placed = new Line().places(book, shop ?? emptyShop());
  line = { ...placed, panels: new PanelsSolver().solve(placed.machine).panels };
});

const textsOf = (document: SheetDocument | undefined): readonly string[] =>
  (document?.pages ?? []).flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])),
  );

function made(kinds: readonly MakingSheetKind[], machines: number, language: "en" | "zh" | "both" = "en") {
  return [...composeMakingSheets(line, { ...OPTIONS, language, machines }, kinds)];
}

describe("sheets of panels", () => {
  test.each([
    ["both", 25],
    ["en", 1],
    ["zh", 1],
  ] as const)(
    "in %s for %i machines: no text on another, nothing outside its frame",
    (language, machines) => {
      const documents = made(KINDS, machines, language);
      expect(documents.map(({ id }) => id)).toEqual(makingDocumentNames(line, language, KINDS));
      expect(documents.flatMap((document) => [...overlapLines(document), ...strayLines(document)])).toEqual(
        [],
      );
    },
  );

  test("a page for every pattern, each with its number of sheets, and the proven bound", () => {
    const plan = cuttings(line, 25).find(({ sheetPartId }) => sheetPartId === "sheet.ply-18");
    const document = made(["cutting-plan"], 25).find(({ id }) => id.includes("ply-18"));
    expect(document?.pages.length).toBe(plan?.sheets.length);
    const texts = textsOf(document);
    expect(texts).toContain(
      `${plan?.newSheets} new sheets; no plan needs fewer than ${plan?.fewestNewSheets}`,
    );
    for (const sheet of plan?.sheets ?? [])
      expect(texts).toContain(
        sheet.copies === 1 ? "cut 1 sheet like this" : `cut ${sheet.copies} sheets like this`,
      );
  });

  test("every setting of the fence is told in figures", () => {
    const plan = cuttings(line, 9).find(({ sheetPartId }) => sheetPartId === "sheet.ply-18");
    const document = made(["cutting-order"], 9).find(({ id }) => id.includes("ply-18"));
    const texts = textsOf(document);
    for (const { fenceMm } of plan?.setups ?? []) expect(texts).toContain(String(fenceMm));
    expect(texts.some((text) => text.startsWith("Table saw"))).toBe(true);
  });

  test("a label for each panel of each machine", () => {
    const texts = textsOf(made(["panel-labels"], 3)[0]);
    for (const { panelId } of line.panels.cuts)
      expect(texts.filter((text) => text.startsWith(`${panelId} ·`)).length).toBe(3);
  });

  test("the blank, a hole and a rebate as wide as the back is thick come out of the DXF at true size", async () => {
    const document = made(["panel-drawing"], 1).find(({ id }) => id.includes("bb.left-top-true"));
    if (document === undefined) throw new Error("the side is drawn");
    const path = join(folder, "side.dxf");
    writeFileSync(path, await renderDocument(document, "dxf"));
    const read = readDxf(path);
    expect([read.errors, read.fixes, read.units]).toEqual([0, 0, 4]);
    const cut = line.panels.cuts.find(({ panelId }) => panelId === "bb.left");
    const slot = line.panels.slots.find(({ panelId }) => panelId === "bb.left");
    const [wide, high, back] = [cut?.widthMm ?? 0, cut?.heightMm ?? 0, slot?.widthMm ?? 0];
    const box = (layer: string): readonly number[] => {
      const corners = read.outlines.find(([own]) => own === layer)?.[1] ?? [];
      const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)];
      return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(
        (mm) => Math.round(mm * 1000) / 1000,
      );
    };
    expect(box("CUT")).toEqual([0, 0, wide, high]);
    expect(box("DRILL_ROUT_TOP_Z090")).toEqual([Math.round((wide - back) * 1000) / 1000, 0, wide, high]);
    const speaker = line.machine.book.tables.cutouts.find(({ id }) => id === "cut.sp-left");
    expect(read.circles.filter(([layer]) => layer.startsWith("DRILL_TOP_")).map((c) => c.slice(1))).toEqual([
      [speaker?.x_mm, speaker?.y_mm, (speaker?.width_mm ?? 0) / 2].map((mm) => expect.closeTo(mm ?? 0, 6)),
    ]);
  });
});
