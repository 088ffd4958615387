import { coloursOf, type LineResult } from "@pinwright/engine";
import { decimal, numberOfDecimal } from "@pinwright/kernel";
import type { SheetLanguage } from "@pinwright/words";
import { beforeAll, describe, expect, test } from "vitest";
import type { SheetDocument } from "../compose/document.ts";
import { leavesOf } from "../compose/leaves.ts";
import { OPTIONS, woodenLine } from "../testing/first-light.ts";
import { overlapLines, strayLines } from "../testing/page-faults.ts";
import { composePartsLists, partsListNames } from "./parts-list.ts";

let line: LineResult;
beforeAll(async () => {
  line = await woodenLine();
});

const textsOf = (document: SheetDocument): readonly string[] =>
  document.pages.flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.text] : [])),
  );

describe.each(["en", "zh", "both"] as const satisfies readonly SheetLanguage[])(
  "the parts lists of first-light in %s",
  (language) => {
    test("are there under their names, with nothing over another and nothing outside the frame", () => {
      const documents = [...composePartsLists(line, { ...OPTIONS, language, machines: 25 })];
      expect(documents.map((d) => d.id)).toEqual(partsListNames(line, language));
      expect(documents.flatMap(overlapLines)).toEqual([]);
      expect(documents.flatMap(strayLines)).toEqual([]);
    });
  },
);

describe("a parts list", () => {
  test("has every part and every line of the bill, in figures that a spreadsheet can add up", () => {
    const [all, byAssembly] = [...composePartsLists(line, { ...OPTIONS, language: "en", machines: 25 })];
    const { bill } = line.parts;
    const sums = new Map<string, number>();
    for (const row of all?.grids[0]?.rows ?? []) {
      const [name, , , one, many] = row;
      if (typeof name !== "string" || typeof one !== "number" || typeof many !== "number") continue;
      expect(many).toBeCloseTo(25 * one, 6);
      sums.set(name, (sums.get(name) ?? 0) + one);
    }
    const parts = [...bill.totals].filter(([id]) => bill.nodes.get(id)?.kind === "part");
    expect(parts.length).toBeGreaterThan(10);
    for (const [id, quantity] of parts) expect(sums.get(id), id).toBeCloseTo(numberOfDecimal(quantity), 6);
    expect(byAssembly?.grids[0]?.rows.length).toBe(bill.lines.length);
    const colours = [...coloursOf(bill).values()].reduce((n, of) => n + of.size, 0);
    expect(all?.grids[0]?.rows.filter((row) => row[2] !== "").length).toBe(colours);
    expect(decimal(1)).toBe(bill.totals.get("machine"));
  });

  test("says nothing of money", () => {
    const shop = line.machine.shop.tables;
    const currencies = new Set([
      ...shop.suppliers.map((s) => s.currency),
      ...shop.currencies.map((c) => c.id),
    ]);
    for (const document of composePartsLists(line, { ...OPTIONS, language: "en" }))
      for (const text of textsOf(document))
        for (const currency of currencies) if (currency !== "") expect(text).not.toContain(currency);
  });
});
