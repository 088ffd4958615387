import { describe, expect, test } from "vitest";
import { holderSize } from "./holder-size.ts";
import { tieSpacingMm } from "./ties.ts";

describe("tie spacing", () => {
  test("follows the table by diameter (NASA-STD-8739.4 chapter 9, from memory), but never closer than the shop ties", () => {
    expect([3, 6.4, 10, 20, 30].map((mm) => tieSpacingMm(mm, 10))).toEqual([19, 19, 38, 51, 76]);
    expect([3, 10, 20, 30].map((mm) => tieSpacingMm(mm, 75))).toEqual([75, 75, 75, 76]);
  });
});

describe("holders", () => {
  test("bare terminals stand side by side, and nothing is too small to grip", () => {
    expect(holderSize({ connector: null, pointIds: ["a:1", "a:2", "a:3"] }, undefined)).toEqual({
      widthMm: 27,
      depthMm: 14,
    });
    expect(holderSize({ connector: null, pointIds: ["a:1"] }, undefined)).toEqual({
      widthMm: 14,
      depthMm: 14,
    });
  });
});
