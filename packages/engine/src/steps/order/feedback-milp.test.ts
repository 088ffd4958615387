import { seededRandom } from "@pinwright/kernel";
import loadHighs from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Arc } from "./digraph.ts";
import { leastFeedback } from "./feedback.ts";

let highs: Awaited<ReturnType<typeof loadHighs>>;
beforeAll(async () => {
  highs = await loadHighs();
});

/**
 * The least-weight feedback arc set as a mixed-integer program: y = 1 gives an arc up; every other arc leads at least
 * 1 upward between places x in 0 … n − 1 (Miller, Tucker and Zemlin 1960).
 */
function leastBySolver(nodes: number, arcs: readonly Arc[]): number {
  const rows = arcs.map(({ from, to }, i) => ` c${i}: x${to} - x${from} + ${nodes} y${i} >= 1`);
  const bounds = Array.from({ length: nodes }, (_, i) => ` 0 <= x${i} <= ${nodes - 1}`);
  const text = [
    "Minimize",
    ` obj: ${arcs.map(({ weight }, i) => `${weight} y${i}`).join(" + ")}`,
    "Subject To",
    ...rows,
    "Bounds",
    ...bounds,
    "Binary",
    ` ${arcs.map((_, i) => `y${i}`).join(" ")}`,
    "End",
  ].join("\n");
  const { Status, ObjectiveValue } = highs.solve(text);
  expect(Status).toBe("Optimal");
  return Math.round(ObjectiveValue);
}

/** Some nodes with arcs of the weights of reasons between them, most of them forward. */
function randomGraph(nodes: number, count: number, seed: number): readonly Arc[] {
  const random = seededRandom(seed);
  const pick = (n: number): number => Math.floor(random() * n);
  return Array.from({ length: count }, (): Arc => {
    const a = pick(nodes);
    const b = (a + 1 + pick(nodes - 1)) % nodes;
    const [from, to] = random() < 0.75 ? [Math.min(a, b), Math.max(a, b)] : [a, b];
    return { from, to, weight: [1, 2, 4, 16, 32, 64][pick(6)] ?? 1 };
  });
}

describe("leastFeedback", () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])("agrees with the solver on graph %i of twelve nodes", (seed) => {
    const arcs = randomGraph(12, 34, seed);
    const { weight, lowerBound } = leastFeedback(12, arcs);
    expect(weight).toBe(leastBySolver(12, arcs));
    expect(lowerBound).toBe(weight);
  });
});
