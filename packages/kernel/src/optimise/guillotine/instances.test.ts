import { describe, expect, it } from "vitest";
import { cutFaults } from "./check.ts";
import { fewestSheets } from "./fewest.ts";
import { mostValue } from "./most-value.ts";
import { readInstance, sheetProblem, valueProblem } from "./testing/instance.ts";
import { readPublished } from "./testing/instances.ts";

const published = readPublished(new URL("testing/instances/optima.csv", import.meta.url));
const ofSheets = (name: string): boolean => /^(class|n1)/.test(name);
const freeValue = (instance: string, turning: boolean): number | undefined =>
  published.find((row) => row.instance === instance && row.turning === turning && row.cuts === "free")?.value;

describe("published numbers of sheets", () => {
  const rows = published.filter(({ instance, cuts }) => ofSheets(instance) && cuts !== "free");

  it.each(rows)("$instance $cuts, turning $turning: $value", ({ instance, file, cuts, turning, value }) => {
    const problem = sheetProblem(readInstance(file), cuts === "3-stage" ? 3 : null, turning);
    const found = fewestSheets(problem, { steps: 400_000, settingSteps: 0 });
    if (!found.found) throw new Error("no plan");
    expect(cutFaults(found.plans, problem)).toEqual([]);
    // What is known to be better than published, see the README.
    const better = instance === "class03_n020_05" && !turning ? 1 : 0;
    const atMost = value - better + (problem.pieces.length > 20 ? 1 : 0);
    expect(found.cost).toBeGreaterThanOrEqual(value - better);
    expect(found.cost).toBeLessThanOrEqual(atMost);
    expect(found.lowerBound).toBeLessThanOrEqual(freeValue(instance, turning) ?? value);
  });
});

describe("published values of one sheet", () => {
  const rows = published.filter(({ instance, cuts }) => !ofSheets(instance) && cuts !== "free");

  it.each(rows)("$instance, turning $turning: $value", ({ instance, file, turning, value: stated }) => {
    const read = readInstance(file);
    const { value, upperBound, part } = mostValue(valueProblem(read, turning), {
      placeSteps: 200_000,
      tableSteps: 20_000_000,
      joinSteps: 20_000_000,
    });
    const best = instance === "A1s" && turning ? 2985 : stated;
    expect({ value, upperBound }).toEqual({ value: best, upperBound: best });
    expect(value).toBeLessThanOrEqual(freeValue(instance, turning) ?? value);
    const problem = sheetProblem(read, null, turning);
    const faults = cutFaults([{ sheet: 0, part }], problem).filter(
      (fault) =>
        !(fault.kind === "count" && (fault.cut <= fault.wanted || read.pieces[fault.piece]?.copies === null)),
    );
    expect(faults).toEqual([]);
  });
});
