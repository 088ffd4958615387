import { describe, expect, test } from "vitest";
import { readNumber } from "./number.ts";
import { CellProblem } from "./problem.ts";

const mm = { kind: "number", min: -5000, max: 5000 } as const;
const count = { kind: "integer", min: 1, max: 200 } as const;

test.each([
  ["0", 0],
  ["-0", 0],
  ["-12.50", -12.5],
  ["007", 7],
  ["5000", 5000],
])("%s is a number", (cell, value) => {
  expect(readNumber(cell, "x_mm", mm)).toBe(value);
});

describe("what was meant instead", () => {
  test.each([
    // Units: 1 in = 25.4 mm exactly, by the international yard and pound agreement of 1959.
    ["12 in", "x_mm", "number-unit", "304.8"],
    ['1/2"', "x_mm", "number-unit", "12.7"],
    ["1 1/2 in", "x_mm", "number-unit", "38.1"],
    ["100 mil", "x_mm", "number-unit", "2.54"],
    ["3 cm", "x_mm", "number-unit", "30"],
    ["2 m", "x_mm", "number-unit", "2000"],
    ["12mm", "x_mm", "number-unit", "12"],
    ["3,5 mm", "x_mm", "number-unit", "3.5"],
    ["20 m", "x_mm", "number-unit", null],
    ["3 kg", "x_mm", "number-unit", null],
    ["40 s", "pulse_ms", "number-unit", null],
    ["0.04 s", "pulse_ms", "number-unit", "40"],
    ["500 mA", "rated_a", "number-unit", "0.5"],
    ["90°", "rotation_deg", "number-unit", "90"],
    ["5 V", "volts", "number-unit", "5"],
    ["30 s", "minutes", "number-unit", "0.5"],
    // Separators.
    ["3,5", "x_mm", "number-form", "3.5"],
    ["-3,25", "x_mm", "number-form", "-3.25"],
    ["1,234", "x_mm", "number-form", "1234"],
    ["1,234.5", "x_mm", "number-form", "1234.5"],
    ["1.234,5", "x_mm", "number-form", "1234.5"],
    ["1 234", "x_mm", "number-form", "1234"],
    ["1'234", "x_mm", "number-form", "1234"],
    // Spellings of a number that are not plain.
    ["+5", "x_mm", "number-form", "5"],
    [".5", "x_mm", "number-form", "0.5"],
    ["5.", "x_mm", "number-form", "5"],
    ["1e3", "x_mm", "number-form", "1000"],
    ["−5", "x_mm", "number-form", "-5"],
    ["１２", "x_mm", "number-form", "12"],
    // No numbers.
    ["1e999", "x_mm", "number-form", "5000"],
    ["NaN", "x_mm", "number-form", null],
    ["Infinity", "x_mm", "number-form", null],
    ["#DIV/0!", "x_mm", "number-form", null],
    ["twelve", "x_mm", "number-form", null],
    ["--5", "x_mm", "number-form", null],
    ["0x10", "x_mm", "number-form", null],
    // Out of range.
    ["5000.01", "x_mm", "number-range", "5000"],
    [`-${"9".repeat(400)}`, "x_mm", "number-range", "-5000"],
  ])("%s in %s is %s, offers %s", (cell, name, code, nearest) => {
    const problem = readNumber(cell, name, mm);
    expect(problem).toBeInstanceOf(CellProblem);
    expect(problem).toMatchObject({ code, nearest });
  });

  test.each([
    ["1.5", "number-form", "2"],
    ["0", "number-range", "1"],
    ["201", "number-range", "200"],
    ["9007199254740993", "number-form", null],
  ])("whole number %s is %s, offers %s", (cell, code, nearest) => {
    expect(readNumber(cell, "pin", count)).toMatchObject({ code, nearest });
  });

  test("what is expected names unit and range", () => {
    expect(readNumber("x", "x_mm", mm)).toMatchObject({
      expected: "a plain decimal number with `.` as decimal point in mm, from -5000 to 5000",
    });
    expect(readNumber("x", "n", { kind: "integer", min: 1 })).toMatchObject({
      expected: "a whole number, 1 or more",
    });
  });
});
