import { describe, expect, it } from "vitest";
import { foldedAtFirst, ladderRows } from "./ladder-rows.ts";

const load = (id: string) => ({ id });
/** A trunk with one load, and a branch with two. */
const points = [
  { parent: null, below: 3, loads: [] },
  { parent: 0, below: 1, loads: [load("a")] },
  { parent: 0, below: 2, loads: [] },
  { parent: 2, below: 2, loads: [load("b"), load("c")] },
];

describe("rows of a ladder", () => {
  it("keep what leads to most in its column, and hang loads on their points", () => {
    expect(ladderRows(points, new Set())).toEqual([
      { point: 0, load: null, parent: null, column: 0, folded: 0 },
      { point: 1, load: null, parent: 0, column: 1, folded: 0 },
      { point: 1, load: 0, parent: 1, column: 2, folded: 0 },
      { point: 2, load: null, parent: 0, column: 0, folded: 0 },
      { point: 3, load: null, parent: 3, column: 0, folded: 0 },
      { point: 3, load: 0, parent: 4, column: 1, folded: 0 },
      { point: 3, load: 1, parent: 4, column: 1, folded: 0 },
    ]);
  });

  it("leave out what is folded, and say how many loads that are", () => {
    const rows = ladderRows(points, new Set([2]));
    expect(rows.map((row) => row.point)).toEqual([0, 1, 1, 2]);
    expect(rows.at(-1)).toMatchObject({ point: 2, folded: 2 });
  });

  it("fold a long ladder at first, into pieces that can be taken in", () => {
    expect(foldedAtFirst(points)).toEqual(new Set());
    const long = [
      { parent: null, below: 40, loads: [] },
      { parent: 0, below: 12, loads: [] },
      { parent: 0, below: 28, loads: [] },
      { parent: 2, below: 1, loads: [load("x")] },
      { parent: 2, below: 16, loads: [] },
      { parent: 4, below: 2, loads: [] },
    ];
    expect(foldedAtFirst(long)).toEqual(new Set([1, 4]));
  });
});
