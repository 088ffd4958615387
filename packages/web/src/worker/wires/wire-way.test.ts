import { describe, expect, it } from "vitest";
import { ExampleModel } from "../testing/example-model.ts";
import { wireWay } from "./wire-way.ts";
import { findWire, printedNo } from "./wires-at.ts";

const { line } = new ExampleModel().now;

describe("wireWay", () => {
  it("adds up to what the wire is cut to, stretch by stretch", () => {
    let count = 0;
    for (const harness of line.harnesses.values())
      for (const wire of harness.wires) {
        const way = wireWay(line, { wire, harness });
        for (const step of way.steps)
          expect(step.routeMm + step.dressingMm + step.serviceLoopMm + step.roundingMm).toBeCloseTo(
            step.lengthMm,
            2,
          );
        expect(way.steps.reduce((sum, step) => sum + step.lengthMm, 0)).toBeCloseTo(way.finishedMm, 6);
        expect(way.finishedMm + way.stripAMm + way.stripBMm + way.trimMm + way.cutRoundingMm).toBeCloseTo(
          way.cutMm,
          6,
        );
        expect(way.cutRoundingMm).toBeGreaterThanOrEqual(0);
        count++;
      }
    expect(count).toBeGreaterThan(10);
  });
});

describe("findWire", () => {
  it("knows a wire by its id and by the number on its label", () => {
    const [harness] = line.harnesses.values();
    const wire = harness?.wires[0];
    if (harness === undefined || wire === undefined) throw new Error("the example has no wire");
    expect(findWire(line, wire.id)?.wire).toBe(wire);
    expect(findWire(line, printedNo(harness, wire))?.wire).toBe(wire);
    expect(findWire(line, "999-1")).toBeNull();
  });
});
