import { describe, expect, it } from "vitest";
import { lengthTolerancePlusMm } from "./tolerance.ts";

describe("lengthTolerancePlusMm", () => {
  // IPC/WHMA-A-620B, final draft of 2012, table 11-1, as checked values W5.2 to W5.4 of the reference sheet.
  it.each([
    [250, 25],
    [300, 25],
    [1200, 50],
    [1500, 50],
    [3000, 100],
    [7500, 150],
    [8000, 400],
  ])("allows %d mm to be longer by %d mm", (lengthMm, plusMm) => {
    expect(lengthTolerancePlusMm(lengthMm)).toBe(plusMm);
  });
});
