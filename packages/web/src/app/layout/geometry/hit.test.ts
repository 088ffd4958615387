import { boxOf, type PointMm } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { HitIndex, type Pointable } from "./hit.ts";

const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });
const square = (id: string, x: number, y: number, half: number, depth: number): Pointable => {
  const ring = [
    at(x - half, y - half),
    at(x + half, y - half),
    at(x + half, y + half),
    at(x - half, y + half),
  ];
  return { id, ring, line: null, depth, box: boxOf(ring) ?? { minXMm: 0, minYMm: 0, maxXMm: 0, maxYMm: 0 } };
};
const lane: Pointable = {
  id: "lane",
  ring: null,
  line: [at(0, 0), at(100, 100)],
  box: { minXMm: 0, minYMm: 0, maxXMm: 100, maxYMm: 100 },
  depth: 5,
};
const index = new HitIndex([
  square("big", 50, 50, 40, 2),
  square("small", 50, 50, 5, 2),
  square("top", 90, 50, 3, 1),
  lane,
]);

describe("HitIndex", () => {
  it("gives what lies on top, then the smallest, then what lies under it", () => {
    expect(index.at(at(52, 51), 2).map((one) => one.id)).toEqual(["small", "big", "lane"]);
    expect(index.at(at(88, 50), 2).map((one) => one.id)).toEqual(["top", "big"]);
  });
  it("reaches past an edge by the tolerance", () => {
    expect(index.at(at(8, 50), 1)).toEqual([]);
    expect(index.at(at(8, 50), 3).map((one) => one.id)).toEqual(["big"]);
    expect(index.at(at(3, 0), 3).map((one) => one.id)).toEqual(["lane"]);
  });
  it("takes with a box only what is wholly in it", () => {
    expect(index.within({ minXMm: 40, minYMm: 40, maxXMm: 95, maxYMm: 60 }).map((one) => one.id)).toEqual([
      "small",
      "top",
    ]);
  });
});
