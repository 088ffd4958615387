import { type Decimal, decimal, textOfDecimal } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Bill } from "../model/index.ts";
import { createMachine, type SomeTables } from "../testing/book.ts";
import { allLevels, explode, MACHINE_NODE, oneLevel, PartsSolver, whereUsed } from "./index.ts";
import { arbitraryBom } from "./testing/arbitrary-bill.ts";

const NONE = { harnesses: new Map(), keys: new Map<string, readonly number[]>() };

const billOf = (tables: SomeTables): Bill =>
  new PartsSolver().solve(createMachine(tables), NONE.harnesses, NONE.keys).parts.bill;

const each = (...ids: readonly string[]) => ids.map((id) => ({ id, unit: "each" as const }));
const shown = (quantities: ReadonlyMap<string, Decimal>): Readonly<Record<string, string>> =>
  Object.fromEntries([...quantities].map(([id, quantity]) => [id, textOfDecimal(quantity)]));

describe("the bill", () => {
  // Explosion exercise Z-A-B-C-D-E (tutorsglobe.com, "MRP planning schedule"): data published, answer derived.
  const Z: SomeTables = {
    parts: each("z", "a", "b", "c", "d", "e"),
    bom: [
      { parent: null, part: "z", quantity: 1 },
      { parent: "z", part: "a", quantity: 2 },
      { parent: "z", part: "b", quantity: 3 },
      { parent: "a", part: "c", quantity: 4 },
      { parent: "a", part: "d", quantity: 4 },
      { parent: "d", part: "e", quantity: 2 },
    ],
  };

  test("59 Z take 118 A, 177 B, 472 C, 472 D, 944 E", () => {
    const gross = explode(billOf(Z), new Map(), new Map([["z", decimal(59)]]));
    expect(shown(gross)).toEqual({ z: "59", a: "118", b: "177", c: "472", d: "472", e: "944" });
  });

  test("what is bought comes whole", () => {
    const gross = explode(billOf(Z), new Map([["a", { kind: "buy" }]]), new Map([["z", decimal(59)]]));
    expect(shown(gross)).toEqual({ z: "59", a: "118", b: "177" });
  });

  test("by level, and where used", () => {
    const bill = billOf(Z);
    expect(
      allLevels(bill).map(({ level, node, quantity }) => [level, node.id, textOfDecimal(quantity)]),
    ).toEqual([
      [1, "z", "1"],
      [2, "a", "2"],
      [3, "c", "8"],
      [3, "d", "8"],
      [4, "e", "16"],
      [2, "b", "3"],
    ]);
    expect(oneLevel(bill, "z").map(({ childId }) => childId)).toEqual(["a", "b"]);
    expect(
      whereUsed(bill, "e").map(({ node, quantity, lines }) => [
        node.id,
        textOfDecimal(quantity),
        lines.length,
      ]),
    ).toEqual([
      ["a", "8", 0],
      ["d", "2", 1],
      ["machine", "16", 0],
      ["z", "16", 0],
    ]);
  });

  test("tells of circles and reckons with all that is in none", () => {
    const tables: SomeTables = {
      parts: each("a", "b", "c", "loose", "self", "top"),
      bom: [
        { parent: null, part: "top", quantity: 2 },
        { parent: "top", part: "a", quantity: 1 },
        { parent: "top", part: "c", quantity: 3 },
        { parent: "a", part: "b", quantity: 1 },
        { parent: "b", part: "a", quantity: 1 },
        { parent: "b", part: "c", quantity: 5 },
        { parent: "self", part: "self", quantity: 1 },
        { parent: "loose", part: "c", quantity: 1 },
      ],
    };
    const solver = new PartsSolver();
    const { parts, findings } = solver.solve(createMachine(tables), NONE.harnesses, NONE.keys);
    expect(parts.bill.circles).toEqual([["a", "b"], ["self"]]);
    expect(shown(parts.bill.totals)).toEqual({ c: "6", machine: "1", top: "2" });
    expect([...parts.bill.nodes.keys()]).toEqual(["a", "b", "c", "machine", "top"]);
    expect(parts.bill.order.at(-1)).toBe("machine");
    const circles = findings.filter(({ rule }) => rule === "bill-circle");
    expect(circles.map(({ subjects, severity }) => [severity, ...subjects])).toEqual([
      ["error", "a", "b"],
      ["error", "self"],
    ]);
    expect(
      allLevels(parts.bill)
        .filter(({ circle }) => circle)
        .map(({ node }) => node.id),
    ).toEqual(["a"]);
  });

  test("a row for an option counts in a machine that has it", () => {
    const tables: SomeTables = {
      options: [
        { id: "m.230", kind: "mains", usual: "yes" },
        { id: "m.115", kind: "mains" },
      ],
      parts: each("cord.230", "cord.115"),
      bom: [
        { parent: null, part: "cord.230", quantity: 1, options: ["m.230"] },
        { parent: null, part: "cord.115", quantity: 1, options: ["m.115"] },
      ],
    };
    expect(oneLevel(billOf(tables), MACHINE_NODE).map(({ childId }) => childId)).toEqual(["cord.230"]);
  });

  test("places, boards, mechanisms, panels, and what has no part", () => {
    const at = { panel: "field", side: "under", x_mm: 50, y_mm: 50 } as const;
    const bill = billOf({
      parts: [
        ...each("sw", "pcb", "ic", "screw", "washer", "board.a", "mech.a", "coil", "clamp", "door"),
        { id: "ply", unit: "m2", kind: "sheet" },
      ],
      panels: [
        { id: "field", width_mm: 500, height_mm: 1000, thickness_mm: 13, part: "ply" },
        { id: "door", width_mm: 200, height_mm: 300, thickness_mm: 2, part: "door" },
        { id: "glass", width_mm: 500, height_mm: 900, thickness_mm: 5 },
      ],
      device_types: [
        { id: "dt.sw", width_mm: 10, depth_mm: 10, height_mm: 5, part: "sw" },
        { id: "dt.lamp", width_mm: 10, depth_mm: 10, height_mm: 5 },
        { id: "dt.coil", width_mm: 10, depth_mm: 10, height_mm: 5, part: "coil" },
      ],
      devices: [
        { id: "s1", type: "dt.sw", ...at },
        { id: "s2", type: "dt.sw", ...at },
        { id: "l1", type: "dt.lamp", ...at },
      ],
      board_types: [
        { id: "bt", width_mm: 50, depth_mm: 40, height_mm: 9, part: "pcb", stuffed_part: "board.a" },
      ],
      boards: [
        { id: "b1", type: "bt", ...at },
        { id: "b2", type: "bt", ...at },
      ],
      placements: [
        { board_type: "bt", reference: "U1", part: "ic" },
        { board_type: "bt", reference: "U2", part: "ic" },
      ],
      mechanism_types: [{ id: "mt", width_mm: 50, depth_mm: 40, height_mm: 9, part: "mech.a" }],
      mechanism_devices: [{ mechanism_type: "mt", child: "coil", device_type: "dt.coil" }],
      mechanism_fasteners: [{ mechanism_type: "mt", child: "f1", fastener_type: "ft", washer: "ft.w" }],
      mechanisms: [{ id: "m1", type: "mt", ...at }],
      fastener_types: [
        { id: "ft", kind: "wood-screw", diameter_mm: 3, length_mm: 12, part: "screw" },
        { id: "ft.w", kind: "washer", diameter_mm: 3, length_mm: 1, part: "washer" },
      ],
      waypoints: [
        { id: "w1", ...at, hold: "clamp", hold_part: "clamp" },
        { id: "w2", ...at, hold: "saddle" },
      ],
      bom: [
        { parent: "mech.a", part: "screw", quantity: 4 },
        { parent: "board.a", part: "washer", quantity: 1 },
      ],
    });
    expect(
      bill.lines.map(
        ({ parentId, childId, why, quantity }) =>
          `${parentId} > ${childId} ${why} ${textOfDecimal(quantity)}`,
      ),
    ).toEqual([
      "board:bt > ic placement 2",
      "board:bt > pcb bare-board 1",
      "board:bt > washer bom 1",
      "machine > board:bt board 2",
      "machine > clamp holder 1",
      "machine > mechanism:mt mechanism 1",
      "machine > panel:door panel 1",
      "machine > panel:field panel 1",
      "machine > panel:glass panel 1",
      "machine > screw fastener 1",
      "machine > sw device 2",
      "machine > unnamed:device:dt.lamp device 1",
      "machine > unnamed:holder:saddle holder 1",
      "machine > washer washer 1",
      "mechanism:mt > coil device 1",
      "mechanism:mt > screw bom 4",
      "panel:door > door sheet 1",
      "panel:field > ply sheet 0.5",
      "panel:glass > unnamed:panel:glass sheet 1",
    ]);
    expect(bill.totals.get("screw")).toBe(decimal(5));
    expect(bill.nodes.get("board:bt")).toMatchObject({ kind: "board", partId: "board.a" });
    expect(bill.nodes.get("unnamed:device:dt.lamp")).toMatchObject({ kind: "unnamed", partId: null });
  });

  test("all levels add up to the totals, and to where each is used (seed 21)", () => {
    fc.assert(
      fc.property(arbitraryBom, (tables) => {
        const bill = billOf(tables);
        const sums = new Map<string, Decimal>([[MACHINE_NODE, decimal(1)]]);
        const deepest = new Map<string, number>([[MACHINE_NODE, 0]]);
        for (const { node, quantity, level } of allLevels(bill)) {
          sums.set(node.id, (sums.get(node.id) ?? 0n) + quantity);
          deepest.set(node.id, Math.max(level, deepest.get(node.id) ?? 0));
        }
        // Products of many quantities below one are rounded to billionths at each level.
        const near = (a: Decimal, b: Decimal) => (a > b ? a - b : b - a) <= 3000n;
        expect([...sums.keys()].sort()).toEqual([...bill.totals.keys()].sort());
        for (const [id, sum] of sums) expect(near(sum, bill.totals.get(id) ?? 0n)).toBe(true);
        for (const id of bill.order) {
          const inMachine = whereUsed(bill, id).find(({ node }) => node.id === MACHINE_NODE)?.quantity;
          if (id !== MACHINE_NODE) expect(near(inMachine ?? 0n, bill.totals.get(id) ?? 0n)).toBe(true);
        }
        const rank = new Map(bill.order.map((id, i) => [id, i]));
        for (const { parentId, childId } of bill.lines)
          expect(rank.get(parentId) ?? 0).toBeGreaterThan(rank.get(childId) ?? 0);
      }),
      { seed: 21, numRuns: 150 },
    );
  });

  test("from a memory it is what from scratch gives, and what stands keeps its identity (seed 22)", () => {
    fc.assert(
      fc.property(fc.array(arbitraryBom, { minLength: 2, maxLength: 5 }), (all) => {
        const solver = new PartsSolver();
        for (const tables of all) {
          const machine = createMachine(tables);
          const solved = solver.solve(machine, NONE.harnesses, NONE.keys);
          solver.sweep();
          const fresh = new PartsSolver().solve(machine, NONE.harnesses, NONE.keys);
          expect(solved).toEqual(fresh);
          const again = solver.solve({ ...machine }, NONE.harnesses, NONE.keys);
          expect(again.parts).toBe(solved.parts);
          expect(again.findings).toBe(solved.findings);
        }
      }),
      { seed: 22, numRuns: 40 },
    );
  });

  test("a thousand levels are no more than two", () => {
    const ids = Array.from({ length: 1000 }, (_, i) => `p${String(i).padStart(4, "0")}`);
    const bill = billOf({
      parts: each(...ids),
      bom: ids.map((part, i) => ({ parent: i === 0 ? null : (ids[i - 1] ?? null), part, quantity: 1 })),
    });
    expect(bill.order).toEqual([...ids.toReversed(), MACHINE_NODE]);
    expect(bill.totals.get("p0999")).toBe(decimal(1));
  });
});
