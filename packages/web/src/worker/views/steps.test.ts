import { applyChanges } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { stationPlan } from "../asks/station-plan.ts";
import { changesOf, type Edit } from "../edits/index.ts";
import type { Model } from "../model.ts";
import { ExampleModel } from "../testing/example-model.ts";
import { learning } from "./learning.ts";
import { screwAbout } from "./screw-about.ts";
import { screwMarks } from "./screw-marks.ts";
import { screwTypes } from "./screw-types.ts";
import { stepFigures } from "./step-figures.ts";
import { stepLines } from "./step-lines.ts";
import { stepParts } from "./step-parts.ts";

const USUAL = { ask: { kind: "book-stations" }, absent: [], longerPct: 0, skills: false } as const;

const edited = (example: ExampleModel, edit: Edit): Model => {
  const changes = changesOf(example.tables, edit);
  expect(changes.length).toBeGreaterThan(0);
  example.tables = applyChanges(example.tables, changes).tables ?? example.tables;
  return example.now;
};
const choice = (subject: string, kind: "station" | "time", value: string | null): Edit => ({
  kind: "choose",
  choice: kind,
  values: [{ subject, value }],
  by: "Mara",
});

describe("views of screws and steps", () => {
  const example = new ExampleModel();
  const model = example.now;
  const steps = [...stepLines.entries(model, null).values()];

  it("have every fastener in one step, in the order in which it is driven there", () => {
    const fasteners = [...model.line.machine.items.values()].filter(({ kind }) => kind === "fastener");
    const driven = steps.flatMap(({ fastenerIds }) => fastenerIds);
    expect(driven.toSorted()).toEqual(fasteners.map(({ id }) => id).toSorted());
    for (const panelId of model.line.machine.panels.keys())
      for (const mark of screwMarks.entries(model, { panelId }).values()) {
        const step = steps.find(({ id }) => id === mark.stepId);
        expect(step?.number).toBe(mark.stepNumber);
        expect(step?.fastenerIds[mark.turn - 1]).toBe(mark.id);
        expect(screwAbout.entries(model, { id: mark.id }).get("")?.stepId).toBe(step?.id);
      }
  });

  it("count types as often as they are used, each with its sign", () => {
    const types = screwTypes.entries(model, null);
    for (const type of types.values()) expect(type.sign?.d).toMatch(/^M[-\d.]/u);
    const letters = [...types.values()].map(({ sign }) => sign?.letter);
    expect(new Set(letters).size).toBe(types.size);
    const inSteps = steps.flatMap((step) => step.types).reduce((sum, { count }) => sum + count, 0);
    expect([...types.values()].reduce((sum, { count }) => sum + count, 0)).toBeGreaterThanOrEqual(inSteps);
  });

  it("name what comes before with its reasons, and only earlier steps", () => {
    const befores = steps.flatMap((step) => step.after.map((one) => ({ step, one })));
    expect(befores.length).toBeGreaterThan(0);
    for (const { step, one } of befores) {
      expect(one.number).toBeLessThan(step.number);
      expect(one.reasons.length).toBeGreaterThan(0);
    }
    expect(stepFigures.entries(model, null).get("")?.steps).toBe(steps.length);
  });

  it("say nothing of what there is not", () => {
    expect(stepParts.entries(model, { id: "none" }).size).toBe(0);
    expect(screwAbout.entries(model, { id: "none" }).size).toBe(0);
    expect(learning.entries(model, { units: 0 }).size).toBe(0);
    const nobody = { ...USUAL, ask: { kind: "least-takt", places: 1 }, absent: ["place:1"] } as const;
    expect(stationPlan(model, nobody)).toBeNull();
  });

  it("learn by the curve: at double the number the average is the setting's share", () => {
    const { pct, units } = learning.entries(model, { units: 4 }).get("") ?? { pct: 0, units: [] };
    const average = units.map(({ averageMinutes }) => averageMinutes);
    expect((average[1] ?? 0) / (average[0] ?? 1)).toBeCloseTo(pct / 100);
    expect((average[3] ?? 0) / (average[1] ?? 1)).toBeCloseTo(pct / 100);
  });

  it("plan once for the same steps, and anew when a person decides otherwise", () => {
    const plan = stationPlan(model, USUAL);
    expect(stationPlan(model, USUAL)).toBe(plan);
    const free = steps.find(({ stationId }) => stationId === null);
    const id = free?.id ?? "";
    const fixed = edited(example, choice(id, "station", "bench"));
    const line = stepLines.entries(fixed, null).get(id);
    expect([line?.stationId, line?.chosen]).toEqual(["bench", { station: true, time: false }]);
    expect(stationPlan(fixed, USUAL)).not.toBe(plan);

    const timed = stepLines.entries(edited(example, choice(id, "time", "7.5")), null).get(id);
    expect([timed?.seconds, timed?.secondsFrom]).toEqual([450, "designer"]);
    edited(example, choice(id, "time", null));
    const back = stepLines.entries(edited(example, choice(id, "station", null)), null).get(id);
    expect([back?.stationId, back?.seconds, back?.chosen.station]).toEqual([null, free?.seconds, false]);
  });
});
