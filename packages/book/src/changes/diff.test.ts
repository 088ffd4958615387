import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { contentOf, sampleCells } from "../testing/cells.ts";
import { type CellRows, type CellTables, OUTLINE_TABLE, RANK, rowOrder } from "./cell-tables.ts";
import { applyChanges } from "./change.ts";
import { diffTables, keepUnread, matchRows } from "./diff.ts";
import { longestIncreasing } from "./longest-increasing.ts";

function counter(): () => string {
  let n = 0;
  return () => `new${n++}`;
}

const importOver = (before: CellTables, after: CellTables) =>
  diffTables(before, matchRows(before, after, counter()));

/** A table with these rows, with other row ids and ranks than anybody else's. */
const rowsOf = (rows: readonly (readonly (readonly [string, string])[])[], prefix: string): CellRows =>
  new Map(
    rows.map((cells, i) => [`${prefix}${i}`, new Map([[RANK, `a${String.fromCharCode(65 + i)}`], ...cells])]),
  );

/** The sample as an import would bring it: the same rows under other ids, changed by `edit`. */
function reimported(
  tables: CellTables,
  edit: (name: string, rows: Map<string, string>[]) => Map<string, string>[],
) {
  return new Map(
    [...tables].map(([name, rows]) => {
      if (name === OUTLINE_TABLE || name === "machine") return [name, rows];
      const copies = rowOrder(rows).map((id) => new Map(rows.get(id)));
      const edited = edit(name, copies);
      return [
        name,
        new Map(
          edited.map((cells, i) => [`x${i}`, new Map(cells).set(RANK, `a${String.fromCharCode(65 + i)}`)]),
        ),
      ];
    }),
  );
}

describe("matchRows and diffTables", () => {
  it("make the present book say what the other one says, in the same order", () => {
    const cell = fc.constantFrom("", "a", "b", "c", "d");
    const row = fc
      .record({ point: cell, harness: cell, net: cell, stray: cell })
      .map((r) => Object.entries(r).filter(([, text]) => text !== ""));
    const ends = fc.array(row, { maxLength: 9 });
    fc.assert(
      fc.property(ends, ends, ends, (old, now, other) => {
        const before: CellTables = new Map([
          ["ends", rowsOf(old, "r")],
          ["nets", rowsOf(other, "r")],
        ]);
        const after: CellTables = new Map([["ends", rowsOf(now, "n")]]);
        const result = applyChanges(before, importOver(before, after));
        expect(result.conflicts).toEqual([]);
        const made = result.tables ?? new Map();
        expect(contentOf(made)).toEqual(contentOf(after));
        expect(made.get("ends")?.size ?? 0).toBe(now.length);
      }),
      { seed: 31, numRuns: 2000 },
    );
  });

  it("find nothing to change in a book that comes back as it went", () => {
    const tables = sampleCells();
    expect(
      importOver(
        tables,
        reimported(tables, (_, rows) => rows),
      ),
    ).toEqual([]);
    expect(diffTables(tables, tables)).toEqual([]);
  });

  it("change one cell for one edited cell", () => {
    const tables = sampleCells();
    const after = reimported(tables, (name, rows) =>
      name === "devices" ? rows.map((row, i) => (i === 1 ? row.set("x_mm", "99") : row)) : rows,
    );
    const changes = importOver(tables, after);
    expect(changes.map(({ table, row, column, to }) => ({ table, row, column, to }))).toEqual([
      { table: "devices", row: "2", column: "x_mm", to: "99" },
    ]);
  });

  it("give a rank to a row that moved or is new, and to no other", () => {
    const tables = sampleCells();
    const moved = reimported(tables, (name, rows) =>
      name === "waypoints" ? [...rows.slice(1), ...rows.slice(0, 1)] : rows,
    );
    expect(importOver(tables, moved).map(({ row, column }) => [row, column])).toEqual([["1", RANK]]);
    const added = reimported(tables, (name, rows) =>
      name === "waypoints" ? [...rows.slice(0, 1), new Map([["id", "w.new"]]), ...rows.slice(1)] : rows,
    );
    expect(importOver(tables, added).map(({ row, column }) => [row, column])).toEqual([
      ["new0", "id"],
      ["new0", RANK],
    ]);
  });

  it("take away what is not there any more, cell by cell", () => {
    const tables = sampleCells();
    const after = reimported(tables, (name, rows) => (name === "waypoints" ? rows.slice(0, 2) : rows));
    const changes = importOver(tables, after);
    expect(new Set(changes.map(({ table, row, to }) => `${table} ${row} ${to}`))).toEqual(
      new Set(["waypoints 3 "]),
    );
    expect(changes.map(({ column }) => column)).toContain(RANK);
  });
});

describe("keepUnread", () => {
  it("leaves what could not be read as it is", () => {
    const present = sampleCells();
    const [drawing = ""] = [...(present.get(OUTLINE_TABLE)?.keys() ?? [])];
    const imported = new Map(present);
    imported.set("devices", new Map());
    imported.delete("nets");
    imported.delete(OUTLINE_TABLE);
    const kept = keepUnread(present, imported, new Set(["devices", drawing]));
    expect(kept.get("devices")).toBe(present.get("devices"));
    expect(kept.has("nets")).toBe(false);
    expect([...(kept.get(OUTLINE_TABLE)?.keys() ?? [])]).toEqual([drawing]);
  });
});

describe("longestIncreasing", () => {
  it("is as long as trying every subsequence finds, and increases", () => {
    const values = fc.array(fc.option(fc.nat(9)), { maxLength: 10 });
    fc.assert(
      fc.property(values, (list) => {
        const found = [...longestIncreasing(list)].sort((a, b) => a - b).map((i) => list[i] ?? Number.NaN);
        expect(found.every((value, i) => i === 0 || value > (found[i - 1] ?? Number.NaN))).toBe(true);
        const numbers = list.filter((value) => value !== null);
        let most = 0;
        for (let mask = 0; mask < 1 << numbers.length; mask++) {
          const chosen = numbers.filter((_, i) => (mask >> i) & 1);
          if (chosen.every((value, i) => i === 0 || value > (chosen[i - 1] ?? 0)))
            most = Math.max(most, chosen.length);
        }
        expect(found.length).toBe(most);
      }),
      { seed: 8, numRuns: 300 },
    );
  });
});
