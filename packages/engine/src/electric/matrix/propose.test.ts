import type { BookRow } from "@pinwright/book";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { resolveMachine } from "../../model/index.ts";
import { createBook, createMachine, createShop } from "../../testing/book.ts";
import { createMatrixTables, type TestMatrix, type TestSwitch } from "../../testing/matrix.ts";
import { checkWires, wireHarness } from "../../wire/index.ts";
import {
  assignBoundMm,
  assignedMm,
  isPossible,
  matrixProblem,
  proposeMatrix,
  searchAssignment,
  switchMatrices,
  withProposal,
} from "./index.ts";

/** Switches over a playfield, dealt to crossings in an order that has nothing to do with where they are. */
function dealt(
  columns: number,
  rows: number,
  count: number,
  diode: TestSwitch["diode"] = "with",
): readonly TestSwitch[] {
  return Array.from({ length: count }, (_, i): TestSwitch => {
    const crossing = (i * 29) % (columns * rows);
    return {
      id: `sw.${String(i + 1).padStart(2, "0")}`,
      x: 30 + ((i * 137) % 450),
      y: 150 + ((i * 211) % 800),
      column: 1 + (crossing % columns),
      row: 1 + Math.floor(crossing / columns),
      number: i + 1,
      diode: diode ?? "none",
    };
  });
}

const EFFORT = { steps: 40_000, seed: 1 };

function proposed(matrix: TestMatrix) {
  const book = createBook(createMatrixTables(matrix));
  const machine = resolveMachine(book, createShop());
  const own = switchMatrices(machine)[0];
  if (own === undefined) throw new Error("no matrix");
  const proposal = proposeMatrix(machine, own, EFFORT);
  if (proposal === null) throw new Error("no proposal");
  const after = withProposal(book, proposal);
  return { book, machine, matrix: own, proposal, after, afterMachine: resolveMachine(after, createShop()) };
}

describe("proposeMatrix", () => {
  test("a playfield of 8 × 8 with 56 switches: less wire, the same switches, one a crossing, numbers as they were", () => {
    const { book, machine, proposal, after, afterMachine } = proposed({
      columns: 8,
      rows: 8,
      switches: dealt(8, 8, 56),
      inline: true,
    });
    expect(proposal.switches).toBe(56);
    expect(proposal.mm.value).toBeLessThan(0.75 * proposal.nowMm);
    expect(proposal.mm.lowerBound).toBeGreaterThan(0.4 * proposal.mm.value);
    expect(proposal.mm.lowerBound).toBeLessThanOrEqual(proposal.mm.value);
    const matrix = switchMatrices(afterMachine)[0];
    expect(new Set(matrix?.crossings.map((c) => `${c.column} ${c.row}`)).size).toBe(56);
    expect(matrix?.crossings.map((c) => c.diode)).toEqual(Array.from({ length: 56 }, () => "with"));
    // The proposal's figure is that of the book that it makes.
    if (matrix === undefined) throw new Error("no matrix");
    const { problem, now } = matrixProblem(afterMachine, matrix);
    expect(isPossible(problem, now)).toBe(true);
    expect(assignedMm(problem, now)).toBeCloseTo(proposal.mm.value, 6);
    // Nothing but nets of ends changed.
    expect({ ...after.tables, ends: [] }).toEqual({ ...book.tables, ends: [] });
    const cells = (ends: readonly BookRow<"ends">[]) => ends.map(({ net: _, ...rest }) => rest);
    expect(cells(after.tables.ends)).toEqual(cells(book.tables.ends));
    expect(after.tables.ends.filter((end, i) => end.net !== book.tables.ends[i]?.net)).toHaveLength(
      proposal.changes.length,
    );
    expect(afterMachine.book.tables.devices).toBe(machine.book.tables.devices);
    // The line's own measure of its chains falls too.
    const metres = (m: typeof machine): number => wireHarness(m, "hs.field").order.value;
    expect(metres(afterMachine)).toBeLessThan(0.85 * metres(machine));
    const rules = (m: typeof machine): readonly string[] =>
      [
        ...new Set(
          checkWires(
            m,
            ["hs.board", "hs.field", "hs.power"].map((id) => wireHarness(m, id)),
          ).map((f) => f.rule),
        ),
      ].sort();
    expect(rules(afterMachine)).toEqual(rules(machine));
  }, 20_000);

  test("a proposal taken leaves nothing to propose but what is no worse", () => {
    const { afterMachine, proposal } = proposed({ columns: 3, rows: 3, switches: dealt(3, 3, 8) });
    const matrix = switchMatrices(afterMachine)[0];
    if (matrix === undefined) throw new Error("no matrix");
    const again = proposeMatrix(afterMachine, matrix, EFFORT);
    expect(again?.mm.value).toBeLessThanOrEqual(proposal.mm.value + 1e-6);
    expect(again?.nowMm).toBeCloseTo(proposal.mm.value, 6);
  });

  test("keeps pinned lines: both, one, or by a net that only one harness has", () => {
    const choices = [
      { kind: "matrix" as const, subject: "sw.01", value: "col.3 row.2" },
      { kind: "matrix" as const, subject: "sw.02", value: "row.1" },
    ];
    const { afterMachine, proposal } = proposed({ columns: 3, rows: 3, switches: dealt(3, 3, 8), choices });
    const matrix = switchMatrices(afterMachine)[0];
    const at = (id: string) => matrix?.crossings.find((c) => c.itemId === id);
    expect(at("sw.01")).toMatchObject({ column: 2, row: 1 });
    expect(at("sw.02")).toMatchObject({ row: 0 });
    expect(proposal.pinned).toBe(2);
  });

  test("is no proposal when two switches are pinned to one crossing", () => {
    const choices = ["sw.01", "sw.02"].map((subject) => ({
      kind: "matrix" as const,
      subject,
      value: "col.1 row.1",
    }));
    const machine = createMachine(
      createMatrixTables({ columns: 3, rows: 3, switches: dealt(3, 3, 5), choices }),
    );
    const matrix = switchMatrices(machine)[0];
    if (matrix === undefined) throw new Error("no matrix");
    expect(proposeMatrix(machine, matrix, EFFORT)).toBeNull();
  });
});

describe("laws of the assignment", () => {
  test("possible, pinned lines kept, never worse than the start, never below the bound, the same twice", () => {
    fc.assert(
      fc.property(
        fc.record({
          columns: fc.integer({ min: 1, max: 4 }),
          rows: fc.integer({ min: 1, max: 4 }),
          places: fc.array(fc.tuple(fc.nat(500), fc.nat(1000)), { minLength: 1, maxLength: 16 }),
          pin: fc.boolean(),
        }),
        ({ columns, rows, places: drawn, pin }) => {
          const places = drawn.slice(0, columns * rows);
          const apart = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): number =>
            Math.hypot(ax - bx, ay - by);
          const mm = places.map((a) => places.map((b) => apart(a, b)));
          const line = { feedMm: places.map((p) => apart(p, [250, 0])) };
          const problem = {
            columns: Array.from({ length: columns }, () => line),
            rows: Array.from({ length: rows }, () => line),
            sites: places.map((_, i) => ({
              columnGroup: 0,
              rowGroup: 0,
              column: pin && i === 0 ? columns - 1 : null,
              row: null,
            })),
            columnMm: mm,
            rowMm: mm,
          };
          const start = searchAssignment(problem, null, { steps: 0, seed: 1 });
          const found = searchAssignment(problem, start, { steps: 3000, seed: 1 });
          if (start === null || found === null) throw new Error("no assignment");
          const value = assignedMm(problem, found);
          expect(isPossible(problem, found)).toBe(true);
          expect(value).toBeLessThanOrEqual(assignedMm(problem, start) + 1e-6);
          expect(assignBoundMm(problem, value)).toBeLessThanOrEqual(value);
          expect(searchAssignment(problem, start, { steps: 3000, seed: 1 })).toEqual(found);
        },
      ),
      { seed: 6, numRuns: 25 },
    );
  });
});
