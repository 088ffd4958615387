import fc from "fast-check";
import { expect, test } from "vitest";
import { leavesOf } from "./leaves.ts";
import { type TreeRow, treeTable } from "./tree-table.ts";

const OPTIONS = { continued: "continued", keepMm: 0 };
const COLUMNS = [{ header: "" }];

/** A random tree as rows: each either begins a way off a row before it or goes on from the last of its depth. */
const trees = fc
  .array(fc.tuple(fc.boolean(), fc.nat(6)), { minLength: 1, maxLength: 40 })
  .map(([_, ...steps]) => {
    const rows: TreeRow[] = [{ depth: 0, begins: true, content: ["0"] }];
    for (const [begins, up] of steps) {
      const depth = Math.max(0, (rows.at(-1)?.depth ?? 0) - up);
      rows.push({ depth: begins ? depth + 1 : depth, begins, content: [String(rows.length)] });
    }
    return rows;
  });

test("the lines of a row meet those of the row below it: what leaves one below enters the other above", () => {
  fc.assert(
    fc.property(trees, (rows) => {
      const blocks = treeTable(COLUMNS, rows, 180, OPTIONS);
      expect(blocks).toHaveLength(rows.length);
      const upright = blocks.map(({ marks, heightMm }) => {
        const lines = leavesOf(marks).flatMap(({ leaf }) =>
          leaf.kind === "line" && leaf.from.xMm === leaf.to.xMm ? [leaf] : [],
        );
        return {
          above: lines.filter((l) => l.from.yMm === 0).map((l) => l.from.xMm),
          below: lines.filter((l) => l.to.yMm === heightMm).map((l) => l.from.xMm),
        };
      });
      upright.forEach(({ below }, i) => {
        expect(new Set(below)).toEqual(new Set(upright[i + 1]?.above));
      });
      expect(upright[0]?.above).toEqual([]);
    }),
    { seed: 20261130, numRuns: 200 },
  );
});

test("a deeper row stands further in, a chain straight below itself", () => {
  const rows: TreeRow[] = [
    { depth: 0, begins: true, content: ["a"] },
    { depth: 1, begins: true, content: ["b"] },
    { depth: 0, begins: false, content: ["c"] },
  ];
  const xs = treeTable(COLUMNS, rows, 180, OPTIONS).map((block) =>
    leavesOf(block.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leaf.at.xMm] : [])),
  );
  expect(xs[1]?.[0]).toBeGreaterThan(xs[0]?.[0] ?? 0);
  expect(xs[2]).toEqual(xs[0]);
});
