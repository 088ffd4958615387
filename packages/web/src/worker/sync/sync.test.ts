import { type CellChange, type CellTables, cellOf, RANK } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { Sync } from "./sync.ts";

const start: CellTables = new Map([
  [
    "devices",
    new Map([
      [
        "r1",
        new Map([
          [RANK, "a0"],
          ["x_mm", "1"],
        ]),
      ],
    ]),
  ],
]);
const set = (column: string, from: string, to: string): readonly CellChange[] => [
  { table: "devices", row: "r1", column, from, to },
];
const cell = (sync: Sync, column: string) => cellOf(sync.tables, "devices", "r1", column);

describe("Sync", () => {
  it("shows an edit at once and keeps it when the server has it", () => {
    const sync = new Sync(start, 4);
    expect(sync.edit({ id: "a", note: "", changes: set("x_mm", "1", "2") })).toBe(true);
    expect([cell(sync, "x_mm"), sync.changeNo, sync.pending.length]).toEqual(["2", 4, 1]);
    expect(sync.take({ no: 5, id: "a", changes: set("x_mm", "1", "2") })).toBe("taken");
    expect([cell(sync, "x_mm"), sync.changeNo, sync.pending.length]).toEqual(["2", 5, 0]);
  });

  it("lays its own edits on what others did meanwhile", () => {
    const sync = new Sync(start, 4);
    sync.edit({ id: "a", note: "", changes: set("x_mm", "1", "2") });
    expect(sync.take({ no: 5, id: "other", changes: set("y_mm", "", "7") })).toBe("taken");
    expect([cell(sync, "x_mm"), cell(sync, "y_mm"), sync.pending.length]).toEqual(["2", "7", 1]);
  });

  it("shows the other's text when both changed a cell, and forgets its own when it is refused", () => {
    const sync = new Sync(start, 4);
    sync.edit({ id: "a", note: "", changes: set("x_mm", "1", "2") });
    sync.take({ no: 5, id: "other", changes: set("x_mm", "1", "9") });
    expect([cell(sync, "x_mm"), sync.pending.length]).toEqual(["9", 1]);
    sync.drop("a");
    expect([cell(sync, "x_mm"), sync.pending.length]).toEqual(["9", 0]);
  });

  it("says when something is missing or was known", () => {
    const sync = new Sync(start, 4);
    expect(sync.take({ no: 6, id: "x", changes: [] })).toBe("gap");
    expect(sync.take({ no: 4, id: "x", changes: [] })).toBe("late");
    expect(sync.edit({ id: "b", note: "", changes: set("x_mm", "8", "9") })).toBe(false);
  });
});
