import { applyChanges, type CellTables, RANK, rowOrder } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import type { TableRow } from "./arrange.ts";
import { deleteChanges, gridChanges, insertChanges, moveChanges, orderChanges } from "./changes.ts";
import { stillWaiting, withOverlay } from "./overlay.ts";

const table = "devices";
const rows: readonly TableRow[] = ["a0", "a1", "a1", "a2"].map((rank, i) => ({
  id: `r${i}`,
  cells: { [RANK]: rank, id: `sw.${i}` },
}));
const source = { table, rows };
const tables: CellTables = new Map([
  [table, new Map(rows.map(({ id, cells }) => [id, new Map(Object.entries(cells))]))],
]);
const ids = (): (() => string) => {
  let n = 0;
  return () => `n${n++}`;
};
const after = (changes: Parameters<typeof applyChanges>[1]): CellTables => {
  const applied = applyChanges(tables, changes);
  expect(applied.conflicts).toEqual([]);
  return applied.tables ?? tables;
};
const order = (changes: Parameters<typeof applyChanges>[1]): string =>
  rowOrder(after(changes).get(table) ?? new Map()).join(" ");

describe("changes of rows", () => {
  it("inserts, deletes and moves rows and puts them in order", () => {
    expect(order(insertChanges(source, 0, [{}, {}], ids()))).toBe("n0 n1 r0 r1 r2 r3");
    expect(order(insertChanges(source, 2, [{}], ids()))).toBe("r0 r1 n0 r2 r3");
    expect(order(insertChanges(source, 4, [{ id: "x" }], ids()))).toBe("r0 r1 r2 r3 n0");
    expect(order(deleteChanges(source, ["r1", "r3"]))).toBe("r0 r2");
    expect(order(orderChanges(source, ["r3", "r1"]))).toBe("r3 r1 r0 r2");
    expect(order(moveChanges(source, 1, 2, -1))).toBe("r1 r2 r0 r3");
    expect(order(moveChanges(source, 2, 2, -1))).toBe("r0 r2 r1 r3");
    expect(order(moveChanges(source, 0, 1, 1))).toBe("r2 r0 r1 r3");
    expect(moveChanges(source, 0, 1, -1)).toEqual([]);
    expect(moveChanges(source, 2, 3, 1)).toEqual([]);
  });

  it("says what each cell said before, and shows the same on top until it comes back", () => {
    const edit = {
      what: "paste",
      cells: [
        { row: "r0", column: "id", to: "sw.x" },
        { row: "gone", column: "id", to: "sw.y" },
      ],
      added: [{ id: "sw.new" }],
    } as const;
    const changes = gridChanges(source, edit, ids());
    expect(changes[0]).toEqual({ table, row: "r0", column: "id", from: "sw.0", to: "sw.x" });
    const cells = after(changes).get(table) ?? new Map();
    const expected = rowOrder(cells).map((id) => ({ id, cells: Object.fromEntries(cells.get(id) ?? []) }));
    expect(withOverlay(rows, changes)).toEqual(expected);
    expect(withOverlay(expected, changes)).toBe(expected);
    const now = new Map(expected.map((row) => [row.id, row.cells]));
    expect(stillWaiting(now, changes)).toEqual([]);
    expect(stillWaiting(new Map(rows.map((row) => [row.id, row.cells])), changes)).toBe(changes);
  });

  it("shows deleted and moved rows on top", () => {
    expect(withOverlay(rows, deleteChanges(source, ["r0"])).map((row) => row.id)).toEqual(["r1", "r2", "r3"]);
    expect(withOverlay(rows, moveChanges(source, 3, 3, -1)).map((row) => row.id)).toEqual([
      ...["r0", "r1", "r3", "r2"],
    ]);
  });
});
