import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DrillRow, drillTable } from "./drill-table.ts";
import { FitSolver } from "./fit-solver.ts";
import { createFastened, type TestFastening } from "./testing/fastened.ts";

function drilled(given: TestFastening): readonly DrillRow[] {
  const machine = createFastened(given);
  return drillTable(machine, new FitSolver().solve(machine).fits, "pf");
}

const at = (x_mm: number, y_mm = 100) => ({ x_mm, y_mm, flange_mm: 2 });

describe("drillTable", () => {
  it("says of each hole where, how wide, how deep and from which face", () => {
    expect(drilled({ fasteners: [at(50)] })).toEqual([
      {
        fastenerIds: ["fx.1"],
        side: "under",
        xMm: 50,
        yMm: 100,
        kind: "pilot",
        diameterMm: 2.5,
        depthMm: 11,
      },
    ]);
  });

  it("goes by side, then by drill, then the short way from the panel's origin", () => {
    const m4 = { type: "m4", nut: "nut" } as const;
    const fasteners = [
      at(300),
      { ...at(60), ...m4 },
      at(100),
      { ...at(30, 30), side: "top" } as const,
      at(200),
    ];
    expect(drilled({ fasteners }).map(({ fastenerIds: [id] }) => id)).toEqual([
      "fx.4",
      "fx.3",
      "fx.5",
      "fx.1",
      "fx.2",
    ]);
  });

  it("drills a shared hole once: as deep as the deepest, or through", () => {
    const deep = { ...at(50), flange_mm: 1 };
    expect(drilled({ fasteners: [at(50), deep] })).toMatchObject([
      { fastenerIds: ["fx.1", "fx.2"], depthMm: 12 },
    ]);
    const m4 = { ...at(50), type: "m4", nut: "nut" } as const;
    expect(drilled({ fasteners: [m4, { ...m4, side: "top" }] })).toMatchObject([
      { fastenerIds: ["fx.1", "fx.2"], side: "under", depthMm: null, kind: "clearance" },
    ]);
  });

  it("never drills through the margin, and has every fastener with a hole in just one row", () => {
    const fastener = fc.record({
      x_mm: fc.integer({ min: 1, max: 40 }),
      y_mm: fc.integer({ min: 1, max: 40 }),
      flange_mm: fc.integer({ min: 0, max: 14 }),
      side: fc.constantFrom("top" as const, "under" as const),
    });
    const pocket = fc.record({
      x_mm: fc.integer({ min: 1, max: 40 }),
      y_mm: fc.integer({ min: 1, max: 40 }),
      depth_mm: fc.integer({ min: 1, max: 13 }),
      side: fc.constantFrom("top" as const, "under" as const),
    });
    fc.assert(
      fc.property(
        fc.array(fastener, { maxLength: 30 }),
        fc.array(pocket, { maxLength: 4 }),
        (fasteners, cutouts) => {
          const machine = createFastened({ fasteners, cutouts });
          const { fits } = new FitSolver().solve(machine);
          const rows = drillTable(machine, fits, "pf");
          const ids = rows.flatMap(({ fastenerIds }) => fastenerIds);
          const wanted = [...fits.values()]
            .filter(({ hole }) => hole !== null)
            .map(({ fastenerId }) => fastenerId);
          expect(ids.toSorted()).toEqual(wanted.toSorted());
          for (const { hole, recessMm, woodMm } of fits.values())
            if (hole?.kind === "pilot") expect(hole.depthMm ?? 99).toBeLessThanOrEqual(recessMm + woodMm - 1);
        },
      ),
      { numRuns: 60, seed: 11 },
    );
  });
});
