import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CellTables, cellOf, RANK, rowOrder } from "./cell-tables.ts";
import { applyChanges, type CellChange, inverse } from "./change.ts";

const change = (row: string, column: string, from: string, to: string): CellChange => ({
  table: "devices",
  row,
  column,
  from,
  to,
});

const start: CellTables = new Map([
  [
    "devices",
    new Map([
      [
        "r1",
        new Map([
          [RANK, "a0"],
          ["id", "sw.left"],
        ]),
      ],
    ]),
  ],
]);

const plain = (tables: CellTables | null) =>
  tables === null
    ? null
    : [...tables].map(([name, rows]) => [
        name,
        [...rows].map(([id, cells]) => [id, [...cells].sort()]).sort(),
      ]);

describe("applyChanges", () => {
  it("changes a cell whose text is what the author saw", () => {
    const { tables } = applyChanges(start, [
      change("r1", "x_mm", "", "12"),
      change("r1", "x_mm", "12", "13"),
    ]);
    expect(tables && cellOf(tables, "devices", "r1", "x_mm")).toBe("13");
    expect(cellOf(start, "devices", "r1", "x_mm")).toBe("");
  });

  it("says what stands there now when someone else was first, and changes nothing", () => {
    const result = applyChanges(start, [
      change("r1", "x_mm", "", "12"),
      change("r1", "id", "sw.right", "sw.x"),
    ]);
    expect(result.tables).toBeNull();
    expect(result.conflicts).toEqual([
      { ...change("r1", "id", "sw.right", "sw.x"), found: "sw.left", reason: "cell" },
    ]);
  });

  it("does not fill in a row that is gone, nor delete one that was filled in meanwhile", () => {
    const gone = applyChanges(start, [change("r9", "x_mm", "", "1")]);
    expect(gone.conflicts.map((c) => c.reason)).toEqual(["row-gone"]);
    const edited = applyChanges(start, [change("r9", "x_mm", "3", "1")]);
    expect(edited.conflicts.map((c) => c.reason)).toEqual(["row-gone"]);
    const used = applyChanges(start, [change("r1", RANK, "a0", "")]);
    expect(used.conflicts.map((c) => c.reason)).toEqual(["row-used"]);
  });

  it("makes and deletes whole rows, in the order of their ranks", () => {
    const made = applyChanges(start, [change("r0", RANK, "", "a0"), change("r2", RANK, "", "Zz")]);
    expect(rowOrder(made.tables?.get("devices") ?? new Map())).toEqual(["r2", "r0", "r1"]);
    const deleted = applyChanges(start, [change("r1", RANK, "a0", ""), change("r1", "id", "sw.left", "")]);
    expect(deleted.tables?.get("devices")?.size).toBe(0);
  });

  it("is undone by its inverse, and shares what it does not touch", () => {
    const text = fc.constantFrom("", "1", "2");
    const edit = fc.record({
      table: fc.constantFrom("devices", "nets"),
      row: fc.constantFrom("r1", "r2", "r3"),
      column: fc.constantFrom(RANK, "id", "x_mm"),
      from: text,
      to: text,
    });
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 8 }), (changes) => {
        const forth = applyChanges(start, changes);
        if (forth.tables === null) {
          expect(forth.conflicts.length).toBeGreaterThan(0);
          return;
        }
        for (const [name, rows] of start) {
          if (!changes.some((c) => c.table === name)) expect(forth.tables.get(name)).toBe(rows);
        }
        const back = applyChanges(forth.tables, inverse(changes));
        const empty = [...(back.tables ?? [])].filter(([name, rows]) => rows.size > 0 || start.has(name));
        expect(plain(new Map(empty))).toEqual(plain(start));
      }),
      { seed: 11, numRuns: 2000 },
    );
  });
});
