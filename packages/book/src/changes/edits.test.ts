import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readRawBook } from "../read/book.ts";
import { sampleCells } from "../testing/cells.ts";
import { type CellTables, cellOf, MACHINE_TABLE, OUTLINE_TABLE, RANK, rowOrder } from "./cell-tables.ts";
import { applyChanges, type CellChange } from "./change.ts";
import {
  deleteRows,
  insertRows,
  moveRows,
  orderRows,
  putOutline,
  setCell,
  setMachineValue,
} from "./edits.ts";
import { ranksFor } from "./ranks.ts";
import { rawBookOf } from "./raw-book.ts";

function applied(tables: CellTables, changes: readonly CellChange[]): CellTables {
  const result = applyChanges(tables, changes);
  expect(result.conflicts).toEqual([]);
  return result.tables ?? tables;
}

const order = (tables: CellTables): readonly string[] => rowOrder(tables.get("nets") ?? new Map());

/** Rows `r0`, `r1`… of nets with these ranks. */
const nets = (ranks: readonly string[]): CellTables =>
  new Map([["nets", new Map(ranks.map((rank, i) => [`r${i}`, new Map([[RANK, rank]])]))]]);

function counter(): () => string {
  let n = 0;
  return () => `new${n++}`;
}

describe("edits", () => {
  it("says nothing when a cell says this already", () => {
    const tables = nets(["a0"]);
    expect(setCell(tables, "nets", "r0", "label", "")).toEqual([]);
    expect(setCell(tables, "nets", "r0", "label", "x")).toHaveLength(1);
  });

  it("puts rows where they belong and moves no other, whatever the ranks are", () => {
    const rank = fc.constantFrom("a0", "a0", "a1", "a2", "a0V", "Zz", "b", "??", "a00", "z");
    const scene = fc.record({
      ranks: fc.array(rank, { maxLength: 7 }),
      after: fc.nat(8),
      count: fc.integer({ min: 1, max: 4 }),
      moved: fc.uniqueArray(fc.nat(6), { maxLength: 4 }),
    });
    fc.assert(
      fc.property(scene, ({ ranks, after, count, moved }) => {
        const tables = nets(ranks);
        const before = order(tables);
        const anchor = after === 0 ? null : (before[after - 1] ?? null);
        const rows = Array.from({ length: count }, (_, i) => ({ label: `n${i}`, id: "" }));
        const at = anchor === null ? 0 : before.indexOf(anchor) + 1;
        const inserted = applied(tables, insertRows(tables, "nets", anchor, rows, counter()));
        const fresh = rows.map((_, i) => `new${i}`);
        expect(order(inserted)).toEqual([...before.slice(0, at), ...fresh, ...before.slice(at)]);
        expect(cellOf(inserted, "nets", "new0", "label")).toBe("n0");

        const ids = moved.flatMap((i) => before[i] ?? []);
        const next = order(applied(tables, moveRows(tables, "nets", ids, anchor)));
        const staying = before.filter((id) => !ids.includes(id));
        expect(next.filter((id) => !ids.includes(id))).toEqual(staying);
        expect([...next].sort()).toEqual([...before].sort());
        const start = staying.filter((id) => before.indexOf(id) < at).length;
        expect(next.slice(start, start + ids.length)).toEqual(before.filter((id) => ids.includes(id)));

        const deleted = applied(inserted, deleteRows(inserted, "nets", [...ids, ...fresh]));
        expect(order(deleted)).toEqual(staying);
      }),
      { seed: 21, numRuns: 1000 },
    );
  });

  it("touches one cell for each row that moves", () => {
    const tables = nets(["a0", "a1", "a2", "a3"]);
    expect(moveRows(tables, "nets", ["r3"], "r0").map(({ row }) => row)).toEqual(["r3"]);
    expect(moveRows(tables, "nets", ["r1", "r2"], "r0")).toEqual([]);
  });

  it("keeps every rank that leaves room", () => {
    expect(ranksFor(["a0", null, "a1"])).toEqual(["a0", "a0V", "a1"]);
    const squeezed = ranksFor(["a0", null, "a0", "a0", "a5"]);
    expect(squeezed[0]).toBe("a0");
    expect(squeezed[4]).toBe("a5");
    expect([...squeezed].sort()).toEqual(squeezed);
    expect(new Set(squeezed).size).toBe(5);
  });

  it("sets values of the machine, and drawings", () => {
    const tables = applied(new Map(), setMachineValue(new Map(), "label", "Night Ferry"));
    expect(cellOf(tables, MACHINE_TABLE, "machine", "label")).toBe('"Night Ferry"');
    expect(applied(tables, setMachineValue(tables, "label", undefined)).get(MACHINE_TABLE)?.size).toBe(1);
    const sample = sampleCells();
    const drawn = applied(sample, putOutline(sample, "new.svg", "<svg/>"));
    expect(rowOrder(drawn.get(OUTLINE_TABLE) ?? new Map()).pop()).toBe("new.svg");
    const replaced = applied(drawn, putOutline(drawn, "new.svg", "<svg></svg>"));
    expect(rawBookOf(replaced).raw.outlines.get("new.svg")).toBe("<svg></svg>");
    expect(readRawBook(rawBookOf(sample).raw).faults).toEqual([]);
  });

  it("puts rows into any order, moving none when they stand so already", () => {
    const ranks = fc.array(fc.constantFrom("a0", "a1", "a2", "a0V"), { minLength: 1, maxLength: 7 });
    fc.assert(
      fc.property(ranks, fc.integer(), (given, seed) => {
        const tables = nets(given);
        const now = order(tables);
        expect(orderRows(tables, "nets", now)).toEqual([]);
        const [wanted = []] = fc.sample(fc.shuffledSubarray([...now]), { numRuns: 1, seed });
        const rest = now.filter((row) => !wanted.includes(row));
        expect(order(applied(tables, orderRows(tables, "nets", wanted)))).toEqual([...wanted, ...rest]);
      }),
      { seed: 6, numRuns: 200 },
    );
  });
});
