import { describe, expect, test } from "vitest";
import { FaultLog } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { detectDelimiter } from "./delimiter.ts";
import { CsvGuard } from "./guard.ts";
import { parseCsv } from "./parse.ts";

const parse = (text: string) => {
  const log = new FaultLog();
  const { table, complete } = parseCsv("t.csv", text, log);
  return { header: table?.header, rows: table?.rows, complete, faults: log.list() };
};

test("the separator is the one that the heading uses most, outside quotes", () => {
  expect(detectDelimiter("a,b\n1;2;3;4")).toBe(",");
  expect(detectDelimiter('"a,b,c";d\n')).toBe(";");
  expect(detectDelimiter("a\tb")).toBe("\t");
  expect(detectDelimiter("id")).toBe(",");
});

describe("parsing", () => {
  // RFC 4180, section 2: line breaks, separators and doubled quotes within quotes; the last line may lack its end.
  test("quotes as RFC 4180 has them", () => {
    expect(parse('a,b\n"x ""y"" z","1,\n2"')).toMatchObject({
      rows: [['x "y" z', "1,\n2"]],
      complete: true,
      faults: [],
    });
  });

  test("line ends may be mixed, and within a cell they become LF", () => {
    expect(parse('a,b\r\n1,2\n3,"4\r\n5"\r6,7\r\n').rows).toEqual([
      ["1", "2"],
      ["3", "4\n5"],
      ["6", "7"],
    ]);
  });

  test("empty rows keep their numbers", () => {
    expect(parse("a,b\n\n1,2\n").rows).toEqual([[""], ["1", "2"]]);
  });

  test("an empty file has no heading", () => {
    expect(parse("")).toMatchObject({ header: [], rows: [], faults: [] });
  });

  test("a quote that is not closed ends the table there", () => {
    expect(parse('a,b\n1,2\n3,"4\n5,6\n')).toMatchObject({
      rows: [["1", "2"]],
      complete: false,
      faults: [{ code: "csv-quote", row: 3 }],
    });
  });

  test("a quote in the middle of a quoted cell ends the table there", () => {
    expect(parse('a,b\n1,2\n3,"4"x\n5,6\n')).toMatchObject({
      rows: [["1", "2"]],
      complete: false,
      faults: [{ code: "csv-quote", row: 3 }],
    });
  });

  test("a stray quote within a plain cell is just a quote", () => {
    expect(parse('a,b\n6" nail,2\n').rows).toEqual([['6" nail', "2"]]);
  });

  test("escaped formulas are taken back", () => {
    expect(parse("a,b\n'=1,''=2\n").rows).toEqual([["=1", "'=2"]]);
  });
});

describe("limits", () => {
  const long = "x".repeat(LIMITS.cellChars);

  test("a cell may have as many characters as the limit, quotes not counted", () => {
    expect(parse(`a,b\n${long},1\n`).faults).toEqual([]);
    expect(parse(`a,b\n"${'""'.repeat(LIMITS.cellChars)}",1\n`).faults).toEqual([]);
    expect(parse(`a,b\n${long}x,1\n`).faults).toMatchObject([
      { code: "cell-too-long", row: 2, column: "cell 1" },
    ]);
    expect(parse(`a,b\n1,"${'""'.repeat(LIMITS.cellChars + 1)}"\n`).faults).toMatchObject([
      { code: "cell-too-long", row: 2, column: "cell 2" },
    ]);
  });

  test("rows and cells have limits", () => {
    expect(parse(`a\n${"1\n".repeat(LIMITS.rowsPerTable)}`).faults).toEqual([]);
    expect(parse(`a\n${"1\n".repeat(LIMITS.rowsPerTable + 1)}`).faults).toMatchObject([
      { code: "rows-too-many", row: LIMITS.rowsPerTable + 2 },
    ]);
    expect(parse(`a${",".repeat(LIMITS.cellsPerRow)}\n`).faults).toMatchObject([
      { code: "row-ragged", row: 1 },
    ]);
  });

  test("the guard says the same whatever the pieces", () => {
    const text = `a,b\r\n"1,\r\n""2",x\r\n3,${long}y\r\n`;
    for (const size of [1, 2, 3, 7, 1000, 20_000]) {
      const guard = new CsvGuard("t.csv");
      let fault = null;
      for (let at = 0; at < text.length && fault === null; at += size)
        fault = guard.push(text.slice(at, at + size));
      expect(fault ?? guard.end(), String(size)).toMatchObject({
        code: "cell-too-long",
        row: 3,
        column: "cell 2",
      });
    }
  });
});
