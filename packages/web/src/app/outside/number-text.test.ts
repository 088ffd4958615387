import { expect, test } from "vitest";
import { toleranceText, typedNumber, verdictOf } from "./number-text.ts";

test.each([
  ["12.8", 12.8],
  [" 12,8 ", 12.8],
  ["−0.1", -0.1],
  [".5", 0.5],
  ["5.", 5],
  ["", null],
  ["good", null],
  ["1e3", null],
  ["1.2.3", null],
])("%j is read as %j", (text, value) => {
  expect(typedNumber(text)).toBe(value);
});

test("tolerances are told as on a drawing", () => {
  expect(toleranceText(12.7, 0.1, 0.1)).toBe("±0.1");
  expect(toleranceText(8, 0.015, 0)).toBe("0 −0.015");
  expect(toleranceText(4.2, 0, 0.1)).toBe("+0.1 0");
  expect(toleranceText(null, 0, 0)).toBe("–");
});

test("limits belong to what is good", () => {
  const limits = { min: 12.6, max: 12.8 };
  expect([12.6, 12.8, 12.81, 12.59, null].map((reading) => verdictOf(reading, limits))).toEqual([
    "pass",
    "pass",
    "fail",
    "fail",
    "open",
  ]);
});
