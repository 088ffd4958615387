import {
  type AssignProblem,
  assignBoundMm,
  assignedMm,
  isPossible,
  searchAssignment,
} from "@pinwright/engine";
import { describe, expect, test } from "vitest";
import { MATRIX_KINDS, matrixInstance } from "./instances.ts";
import { assignMilp } from "./milp.ts";

const EFFORT = { steps: 60_000, seed: 1 };

/** Mm of the cheapest assignment by trying every one: each site in every free crossing, each chain in every order. */
function bruteMm(problem: AssignProblem): number {
  const n = problem.sites.length;
  const columnOf: number[] = [];
  const rowOf: number[] = [];
  const chainMm = (
    lines: AssignProblem["columns"],
    mm: AssignProblem["columnMm"],
    line: number,
    left: number[],
    at: number,
  ): number => {
    if (left.length === 0) return 0;
    return Math.min(
      ...left.map(
        (site) =>
          (at < 0 ? (lines[line]?.feedMm[site] ?? 0) : (mm[at]?.[site] ?? 0)) +
          chainMm(
            lines,
            mm,
            line,
            left.filter((other) => other !== site),
            site,
          ),
      ),
    );
  };
  const total = (): number =>
    (
      [
        [problem.columns, problem.columnMm, columnOf],
        [problem.rows, problem.rowMm, rowOf],
      ] as const
    ).reduce(
      (sum, [lines, mm, lineOf]) =>
        lines.reduce(
          (all, _, line) =>
            all +
            chainMm(
              lines,
              mm,
              line,
              [...lineOf.keys()].filter((i) => lineOf[i] === line),
              -1,
            ),
          sum,
        ),
      0,
    );
  let best = Number.POSITIVE_INFINITY;
  const used = new Set<string>();
  const place = (i: number): void => {
    if (i === n) {
      best = Math.min(best, total());
      return;
    }
    for (const column of problem.columns.keys())
      for (const row of problem.rows.keys()) {
        const key = `${column} ${row}`;
        const site = problem.sites[i];
        if (used.has(key) || (site?.column ?? column) !== column || (site?.row ?? row) !== row) continue;
        used.add(key);
        columnOf[i] = column;
        rowOf[i] = row;
        place(i + 1);
        used.delete(key);
      }
  };
  place(0);
  return best;
}

describe("assignMilp", () => {
  test.each([0, 1, 2])("agrees with every assignment tried, variant %i", async (variant) => {
    const problem = matrixInstance("scatter", { columns: 2, rows: 3, sites: 5 }, variant);
    const start = searchAssignment(problem, null, { steps: 0, seed: 1 });
    if (start === null) throw new Error("no assignment");
    const proof = await assignMilp(problem, start);
    expect(proof.status).toBe("optimal");
    expect(proof.valueMm).toBeCloseTo(bruteMm(problem), 3);
    expect(isPossible(problem, proof.assigned)).toBe(true);
  });

  test.each(MATRIX_KINDS.map((kind, i) => [kind, i] as const))(
    "%s-%i: the search comes within 1 % of the proven optimum, and no bound is above it",
    async (kind, variant) => {
      const problem = matrixInstance(kind, { columns: 3, rows: 3, sites: 7 }, variant);
      const found = searchAssignment(problem, null, EFFORT);
      if (found === null) throw new Error("no assignment");
      const mm = assignedMm(problem, found);
      const proof = await assignMilp(problem, found);
      expect(proof.status).toBe("optimal");
      expect(proof.boundMm).toBeCloseTo(proof.valueMm, 2);
      expect(mm).toBeGreaterThanOrEqual(proof.valueMm - 1e-3);
      expect(mm).toBeLessThanOrEqual(proof.valueMm * 1.01);
      expect(assignBoundMm(problem, mm)).toBeLessThanOrEqual(proof.valueMm + 1e-3);
    },
  );
});
