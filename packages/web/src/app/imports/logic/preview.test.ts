import { ALL_TABLES, chosenMapping, mappedRows } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { mendedBy, NOTHING_MENDED, previewFaults, previewRows, without } from "./preview.ts";

const table = ALL_TABLES.waypoints;
if (table === undefined) throw new Error("no waypoints");
const header = ["Name", "Board", "Face", "X (in)", "Y (in)"];
const rows = [
  ["wp.1", "pf", "Top", "1", "2"],
  ["", "", "", "", ""],
  ["wp.2", "pf", "bottom", "1,5", "2"],
];
const mapped = mappedRows(rows, chosenMapping(header, ["id", "panel", "side", "x_mm", "y_mm"], table), table);

describe("the preview of an import", () => {
  it("shows the rows of the sheet as cells, blank ones left out", () => {
    expect(previewRows(mapped, NOTHING_MENDED)).toEqual([
      { id: "0", cells: { id: "wp.1", panel: "pf", side: "top", x_mm: "25.4", y_mm: "50.8" } },
      { id: "2", cells: { id: "wp.2", panel: "pf", side: "bottom", x_mm: "1,5", y_mm: "50.8" } },
    ]);
  });

  it("keeps what could not be converted as a fault until its cell is mended", () => {
    const shown = previewRows(mapped, NOTHING_MENDED);
    const faults = previewFaults(shown, [], mapped.faults, NOTHING_MENDED);
    expect([...faults].map(([id, list]) => [id, list.map((fault) => fault.column)])).toEqual([
      ["2", ["side", "x_mm"]],
    ]);
    const mended = mendedBy(NOTHING_MENDED, {
      cells: [
        { row: "2", column: "x_mm", to: "38.1" },
        { row: "2", column: "side", to: "" },
      ],
    });
    expect(previewRows(mapped, mended)[1]?.cells).toEqual({
      id: "wp.2",
      panel: "pf",
      x_mm: "38.1",
      y_mm: "50.8",
    });
    const blank = { code: "cell-blank", column: "side", value: "", expected: "", nearest: null } as const;
    const left = previewFaults(
      previewRows(mapped, mended),
      [{ index: 1, fault: blank }],
      mapped.faults,
      mended,
    );
    expect([...left]).toEqual([["2", [blank]]]);
  });

  it("leaves rows out", () => {
    expect(previewRows(mapped, without(NOTHING_MENDED, ["0"])).map((row) => row.id)).toEqual(["2"]);
  });
});
