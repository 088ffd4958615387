import { describe, expect, test } from "vitest";
import { filesOf, readBookFiles } from "../csv/files.ts";
import { LIMITS } from "../limits.ts";
import { plainDecimal } from "../read/plain-decimal.ts";
import type { CellKind } from "../schema/column.ts";
import {
  faultsOf,
  readChanged,
  readChangedText,
  sampleFiles,
  TABLE_PATHS,
  toCells,
  toText,
} from "./files.ts";

const good = readBookFiles(filesOf(sampleFiles()));

/** First row below the heading in which a column is filled, the column's place, and what stands there. */
function filledCell(
  cells: readonly (readonly string[])[],
  column: string,
): { line: number; at: number; value: string } {
  const at = cells[0]?.indexOf(column) ?? -1;
  const row = Math.max(
    1,
    cells.findIndex((cell, i) => i > 0 && cell[at] !== ""),
  );
  return { line: row + 1, at, value: cells[row]?.[at] ?? "" };
}

/** Changes one cell of each of several columns at once, and gives each column's value and fault. */
function changeEach(
  path: string,
  columns: readonly string[],
  change: (value: string, column: string) => string,
) {
  const cells = toCells(sampleFiles().get(path) ?? "");
  const places = columns.map((column) => ({ column, ...filledCell(cells, column) }));
  const read = readChanged(path, (changed) => {
    for (const { column, line, at, value } of places) changed[line - 1]?.splice(at, 1, change(value, column));
  });
  const faults = faultsOf(read, path);
  return places.map(({ column, line, value }) => ({
    column,
    value,
    fault: faults.find((f) => f.row === line && f.column === column),
  }));
}

describe.each(TABLE_PATHS)("$path", ({ path, table }) => {
  const columns = Object.entries(table.columns);
  const keyColumn = table.key[table.key.length - 1] ?? "";
  const ofKind = (...kinds: readonly CellKind[]) => columns.filter(([, { kind }]) => kinds.includes(kind));
  const names = (list: typeof columns) => list.map(([name]) => name);

  test("missing columns are named all at once; those that may be blank may be left out", () => {
    const required = names(columns.filter(([, column]) => column.required));
    for (const dropRequired of [true, false]) {
      const read = readChanged(path, (cells) => {
        const keep = (cells[0] ?? []).map((name) => required.includes(name) !== dropRequired);
        for (const [i, row] of cells.entries()) cells[i] = row.filter((_, k) => keep[k] === true);
        if (cells[0]?.length === 0) cells[0] = ["x"];
      });
      const missing = faultsOf(read, path).filter((f) => f.code === "column-missing");
      expect(missing.map((f) => f.column)).toEqual(dropRequired ? required : []);
      for (const fault of missing) expect(fault).toMatchObject({ row: 1, nearest: fault.column });
    }
  });

  test("a duplicate key is named with the row that had it first, and the later row is not read", () => {
    const read = readChanged(path, (cells) => {
      cells.push([...(cells[1] ?? [])]);
    });
    const line = toCells(sampleFiles().get(path) ?? "").length + 1;
    expect(faultsOf(read, path)).toEqual([
      expect.objectContaining({
        code: "id-duplicate",
        row: line,
        column: keyColumn,
        expected: expect.stringContaining("row 2"),
      }),
    ]);
    expect(read.book.tables).toEqual(good.book.tables);
    expect(read.shop).toEqual(good.shop);
  });

  const references = names(ofKind("ref", "refs", "item", "items"));
  if (references.length > 0)
    test("dangling references name the nearest id", () => {
      for (const { column, value, fault } of changeEach(
        path,
        references,
        (value) => `${value.split(" ")[0]}x`,
      )) {
        const [id = ""] = value.split(" ");
        expect(fault, column).toMatchObject({ code: "ref-dangling", value: `${id}x` });
        expect(fault?.nearest, column).toBe(id.length >= 2 ? id : null);
      }
    });

  const points = ofKind("point", "local-point");
  if (points.length > 0)
    test("dangling and malformed points are named", () => {
      for (const { column, value, fault } of changeEach(path, names(points), (value) => `${value}9`)) {
        expect(fault, column).toMatchObject({
          code: "point-dangling",
          value: `${value}9`,
          nearest: expect.any(String),
        });
      }
      for (const { column, fault } of changeEach(path, names(points), () => "a:b:c")) {
        expect(fault, column).toMatchObject({ code: "point-form", value: "a:b:c" });
      }
    });

  const outlines = names(ofKind("outline"));
  if (outlines.length > 0)
    test("an outline that is not there is named, and a path is refused", () => {
      for (const { fault } of changeEach(path, outlines, () => "slots.dxf")) {
        expect(fault).toMatchObject({ code: "outline-missing", nearest: "slot.dxf" });
      }
      for (const { fault } of changeEach(path, outlines, () => "../slot.dxf")) {
        expect(fault).toMatchObject({ code: "outline-missing", value: "../slot.dxf" });
      }
    });

  const numbers = ofKind("number", "integer");
  if (numbers.length > 0)
    test("impossible numbers and wrong units are told with the number that was meant", () => {
      for (const value of ["NaN", "1e999", "#DIV/0!", "twelve"]) {
        for (const { column, fault } of changeEach(path, names(numbers), () => value)) {
          expect(fault, `${column} ${value}`).toMatchObject({
            code: "number-form",
            value,
            expected: expect.stringContaining("number"),
          });
        }
      }
      for (const { column, fault } of changeEach(path, names(numbers), () => "7 parsec")) {
        expect(fault, column).toMatchObject({ code: "number-unit", value: "7 parsec", nearest: null });
      }
      const ranged = numbers.filter(([, { max }]) => max !== undefined);
      const max = (column: string) => table.columns[column]?.max ?? 0;
      for (const { column, fault } of changeEach(path, names(ranged), (_, name) =>
        plainDecimal(max(name) + 1),
      )) {
        expect(fault, column).toMatchObject({ code: "number-range", nearest: plainDecimal(max(column)) });
      }
      for (const { column, fault } of changeEach(path, names(ofKind("integer")), () => "1.5")) {
        expect(fault, column).toMatchObject({
          code: "number-form",
          expected: expect.stringContaining("whole"),
        });
      }
      const lengths = numbers.filter(([name]) => name.endsWith("_mm"));
      for (const { column, fault } of changeEach(path, names(lengths), () => "1 in")) {
        const { min = -Infinity, max: most = Infinity } = table.columns[column] ?? {};
        const nearest = min <= 25.4 && most >= 25.4 ? "25.4" : null;
        expect(fault, column).toMatchObject({
          code: "number-unit",
          nearest,
          expected: expect.stringContaining("in mm"),
        });
      }
    });

  const choices = ofKind("choice");
  if (choices.length > 0)
    test("a word that is no choice is named with the nearest one", () => {
      for (const { column, value, fault } of changeEach(
        path,
        names(choices),
        (value) => `${value || "zz"}z`,
      )) {
        const oneOf = table.columns[column]?.oneOf ?? [];
        expect(fault, column).toMatchObject({
          code: "choice-unknown",
          expected: expect.stringContaining(oneOf.join(", ")),
        });
        if (value.length >= 3) expect(fault?.nearest, column).toBe(value);
      }
    });

  test("blank cells that must be filled are named", () => {
    // In two goes, because a row whose cells are all blank is an empty row.
    const required = names(columns.filter(([, column]) => column.required));
    for (const half of [0, 1]) {
      const some = required.filter((_, i) => i % 2 === half);
      for (const { column, fault } of changeEach(path, some, () => "")) {
        const about = table.columns[column]?.about ?? "?";
        expect(fault, column).toMatchObject({
          code: "cell-blank",
          value: "",
          expected: expect.stringContaining(about),
        });
      }
    }
  });

  test("a column with another unit or a misspelt name is named", () => {
    const withUnit = columns.find(([name]) => name.endsWith("_mm"));
    if (withUnit !== undefined) {
      const [name] = withUnit;
      const other = name.replace(/_mm$/, "_in");
      const read = readChangedText(path, (text) => text.replace(name, other));
      expect(faultsOf(read, path)).toContainEqual(
        expect.objectContaining({
          code: "column-unknown",
          row: 1,
          column: other,
          nearest: name,
          expected: expect.stringContaining("in mm"),
        }),
      );
    }
    const [first = ""] = columns.map(([name]) => name).filter((name) => name.length > 4);
    if (first !== "") {
      const read = readChangedText(path, (text) => text.replace(first, `${first}s`));
      expect(faultsOf(read, path)).toContainEqual(
        expect.objectContaining({ code: "column-unknown", value: `${first}s`, nearest: first }),
      );
    }
  });

  test("a column that is there twice is named, and the first counts", () => {
    const read = readChanged(path, (cells) => {
      for (const [i, row] of cells.entries()) row.push(i === 0 ? (row[0] ?? "") : "zzz");
    });
    expect(faultsOf(read, path)).toEqual([
      expect.objectContaining({ code: "column-duplicate", column: columns[0]?.[0] }),
    ]);
    expect(read.book.tables).toEqual(good.book.tables);
  });

  test("ragged rows are named", () => {
    const short = readChanged(path, (cells) => {
      cells[1]?.pop();
    });
    expect(faultsOf(short, path)).toContainEqual(expect.objectContaining({ code: "row-ragged", row: 2 }));
    const long = readChanged(path, (cells) => {
      cells[1]?.push("more");
    });
    expect(faultsOf(long, path)).toContainEqual(
      expect.objectContaining({ code: "row-ragged", row: 2, value: "more" }),
    );
  });

  test("a cell beyond the limit is refused", () => {
    const read = readChanged(path, (cells) => {
      cells[1]?.splice(0, 1, "x".repeat(LIMITS.cellChars + 1));
    });
    expect(faultsOf(read, path)).toContainEqual(expect.objectContaining({ code: "cell-too-long", row: 2 }));
  });

  test("byte-order mark, CRLF, CR, semicolons and tabs read the same", () => {
    const text = sampleFiles().get(path) ?? "";
    const cells = toCells(text);
    const variants = [
      `\ufeff${text}`,
      text.replaceAll("\n", "\r\n"),
      text.replaceAll("\n", "\r"),
      `\ufeff${toText(cells, ";").replaceAll("\n", "\r\n")}`,
      toText(cells, "\t"),
      `${text}\n\n`,
      text.trimEnd(),
      toText(cells.map((row) => [...row].reverse())),
    ];
    for (const variant of variants) {
      const read = readChangedText(path, () => variant);
      expect(read.faults).toEqual([]);
      expect(read.book.tables).toEqual(good.book.tables);
      expect(read.shop).toEqual(good.shop);
    }
  });

  const texts = names(ofKind("text", "label")).filter((name) => !table.key.includes(name));
  if (texts.length > 0)
    test("control characters are named", () => {
      for (const { column, fault } of changeEach(path, texts, () => "a\u0007b")) {
        expect(fault, column).toMatchObject({
          code: "cell-control-character",
          value: "a\\u0007b",
          nearest: "ab",
        });
      }
    });
});
