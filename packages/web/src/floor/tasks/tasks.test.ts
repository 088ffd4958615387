import type { Fact, FactBody } from "@pinwright/contract";
import { foldUnits } from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { doneTasks, missingTasks, openDefects, type Test, tasksOf, type Work } from "./tasks.ts";

const test = (id: string, min: number | null = null, max: number | null = null): Test => ({
  ...{ id, label: id, labelZh: "", kind: min === null ? "yes-no" : "measure", purpose: "supply" },
  ...{ from: "", to: "", unit: "V", nominal: null, min, max, do: "", doZh: "", caution: "", cautionZh: "" },
});

const work = (given: Partial<Work>): Work => {
  const tests = given.tests ?? [];
  const stepIds = given.stepIds ?? [];
  return {
    ...{ places: [], benchSteps: [], testStepIds: [], cut: [], lay: [] },
    ...given,
    stepIds,
    tests,
    needed: { steps: stepIds, tests, places: [] },
  };
};

let minute = 0;
const fact = (body: FactBody): Fact => {
  minute += 1;
  const at = new Date(Date.UTC(2027, 0, 4, 8, minute)).toISOString();
  const text = { stream: "t", seq: minute, before: "0".repeat(64), at, person: "bo", body };
  return { ...text, hash: "0".repeat(64) };
};
const stepDone = (unit: string, step: string): FactBody => ({ kind: "step-done", unit, step });

describe("tasks", () => {
  it("of a batch of boards are stage by stage for all, then unit by unit", () => {
    const tasks = tasksOf(
      { what: "board", type: "bt" },
      work({ benchSteps: ["kit", "stage-1", "stage-2"], tests: [test("look"), test("volts", 4, 6)] }),
      ["b-1", "b-2"],
      null,
    );
    expect(tasks.map(({ key }) => key)).toEqual([
      ...["own kit", "stage-1", "stage-2"],
      ...["test b-1 look", "test b-1 volts", "test b-2 look", "test b-2 volts"],
    ]);
  });

  it("of a harness have the tug before the tester", () => {
    const keys = tasksOf(
      { what: "harness", type: "hs" },
      work({ benchSteps: ["cut", "lay-up", "tug"] }),
      ["h-1"],
      null,
    ).map(({ key }) => key);
    expect(keys).toEqual(["own cut", "own lay-up", "tug h-1", "continuity h-1"]);
  });

  it("of a machine at a station are its steps there, each with what it fits", () => {
    const place = { id: "bd", label: "", labelZh: "", what: "board", type: "bt" } as const;
    const machine = work({
      stepIds: ["one", "two"],
      places: [{ ...place, stepId: "two" }],
      tests: [test("end")],
    });
    const keys = (here: ReadonlySet<string> | null): readonly string[] =>
      tasksOf({ what: "machine", type: "m" }, machine, ["m-1"], here).map(({ key }) => key);
    expect(keys(new Set(["two"]))).toEqual(["step two", "fit two", "test m-1 end"]);
    expect(keys(null)).toEqual(["step one", "step two", "fit two", "test m-1 end"]);
  });

  it("of a machine has its tests in the steps that test it: what protects first, and all before the crate", () => {
    const tests = [
      { ...test("bond"), purpose: "bond" as const },
      test("mains"),
      { ...test("polarity"), purpose: "polarity" as const },
      test("ball"),
    ];
    const machine = work({ stepIds: ["build", "safe", "end", "pack"], testStepIds: ["safe", "end"], tests });
    const keys = (here: ReadonlySet<string> | null): readonly string[] =>
      tasksOf({ what: "machine", type: "m" }, machine, ["m-1"], here).map(({ key }) => key);
    expect(keys(null)).toEqual([
      ...["step build", "test m-1 bond", "test m-1 mains", "test m-1 polarity", "step safe"],
      ...["test m-1 ball", "step end", "step pack"],
    ]);
    expect(keys(new Set(["build"]))).toEqual(["step build"]);
  });

  it("are done when all units have them, and tests only when they are good and not older than what was mended", () => {
    const board = work({ benchSteps: ["kit", "stage-1"], tests: [test("volts", 4, 6)] });
    const units = ["b-1", "b-2"];
    const tasks = tasksOf({ what: "board", type: "bt" }, board, units, null);
    const reading = (value: number): FactBody => ({
      kind: "reading",
      unit: "b-1",
      test: "volts",
      value,
      good: true,
    });
    const facts: Fact[] = [fact(stepDone("b-1", "kit"))];
    const done = (): readonly string[] => [...doneTasks(tasks, board, units, foldUnits(facts))];
    expect(done()).toEqual([]);
    facts.push(fact(stepDone("b-2", "kit")), fact(reading(9)));
    expect(done()).toEqual(["own kit"]);
    facts.push(fact(reading(5)));
    expect(done()).toEqual(["own kit", "test b-1 volts"]);
    facts.push(fact({ kind: "defect", unit: "b-1", defect: "d", what: "dry-joint", says: "", where: {} }));
    expect(openDefects(foldUnits(facts).get("b-1"))).toHaveLength(1);
    facts.push(fact({ kind: "mended", unit: "b-1", defect: "d", cause: "work", says: "" }));
    expect(openDefects(foldUnits(facts).get("b-1"))).toEqual([]);
    expect(done()).toEqual(["own kit"]);
  });

  it("are missing by name, and work at the bench only once some of it was recorded", () => {
    const board = work({ benchSteps: ["kit", "stage-1"], tests: [test("look")] });
    const kind = { what: "board", type: "bt" } as const;
    const tasks = tasksOf(kind, board, ["b-1"], null);
    const missing = (facts: readonly Fact[]) => {
      const states = foldUnits(facts);
      const done = doneTasks(tasks, board, ["b-1"], states);
      const found = missingTasks(tasks, done, ["b-1"], states);
      return { keys: found.missing.map(({ key }) => key), isBegun: found.isBegun };
    };
    expect(missing([])).toEqual({ keys: ["test b-1 look"], isBegun: false });
    expect(missing([fact(stepDone("b-1", "kit"))])).toEqual({
      keys: ["stage-1", "test b-1 look"],
      isBegun: true,
    });
  });

  it("of a harness are tugged again after contacts were pulled", () => {
    const harness = work({ benchSteps: ["cut", "lay-up", "tug"] });
    const tasks = tasksOf({ what: "harness", type: "hs" }, harness, ["h-1"], null);
    const defect = (what: string): readonly Fact[] => [
      fact({ kind: "defect", unit: "h-1", defect: what, what, says: "", where: {} }),
      fact({ kind: "mended", unit: "h-1", defect: what, cause: "work", says: "" }),
    ];
    const isTugged = (...facts: readonly Fact[]): boolean =>
      doneTasks(tasks, harness, ["h-1"], foldUnits(facts)).has("tug h-1");
    const tug = fact(stepDone("h-1", "tug"));
    const swapped = defect("swapped");
    expect(isTugged(tug)).toBe(true);
    expect(isTugged(tug, ...defect("label-missing"))).toBe(true);
    expect(isTugged(tug, ...swapped)).toBe(false);
    expect(isTugged(tug, ...swapped, fact(stepDone("h-1", "tug")))).toBe(true);
  });
});
