import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createMachine, createShop, type SomeShopTables } from "../testing/book.ts";
import { boardKit, packFor } from "./kit.ts";
import { stuffingPlan } from "./stuffing/stuffing-plan.ts";
import { arbitraryParts, boardTables, part } from "./testing/boards.ts";

const parts = [
  { id: "p.res", label: "Resistor", kind: "electronic" as const, value: "1 k" },
  { id: "p.plug", label: "Header", kind: "connector" as const },
  { id: "p.own", label: "Own share", kind: "electronic" as const, scrap_pct: 10 },
  { id: "pcb", label: "Bare board", kind: "board" as const },
];
const kitOf = (boards: number, shop: SomeShopTables = {}) => {
  const tables = boardTables(
    [
      part("R2", { x_mm: 20 }),
      part("R1"),
      part("J1", { part: "p.plug", height_mm: 12 }),
      part("U1", { part: "p.own", height_mm: 5 }),
    ],
    { parts },
  );
  const types = (tables.board_types ?? []).map((row) => ({ ...row, part: "pcb" }));
  return boardKit(createMachine({ ...tables, board_types: types }, createShop(shop)), "bt", boards);
};

describe("kit of a batch of boards", () => {
  it("counts each part, with what is lost on top, box by box in the order of stuffing", () => {
    const { lines } = kitOf(45);
    expect(
      lines.map(({ box, partId, perBoard, needed, extra, total }) => [
        box,
        partId,
        perBoard,
        needed,
        extra,
        total,
      ]),
    ).toEqual([
      // All others: the shop's 1 per cent, rounded up.
      [0, "pcb", 1, 45, 1, 46],
      // Small parts: 2 per cent, at least one.
      [1, "p.res", 2, 90, 2, 92],
      // A part's own share counts alone.
      [2, "p.own", 1, 45, 5, 50],
      [3, "p.plug", 1, 45, 1, 46],
    ]);
    expect(lines[1]).toMatchObject({ references: ["R1", "R2"], value: "1 k", pack: null });
    expect(kitOf(0).lines.every(({ total }) => total === 0)).toBe(true);
    expect(() => kitOf(1.5)).toThrow(RangeError);
  });

  it("opens the packs of the offer that costs least for whole packs", () => {
    const suppliers = [
      { id: "one", currency: "EUR" },
      { id: "two", currency: "EUR" },
    ];
    const prices = [
      { part: "p.res", supplier: "one", from_quantity: 0, price: 0.1, pack: 1 },
      { part: "p.res", supplier: "one", from_quantity: 80, price: 0.05, pack: 50 },
      { part: "p.res", supplier: "two", from_quantity: 0, price: 0.02, pack: 200 },
    ];
    // 92 pieces: two packs of 50 at 0.05 are 5.00; one pack of 200 at 0.02 is 4.00.
    expect(kitOf(45, { suppliers, prices }).lines[1]?.pack).toEqual({
      supplierId: "two",
      size: 200,
      packs: 1,
    });
    // 12 pieces: twelve at 0.10 are 1.20; one pack of 200 is 4.00.
    expect(kitOf(5, { suppliers, prices }).lines[1]?.pack).toEqual({ supplierId: "one", size: 1, packs: 11 });
  });

  it("needs whole packs only, and no more of them than the quantity asks for (seed 81)", () => {
    const machine = createMachine(
      {},
      createShop({
        suppliers: [{ id: "s", currency: "EUR" }],
        prices: [{ part: "p", supplier: "s", from_quantity: 0, price: 1, pack: 0.3 }],
      }),
    );
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), (tenths) => {
        const pack = packFor(machine, "p", (tenths * 3) / 10);
        expect(pack?.packs).toBe(tenths);
      }),
      { seed: 81, numRuns: 200 },
    );
  });

  it("has every reference in one box, in the boxes of the stuffing plan (seed 82)", () => {
    fc.assert(
      fc.property(arbitraryParts, fc.integer({ min: 1, max: 200 }), (placements, boards) => {
        const machine = createMachine(boardTables(placements));
        const kit = boardKit(machine, "bt", boards);
        const plan = stuffingPlan(machine, "bt");
        expect(kit.lines.map(({ partId }) => partId)).toEqual(plan.boxes);
        expect(kit.lines.flatMap(({ references }) => references).sort()).toEqual([...plan.order].sort());
        for (const { perBoard, needed, total, extra } of kit.lines) {
          expect(needed).toBe(perBoard * boards);
          expect(total).toBe(needed + extra);
        }
      }),
      { seed: 82, numRuns: 40 },
    );
  });
});
