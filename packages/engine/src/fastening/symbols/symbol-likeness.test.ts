import { describe, expect, it } from "vitest";
import { SYMBOL_LIKENESS } from "./symbol-likeness-table.ts";
import { measureLikeness } from "./testing/measure-likeness.ts";

/** The file as it is kept. */
const file = (rows: readonly string[]): string =>
  [
    "/** Likeness of each sign to those before it in `SIGNS`, in thousandths: measured, and written by its test. */",
    "export const SYMBOL_LIKENESS: readonly string[] = [",
    ...rows.map((row) => `  "${row}",`),
    "];",
    "",
  ].join("\n");

describe("likeness of symbols", () => {
  it("is what is measured on the drawings", async () => {
    const rows = measureLikeness();
    await expect(file(rows)).toMatchFileSnapshot("./symbol-likeness-table.ts");
    expect(SYMBOL_LIKENESS).toEqual(rows);
  });
});
