import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Resolver } from "../../model/index.ts";
import { createBook, createShop, type SomeTables } from "../../testing/book.ts";
import { SolidsSolver } from "../solids/solids-solver.ts";
import { NO_HARNESSES, PANEL, TOP } from "../testing/clashes.ts";
import { ClashSolver } from "./clash-solver.ts";

describe("memory of clashes", () => {
  /** A field of boxes with some boards and screws between them, and a lid over it. */
  const field = (columns: number, rows: number): SomeTables => ({
    panels: [
      { ...PANEL, width_mm: 60 * columns, height_mm: 60 * rows },
      { id: "lid", width_mm: 100, height_mm: 100, thickness_mm: 10 },
    ],
    poses: [{ id: "shut" }],
    pose_places: [
      { pose: "shut", panel: "pf" },
      { pose: "shut", panel: "lid", z_mm: 70, rx_deg: 6 },
    ],
    device_types: [
      { id: "dt", width_mm: 50, depth_mm: 30, height_mm: 30 },
      { id: "hang", width_mm: 40, depth_mm: 40, height_mm: 25 },
    ],
    devices: [
      ...Array.from({ length: columns * rows }, (_, i) => ({
        id: `d${i}`,
        type: "dt",
        ...TOP,
        x_mm: 30 + 60 * (i % columns),
        y_mm: 30 + 60 * Math.floor(i / columns),
      })),
      { id: "hung", type: "hang", panel: "lid", side: "under", x_mm: 50, y_mm: 50 },
    ],
  });

  test("after one moved thing only the cells that it touches are looked at again, however large the panel", () => {
    const looked = [6, 24].map((size) => {
      const resolver = new Resolver();
      const [solids, clash] = [new SolidsSolver(), new ClashSolver()];
      const shop = createShop();
      const book = createBook(field(size, size));
      const run = (x: number): number => {
        const before = clash.computed;
        const devices = book.tables.devices.map((d, i) => (i === 3 ? { ...d, x_mm: d.x_mm + x } : d));
        const machine = resolver.resolve({ ...book, tables: { ...book.tables, devices } }, shop);
        clash.solve(machine, solids.solve(machine), NO_HARNESSES);
        for (const part of [resolver, solids, clash]) part.sweep();
        return clash.computed - before;
      };
      run(0);
      return run(7);
    });
    expect(looked[0]).toBeLessThan(10);
    expect(looked[1]).toBe(looked[0]);
  });

  test("remembered findings are those from scratch, over random edits", () => {
    const edit = fc.record({
      i: fc.nat(12),
      x: fc.integer({ min: 0, max: 240 }),
      y: fc.integer({ min: 0, max: 240 }),
      turn: fc.integer({ min: 0, max: 90 }),
      lift: fc.integer({ min: 40, max: 100 }),
      clear: fc.constantFrom(0.5, 5),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const resolver = new Resolver();
        const [solids, clash] = [new SolidsSolver(), new ClashSolver()];
        let book = createBook(field(4, 3));
        let shop = createShop();
        for (const { i, x, y, turn, lift, clear } of edits) {
          const t = book.tables;
          if (shop.numbers.clear_solids_mm !== clear) shop = createShop({}, { clear_solids_mm: clear });
          const devices = t.devices.map((d, at) =>
            at === i ? { ...d, x_mm: x, y_mm: y, rotation_deg: turn } : d,
          );
          const pose_places =
            lift % 2 === 0
              ? t.pose_places.map((p) => (p.panel === "lid" ? { ...p, z_mm: lift } : p))
              : t.pose_places;
          book = { ...book, tables: { ...t, devices, pose_places } };
          const machine = resolver.resolve(book, shop);
          const remembered = clash.solve(machine, solids.solve(machine), NO_HARNESSES);
          const fresh = new ClashSolver().solve(machine, new SolidsSolver().solve(machine), NO_HARNESSES);
          expect(remembered).toEqual(fresh);
          for (const part of [resolver, solids, clash]) part.sweep();
        }
      }),
      { numRuns: 30, seed: 11 },
    );
  });
});
