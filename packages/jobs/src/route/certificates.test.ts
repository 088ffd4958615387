import { readFileSync } from "node:fs";
import { measureRoute, routeLowerBound, searchRoute, usualSteps } from "@pinwright/engine";
import { describe, expect, test } from "vitest";
import { INSTANCE_KINDS, routeInstance } from "./instances.ts";

/** What `prove/route.ts` proved, by heading. */
const proofs = (): readonly Readonly<Record<string, string>>[] => {
  const file = new URL("../../../../prove/results/route.csv", import.meta.url);
  const [head = "", ...lines] = readFileSync(file, "utf8").trim().split("\n");
  const names = head.split(",");
  return lines.map((line) => Object.fromEntries(line.split(",").map((cell, i) => [names[i] ?? "", cell])));
};

describe("the committed proofs of routes", () => {
  test("still hold for the search as it is now: within 1 % of proven optima on average, none above 5 %", () => {
    const over: number[] = [];
    for (const proof of proofs()) {
      const [name, variant] = (proof.instance ?? "").split("-");
      const kind = INSTANCE_KINDS.find((k) => k === name);
      if (kind === undefined) throw new Error(`there is no kind of instance ${name}`);
      const size = {
        spots: Number(proof.spots),
        landings: Number(proof.landings),
        wires: Number(proof.wires),
      };
      const problem = routeInstance(kind, size, Number(variant));
      const found = searchRoute(problem, { steps: usualSteps(problem), seed: 1 });
      if (found === null) throw new Error(`${proof.instance}: no tree`);
      const { totalMin, penaltyMin } = measureRoute(problem, found);
      expect(penaltyMin > 0, proof.instance).toBe(proof.status === "infeasible");
      if (penaltyMin > 0) continue;
      expect(totalMin, proof.instance).toBeGreaterThan(Number(proof.milp_bound_min) - 1e-3);
      if (proof.status !== "optimal") continue;
      over.push(totalMin / Number(proof.milp_min) - 1);
      expect(routeLowerBound(problem), proof.instance).toBeLessThan(Number(proof.milp_min) + 1e-3);
    }
    expect(over.length).toBeGreaterThanOrEqual(40);
    expect(over.reduce((sum, x) => sum + x, 0) / over.length).toBeLessThan(0.01);
    expect(Math.max(...over)).toBeLessThan(0.05);
  });
});
