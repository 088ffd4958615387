import { describe, expect, it } from "vitest";
import { byDay, changedRows, joined, nameIn } from "./changed-rows.ts";

const cell = (row: string, column: string, from: string, to: string) => ({
  table: "devices",
  row,
  column,
  from,
  to,
});

describe("changedRows", () => {
  it("tells what came of each row", () => {
    const rows = changedRows([
      cell("r1", "x_mm", "1", "2"),
      cell("r2", "#", "", "a1"),
      cell("r2", "id", "", "sw.new"),
      cell("r3", "#", "a2", ""),
      cell("r3", "id", "sw.old", ""),
      cell("r4", "#", "a3", "a4"),
      cell("r1", "x_mm", "2", "3"),
      cell("r1", "y_mm", "7", "8"),
    ]);
    expect(rows.map((row) => [row.row, row.what])).toEqual([
      ["r1", "changed"],
      ["r2", "added"],
      ["r3", "removed"],
      ["r4", "moved"],
    ]);
    expect(rows[0]?.cells).toEqual([
      { column: "x_mm", from: "1", to: "3" },
      { column: "y_mm", from: "7", to: "8" },
    ]);
    expect(rows.map(nameIn)).toEqual(["3", "sw.new", "sw.old", "r4"]);
  });

  it("leaves out a cell that is in the end as it was", () => {
    const rows = changedRows([cell("r1", "x_mm", "1", "2"), cell("r1", "x_mm", "2", "1")]);
    expect(rows.map((row) => row.cells)).toEqual([[]]);
  });
});

describe("lists of change sets", () => {
  it("are grouped by day, in order", () => {
    const heads = ["2026-03-02T08:00:00.000Z", "2026-03-02T07:00:00.000Z", "2026-03-01T09:00:00.000Z"];
    const days = byDay(
      heads.map((at) => ({ at })),
      (at) => at.toISOString().slice(0, 10),
    );
    expect(days.map(({ day, heads: own }) => [day, own.length])).toEqual([
      ["2026-03-02", 2],
      ["2026-03-01", 1],
    ]);
  });

  it("are joined without doubles, the newer telling more", () => {
    const newer = [
      { no: 3, undone: false },
      { no: 2, undone: true },
    ];
    const older = [
      { no: 2, undone: false },
      { no: 1, undone: false },
    ];
    expect(joined(newer, older).map(({ no, undone }) => `${no} ${undone}`)).toEqual([
      "3 false",
      "2 true",
      "1 false",
    ]);
  });
});
