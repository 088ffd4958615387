import { describe, expect, it } from "vitest";
import { clearEdit, continueEdit, editOf, fillEdit, type Screen, spreadEdit } from "./grid-edit.ts";
import { pasteBlock } from "./paste.ts";

const screen: Screen = {
  columns: [
    { name: "id", kind: "id" },
    { name: "x_mm", kind: "number" },
    { name: "label", kind: "label" },
  ],
  rows: [
    { id: "r1", cells: { "#": "a0", id: "sw.a-1", x_mm: "10", label: "A" } },
    { id: "r2", cells: { "#": "a1", id: "sw.a-2", x_mm: "20" } },
  ],
};
const cell = (row: number, col: number) => ({ top: row, left: col, bottom: row, right: col });

describe("pasting", () => {
  it("changes cells and adds the rows that are missing, without rows that would stay blank", () => {
    const block = [
      ["20.0", "B"],
      ["30", ""],
      ["", ""],
      ["50", " C "],
    ];
    const { puts, range, lostColumns } = pasteBlock(block, cell(1, 1), 3);
    expect(lostColumns).toBe(0);
    expect(range).toEqual({ top: 1, left: 1, bottom: 4, right: 2 });
    expect(editOf(screen, puts, "paste")).toEqual({
      what: "paste",
      cells: [{ row: "r2", column: "label", to: "B" }],
      added: [{ x_mm: "30" }, { x_mm: "50", label: " C " }],
    });
  });

  it("fills a selection that is a whole number of blocks, and one cell fills any", () => {
    const all = { top: 0, left: 0, bottom: 3, right: 1 };
    expect(pasteBlock([["a"], ["b"]], all, 3).puts).toHaveLength(8);
    expect(pasteBlock([["a"]], all, 3).puts).toHaveLength(8);
    expect(pasteBlock([["a"], ["b"], ["c"]], all, 3).puts).toHaveLength(3);
  });

  it("counts the columns that do not fit", () => {
    const { puts, lostColumns } = pasteBlock([["a", "b", "c"]], cell(0, 2), 3);
    expect(puts).toEqual([{ row: 0, col: 2, text: "a" }]);
    expect(lostColumns).toBe(2);
  });
});

describe("edits of a rectangle", () => {
  it("clears only what is filled and leaves the blank row alone", () => {
    const edit = clearEdit(screen, { top: 0, left: 2, bottom: 2, right: 2 }, "clear");
    expect(edit).toEqual({ what: "clear", cells: [{ row: "r1", column: "label", to: "" }], added: [] });
  });

  it("fills down from the first row, or from the row above a single one", () => {
    const both = fillEdit(screen, { top: 0, left: 1, bottom: 1, right: 2 }, "down");
    const one = fillEdit(screen, { top: 1, left: 1, bottom: 1, right: 2 }, "down");
    expect(both.cells).toEqual([
      { row: "r2", column: "x_mm", to: "10" },
      { row: "r2", column: "label", to: "A" },
    ]);
    expect(one).toEqual(both);
  });

  it("continues a series over the rows that are there", () => {
    const edit = continueEdit(screen, cell(0, 0), 9);
    expect(edit.cells).toEqual([]);
    expect(continueEdit(screen, cell(0, 1), 9).cells).toEqual([{ row: "r2", column: "x_mm", to: "10" }]);
  });

  it("puts one text everywhere, into the blank row too", () => {
    expect(spreadEdit(screen, { top: 1, left: 2, bottom: 2, right: 2 }, "Z")).toEqual({
      what: "type",
      cells: [{ row: "r2", column: "label", to: "Z" }],
      added: [{ label: "Z" }],
    });
  });
});
