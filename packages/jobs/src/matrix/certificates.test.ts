import { readFileSync } from "node:fs";
import { assignBoundMm, assignedMm, searchAssignment } from "@pinwright/engine";
import { describe, expect, test } from "vitest";
import { MATRIX_KINDS, matrixInstance } from "./instances.ts";

/** What `prove/matrix.ts` proved, by heading. */
const proofs = (): readonly Readonly<Record<string, string>>[] => {
  const file = new URL("../../../../prove/results/matrix.csv", import.meta.url);
  const [head = "", ...lines] = readFileSync(file, "utf8").trim().split("\n");
  const names = head.split(",");
  return lines.map((line) => Object.fromEntries(line.split(",").map((cell, i) => [names[i] ?? "", cell])));
};

/** Steps that are enough for the small ones of the proofs; the proposal takes more. */
const EFFORT = { steps: 150_000, seed: 1 };

describe("the committed proofs of matrix assignments", () => {
  test("still hold for the search as it is now: within 1 % of proven optima, no bound above them", () => {
    const over: number[] = [];
    for (const proof of proofs()) {
      if (proof.status !== "optimal") continue;
      const [name, variant] = (proof.instance ?? "").split("-");
      const kind = MATRIX_KINDS.find((k) => k === name);
      if (kind === undefined) throw new Error(`there is no kind of instance ${name}`);
      const size = {
        columns: Number(proof.columns),
        rows: Number(proof.rows),
        sites: Number(proof.switches),
      };
      const problem = matrixInstance(kind, size, Number(variant));
      const found = searchAssignment(problem, null, EFFORT);
      if (found === null) throw new Error(`${proof.instance}: no assignment`);
      const mm = assignedMm(problem, found);
      const optimumMm = Number(proof.milp_mm);
      expect(mm, proof.instance).toBeGreaterThan(optimumMm - 0.1);
      expect(assignBoundMm(problem, mm), proof.instance).toBeLessThan(optimumMm + 0.1);
      over.push(mm / optimumMm - 1);
      // What the proposal's own effort came to when the proofs were made.
      expect(Number(proof.over_pct), proof.instance).toBeLessThanOrEqual(1);
    }
    expect(over.length).toBeGreaterThanOrEqual(15);
    expect(over.reduce((sum, x) => sum + x, 0) / over.length).toBeLessThan(0.01);
    expect(Math.max(...over)).toBeLessThan(0.05);
  });
});
