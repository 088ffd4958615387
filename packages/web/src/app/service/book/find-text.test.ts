import { expect, test } from "vitest";
import { findText } from "./find-text.ts";

const line = (text: string, yMm: number) => ({ text, xMm: 10, yMm, widthMm: 50, heightMm: 3 });
const TEXTS = [
  [line("Switch 31: left lane", 20), line("J3-5, wire 7-12", 30)],
  [line("The left", 20), line("lane switch is adjusted", 24)],
  [line("保险丝 F2，2 A", 20)],
];

test("finds lines whatever their case, and pages on which the words stand apart", () => {
  expect(findText(TEXTS, "LEFT lane").map(({ page, spot }) => [page, spot?.yMm ?? null])).toEqual([
    [1, 20],
    [2, null],
  ]);
  expect(findText(TEXTS, "j3-5").map(({ text }) => text)).toEqual(["J3-5, wire 7-12"]);
  expect(findText(TEXTS, "保险丝")).toHaveLength(1);
});

test("finds nothing for nothing, or for what is not there", () => {
  expect(findText(TEXTS, "  ")).toEqual([]);
  expect(findText(TEXTS, "flipper")).toEqual([]);
});
