import { describe, expect, it } from "vitest";
import { crimpHeightMm } from "./crimp-height.ts";

describe("crimpHeightMm", () => {
  it.each([
    ["0.50 mm²: 1.10; 0.75 mm²: 1.20", 0.5, 1.1],
    ["0.50 mm²: 1.10; 0.75 mm²: 1.20", 0.75, 1.2],
    ["0.50 mm²: 1.10; 0.75 mm²: 1.20", 0.22, null],
    ["0.5 mm²: 1.1 mm", 0.52, 1.1],
    ["1.15", 0.3, 1.15],
    ["by the maker's table", 0.5, null],
    ["", 0.5, null],
  ])("of %j for %d mm² is %j", (text, areaMm2, heightMm) => {
    expect(crimpHeightMm(text, areaMm2)).toBe(heightMm);
  });
});
