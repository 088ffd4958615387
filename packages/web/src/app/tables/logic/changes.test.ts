import { applyChanges, type CellTables, RANK, rowOrder } from "@pinwright/book";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { TableRow } from "./arrange.ts";
import { deleteChanges, gridChanges, insertChanges, movedOrder, orderChanges } from "./changes.ts";
import { withOverlay } from "./overlay.ts";

const table = "devices";
const RANKS = ["a0", "a1", "a1", "a2", "a3"];
const rows: readonly TableRow[] = RANKS.map((rank, i) => ({
  id: `r${i}`,
  cells: { [RANK]: rank, id: `sw.${i}` },
}));
const tables: CellTables = new Map([
  [table, new Map(rows.map(({ id, cells }) => [id, new Map(Object.entries(cells))]))],
]);
const ids = (): (() => string) => {
  let n = 0;
  return () => `n${n++}`;
};
const orderAfter = (changes: Parameters<typeof applyChanges>[1]): readonly string[] => {
  const applied = applyChanges(tables, changes);
  expect(applied.conflicts).toEqual([]);
  return rowOrder(applied.tables?.get(table) ?? new Map());
};

describe("changes of rows", () => {
  it("inserts between two rows, also where two people gave the same rank", () => {
    const blank = [{}, {}];
    expect(orderAfter(insertChanges({ table, rows }, -1, blank, ids())).slice(0, 3)).toEqual([
      "n0",
      "n1",
      "r0",
    ]);
    expect(orderAfter(insertChanges({ table, rows }, 1, blank, ids()))).toEqual([
      ...["r0", "r1", "r2", "n0", "n1"],
      ...["r3", "r4"],
    ]);
    expect(orderAfter(insertChanges({ table, rows }, 4, blank, ids())).slice(-2)).toEqual(["n0", "n1"]);
  });

  it("deletes every cell of a row", () => {
    const applied = applyChanges(tables, deleteChanges({ table, rows }, new Set(["r1", "r4"])));
    expect([...(applied.tables?.get(table)?.keys() ?? [])]).toEqual(["r0", "r2", "r3"]);
  });

  it("moves a block of rows one place", () => {
    expect(orderAfter(orderChanges({ table, rows }, movedOrder(rows, new Set(["r1", "r2"]), -1)))).toEqual([
      ...["r1", "r2", "r0", "r3", "r4"],
    ]);
    expect(movedOrder(rows, new Set(["r1"]), 1)).toEqual(["r0", "r2", "r1", "r3", "r4"]);
    expect(movedOrder(rows, new Set(["r0", "r1"]), -1)).toEqual(rows.map((row) => row.id));
    expect(movedOrder(rows, new Set(["r3", "r4"]), 1)).toEqual(rows.map((row) => row.id));
  });

  it("puts rows into any order, and changes nothing where they stand so already", () => {
    expect(orderChanges({ table, rows: rows.slice(2) }, ["r2", "r3", "r4"])).toEqual([]);
    const any = fc.shuffledSubarray(
      rows.map((row) => row.id),
      { minLength: 5, maxLength: 5 },
    );
    fc.assert(
      fc.property(any, (order) => {
        expect(orderAfter(orderChanges({ table, rows }, order))).toEqual(order);
      }),
      { seed: 5 },
    );
  });

  it("says what each cell said before, and shows the same on top until it comes back", () => {
    const changes = gridChanges(
      { table, rows },
      {
        what: "paste",
        cells: [
          { row: "r0", column: "id", to: "sw.x" },
          { row: "gone", column: "id", to: "sw.y" },
        ],
        added: [{ id: "sw.new" }],
      },
      ids(),
    );
    expect(changes[0]).toEqual({ table, row: "r0", column: "id", from: "sw.0", to: "sw.x" });
    const applied = applyChanges(tables, changes);
    const expected = rowOrder(applied.tables?.get(table) ?? new Map()).map((id) => ({
      id,
      cells: Object.fromEntries(applied.tables?.get(table)?.get(id) ?? []),
    }));
    expect(withOverlay(rows, changes)).toEqual(expected);
    expect(withOverlay(expected, changes)).toBe(expected);
  });
});
