import { describe, expect, it } from "vitest";
import { type LabelWanted, placedLabels } from "./labels.ts";

const wanted = (id: string, xMm: number, half: number, rank: number): LabelWanted => ({
  id,
  text: id,
  xMm,
  yMm: 0,
  rank,
  box: { minXMm: xMm - half, maxXMm: xMm + half, minYMm: -half, maxYMm: half },
});

describe("placedLabels", () => {
  const crowd = [
    wanted("first lamp", 0, 10, 1),
    wanted("second lamp", 21, 10, 1),
    wanted("board", 10, 40, 0),
  ];
  it("writes only the weightiest from afar, and everything from near", () => {
    expect(placedLabels(crowd, 0).map((label) => label.id)).toEqual(["board"]);
    expect(placedLabels(crowd, 8).map((label) => label.id)).toEqual(["board", "first lamp", "second lamp"]);
    expect(placedLabels(crowd, -8)).toEqual([]);
  });
  it("counts signs of Chinese as square", () => {
    const zh = [
      { ...wanted("a", 0, 10, 0), text: "左弹弓开关" },
      { ...wanted("b", 16, 10, 0), text: "右" },
    ];
    expect(placedLabels(zh, 2).map((label) => label.id)).toEqual(["a"]);
    expect(placedLabels(zh, 6).length).toBe(2);
  });
});
