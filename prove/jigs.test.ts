import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

interface Held {
  readonly files: number;
  readonly faults: number;
  readonly holes: number;
  readonly fasteners: number;
  readonly worstPlaceMm: number;
  readonly worstDiameterMm: number;
}

const results: Readonly<Record<"drillDrawings" | "pilotTemplates" | "screwTrays", Held>> & {
  readonly fastenersOfTheMachine: number;
} = JSON.parse(readFileSync(new URL("results/jigs.json", import.meta.url), "utf8"));

test.each(["drillDrawings", "pilotTemplates", "screwTrays"] as const)(
  "%s of Tidewatch, read back by ezdxf, have every fastener's hole within 0.05 mm of its place",
  (kind) => {
    const held = results[kind];
    expect(held.faults).toBe(0);
    expect(held.files).toBeGreaterThan(0);
    expect(held.worstPlaceMm).toBeLessThan(0.05);
    expect(held.worstDiameterMm).toBeLessThan(0.001);
    // One hole serves several fasteners where they share it.
    expect(held.holes).toBeLessThanOrEqual(held.fasteners);
  },
);

test("every fastener of the machine stands in a tray and has its hole in a template", () => {
  expect(results.fastenersOfTheMachine).toBeGreaterThan(500);
  expect(results.screwTrays.fasteners).toBe(results.fastenersOfTheMachine);
  expect(results.pilotTemplates.fasteners).toBe(results.drillDrawings.fasteners);
});
