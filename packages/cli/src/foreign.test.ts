import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { COMMANDS } from "./index.ts";
import { run } from "./run.ts";

/** What programs that nobody here wrote read in our files: Python's csv, openpyxl and zipfile (Debian packages). */
const python = (script: string, ...args: string[]): unknown =>
  JSON.parse(execFileSync("/usr/bin/python3", ["-c", script, ...args], { encoding: "utf8" }));

const READ_CSV = `
import csv, json, sys
print(json.dumps(list(csv.reader(open(sys.argv[1], newline="", encoding="utf-8-sig")))))`;

const READ_XLSX = `
import json, sys, openpyxl
book = openpyxl.load_workbook(sys.argv[1])
print(json.dumps({s.title: [[("" if c.value is None else c.value) for c in row] for row in s.iter_rows()] for s in book.worksheets}, default=str))`;

const READ_FORMULAS = `
import json, sys, openpyxl
book = openpyxl.load_workbook(sys.argv[1])
print(json.dumps([c.coordinate for s in book.worksheets for row in s.iter_rows() for c in row if c.data_type == "f"]))`;

const READ_ZIP = `
import json, sys, zipfile
z = zipfile.ZipFile(sys.argv[1])
print(json.dumps({"bad": z.testzip(), "devices": z.read("devices.csv").decode("utf-8")}))`;

const cell = z.union([z.string(), z.number(), z.boolean()]);
const grid = z.array(z.array(cell));

const example = join(import.meta.dirname, "../../../examples/first-light");
let place: string;
let out: string;

const quiet = { out: () => undefined, err: () => undefined, screen: false };

beforeAll(async () => {
  place = mkdtempSync(join(tmpdir(), "pinwright-foreign-"));
  const book = join(place, "book");
  out = join(place, "out");
  cpSync(example, book, { recursive: true });
  // A label that a spreadsheet would run as a formula, written as the book escapes it.
  const devices = readFileSync(join(book, "devices.csv"), "utf8");
  writeFileSync(join(book, "devices.csv"), devices.replace("Top lane switch", "'=1+1"));
  expect(
    await run(COMMANDS, ["sheets", book, "--out", out, "--language", "both", "--format", "xlsx,csv"], quiet),
  ).toBe(0);
  expect(await run(COMMANDS, ["convert", book, join(place, "book.zip")], quiet)).toBe(0);
  expect(await run(COMMANDS, ["convert", book, join(place, "book.xlsx")], quiet)).toBe(0);
}, 120_000);
afterAll(() => rmSync(place, { recursive: true, force: true }));

describe("lists as others read them", () => {
  it.each(["from-to", "cut-list", "lay-up", "connector-loading", "continuity", "pull-test", "wire-labels"])(
    "%s: CSV and XLSX hold text, no formula, and lengths as numbers",
    (kind) => {
      const file = join(out, `hs.field/hs.field.${kind}.both`);
      const rows = grid.parse(python(READ_CSV, `${file}.csv`));
      expect(rows.length).toBeGreaterThan(1);
      const risky = rows
        .flat()
        .filter((text) => /^[=+@\t\r]/.test(String(text)) || /^-(?![\d.]+$)/.test(String(text)));
      expect(risky).toEqual([]);
      const sheets = z.record(z.string(), grid).parse(python(READ_XLSX, `${file}.xlsx`));
      const numbers = Object.values(sheets)
        .flat(2)
        .filter((value) => typeof value === "number");
      // A wire label is text only: harness, dash, wire.
      if (kind !== "wire-labels") expect(numbers.length).toBeGreaterThan(0);
      expect(python(READ_FORMULAS, `${file}.xlsx`)).toEqual([]);
    },
  );

  it("counts the same wires in the from-to list as the line has", () => {
    const rows = grid.parse(python(READ_CSV, join(out, "hs.field/hs.field.from-to.both.csv")));
    expect(rows.filter((row) => row.some((text) => String(text).includes("il.field"))).length).toBe(10);
  });
});

describe("books as others read them", () => {
  it("a ZIP passes its own test and holds the escaped text", () => {
    const zip = z
      .object({ bad: z.null(), devices: z.string() })
      .parse(python(READ_ZIP, join(place, "book.zip")));
    expect(zip.devices).toContain("'=1+1");
  });

  it("a workbook has a worksheet a table, numbers as numbers, and no formula", () => {
    const file = join(place, "book.xlsx");
    const sheets = z.record(z.string(), grid).parse(python(READ_XLSX, file));
    const devices = sheets.devices ?? [];
    const x = devices[0]?.indexOf("x_mm") ?? -1;
    expect(typeof devices[1]?.[x]).toBe("number");
    expect(python(READ_FORMULAS, file)).toEqual([]);
  });
});
