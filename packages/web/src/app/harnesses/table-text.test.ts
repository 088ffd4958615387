import { describe, expect, it } from "vitest";
import { compareValues, nextSorting, type SortColumn, sortRows, tableText } from "./table-text.ts";

interface Row {
  readonly no: string;
  readonly mm: number;
}
const columns: readonly SortColumn<Row>[] = [
  { key: "no", header: "Wire", value: (row) => row.no },
  { key: "mm", header: "Cut\tmm", value: (row) => row.mm, text: (row) => `${row.mm} mm` },
];
const rows: readonly Row[] = [
  { no: "7-10", mm: 300 },
  { no: "7-9", mm: 300 },
  { no: "7-2", mm: 20 },
];

describe("compareValues", () => {
  it("orders numbers within texts by size", () => {
    expect(["7-10", "7-9", "10-1", "7"].toSorted(compareValues)).toEqual(["7", "7-9", "7-10", "10-1"]);
    expect([30, 4, 100].toSorted(compareValues)).toEqual([4, 30, 100]);
  });
});

describe("sortRows", () => {
  it("keeps the order of equal rows, both ways round", () => {
    expect(sortRows(rows, columns, { key: "mm", descending: true }).map((row) => row.no)).toEqual([
      "7-10",
      "7-9",
      "7-2",
    ]);
    expect(sortRows(rows, columns, { key: "no", descending: false }).map((row) => row.no)).toEqual([
      "7-2",
      "7-9",
      "7-10",
    ]);
    expect(sortRows(rows, columns, null)).toBe(rows);
  });
});

describe("nextSorting", () => {
  it("goes up, down, and back to the list's own order", () => {
    const up = nextSorting(null, "mm");
    expect(up).toEqual({ key: "mm", descending: false });
    const down = nextSorting(up, "mm");
    expect(down).toEqual({ key: "mm", descending: true });
    expect(nextSorting(down, "mm")).toBeNull();
    expect(nextSorting(down, "no")).toEqual({ key: "no", descending: false });
  });
});

describe("tableText", () => {
  it("gives a line a row and no tab within a cell", () => {
    expect(tableText(rows.slice(0, 1), columns)).toBe("Wire\tCut mm\n7-10\t300 mm");
  });
});
