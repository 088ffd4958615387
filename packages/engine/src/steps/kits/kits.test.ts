import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FasteningSolver } from "../../fastening/index.ts";
import { type LineResult, resolveMachine, type StationQuestion } from "../../model/index.ts";
import { createBook, createShop, type SomeTables } from "../../testing/book.ts";
import { planStations, USUAL_QUESTION } from "../stations/plan.ts";
import { StepsSolver } from "../steps-solver.ts";
import { arbitraryTables, TYPES } from "../testing/arbitrary.ts";
import { fastenerBill } from "./count.ts";
import { partsOfStep, stationKits } from "./station-kits.ts";

const STATIONS: NonNullable<SomeTables["stations"]> = [
  { id: "stn.mech", people: 2, skills: ["mechanism"] },
  { id: "stn.line", people: 3, skills: ["test"] },
];

type Lined = Pick<LineResult, "machine" | "fastening" | "steps" | "harnesses">;

function lined(tables: SomeTables): Lined {
  const machine = resolveMachine(createBook({ ...tables, stations: STATIONS }), createShop());
  const { fastening } = new FasteningSolver().solve(machine, new Map());
  const { steps } = new StepsSolver().solve(machine, fastening, new Map());
  return { machine, fastening, steps, harnesses: new Map() };
}

/** Counts of several lists together, by type. */
const added = (lists: readonly (readonly { readonly typeId: string; readonly count: number }[])[]) => {
  const sum = new Map<string, number>();
  for (const { typeId, count } of lists.flat()) sum.set(typeId, (sum.get(typeId) ?? 0) + count);
  return new Map([...sum].sort(([a], [b]) => (a < b ? -1 : 1)));
};

const asks: fc.Arbitrary<StationQuestion["ask"]> = fc.constantFrom(
  { kind: "book-stations" },
  { kind: "least-takt", places: 3 },
  { kind: "fewest-places", taktS: 4000 },
);

describe("kits", () => {
  test("add up to the bill, washers and nuts too, however the steps are shared out (seed 101)", () => {
    fc.assert(
      fc.property(arbitraryTables, asks, (tables, ask) => {
        const line = lined(tables);
        const plan = planStations(line, { ...USUAL_QUESTION, ask });
        expect(plan.unplaced).toEqual([]);
        const kits = stationKits(line, plan);
        expect(added(kits.map(({ fasteners }) => fasteners))).toEqual(added([fastenerBill(line)]));
        const items = [...line.machine.items.values()];
        const count = (kind: string): number =>
          kits
            .flatMap(({ parts }) => parts.filter((part) => part.kind === kind))
            .reduce((n, p) => n + p.count, 0);
        expect(count("mechanism")).toBe(items.filter(({ kind }) => kind === "mechanism").length);
        expect(count("board")).toBe(items.filter(({ kind }) => kind === "board").length);
        // Devices of mechanisms are built in at their bench.
        expect(count("device")).toBe(items.filter(({ kind }) => kind === "device").length);
      }),
      { seed: 101, numRuns: 30 },
    );
  });

  test("a gate with its screw, washer and nut", () => {
    const line = lined({
      ...TYPES,
      mechanisms: [{ id: "mech.gate", type: "mt.gate", panel: "field", side: "under", x_mm: 100, y_mm: 100 }],
    });
    expect(
      fastenerBill(line).map(({ typeId, driven, washers, nuts, count }) => [
        typeId,
        driven,
        washers,
        nuts,
        count,
      ]),
    ).toEqual([
      ["ft.c", 1, 0, 0, 1],
      ["ft.nut", 0, 0, 1, 1],
      ["ft.washer", 0, 1, 0, 1],
    ]);
    const mount = line.steps.steps.find((step) => step.id === "mount:mech.gate");
    const parts = mount === undefined ? [] : partsOfStep(line, mount);
    expect(parts).toMatchObject([
      { kind: "mechanism", typeId: "mt.gate", count: 1, stepIds: ["mount:mech.gate"] },
    ]);
    expect(mount?.motions.map(({ kind }) => kind)).toEqual(["place", "pick", "washer", "tighten", "nut"]);
  });
});
