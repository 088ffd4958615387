import { describe, expect, it } from "vitest";
import { type Alignable, aligned, distributed } from "./align.ts";

const item = (id: string, xMm: number, yMm: number, half: number): Alignable => ({
  id,
  xMm,
  yMm,
  box: { minXMm: xMm - half, maxXMm: xMm + half, minYMm: yMm - half, maxYMm: yMm + half },
});
const three = [item("a", 0, 0, 5), item("b", 30, 12, 10), item("c", 100, 40, 2)];

describe("aligned", () => {
  it("moves left edges to the leftmost, as seen on the screen", () => {
    expect(aligned(three, "left", false)).toEqual(
      new Map([
        ["b", { dxMm: -25, dyMm: 0 }],
        ["c", { dxMm: -103, dyMm: 0 }],
      ]),
    );
    expect(aligned(three, "left", true)).toEqual(aligned(three, "right", false));
  });

  it("moves origins to the middle", () => {
    expect(aligned(three, "middle", false).get("b")).toEqual({ dxMm: 0, dyMm: 8 });
    expect(aligned(three, "centre", true).get("a")).toEqual({ dxMm: 50, dyMm: 0 });
  });
});

describe("distributed", () => {
  it("leaves the outermost and spaces the rest", () => {
    expect(distributed(three, "across")).toEqual(new Map([["b", { dxMm: 20, dyMm: 0 }]]));
    expect(distributed(three.slice(0, 2), "across").size).toBe(0);
  });
});
