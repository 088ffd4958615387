import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseTsv, writeTsv } from "./tsv.ts";

describe("parseTsv", () => {
  it("reads cells, rows and quoted line breaks as spreadsheets write them", () => {
    expect(parseTsv('a\tb\r\n"q\nr"\td\r\n')).toEqual([
      ["a", "b"],
      ["q\nr", "d"],
    ]);
    expect(parseTsv('"say ""hi""\t!"\tx')).toEqual([['say "hi"\t!', "x"]]);
  });

  it("takes a quote that quotes nothing as a character", () => {
    expect(parseTsv('5" pipe\t"a"b\n"abc"')).toEqual([['5" pipe', '"a"b'], ['"abc"']]);
    expect(parseTsv('"never closed\nx')).toEqual([['"never closed'], ["x"]]);
  });

  it("keeps blank cells and blank rows, and one line break at the end belongs to the last row", () => {
    expect(parseTsv("")).toEqual([]);
    expect(parseTsv("\n")).toEqual([[""]]);
    expect(parseTsv("a\t\n\n\tb\n")).toEqual([["a", ""], [""], ["", "b"]]);
  });

  it("reads what writeTsv writes", () => {
    const cell = fc.string({ unit: fc.constantFrom("a", "中", '"', "\t", "\n", " ", "=") });
    const block = fc
      .integer({ min: 1, max: 4 })
      .chain((cols) => fc.array(fc.array(cell, { minLength: cols, maxLength: cols }), { minLength: 1 }));
    fc.assert(
      fc.property(block, (rows) => {
        expect(parseTsv(writeTsv(rows))).toEqual(rows);
      }),
      { seed: 3, numRuns: 500 },
    );
  });
});
