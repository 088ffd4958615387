import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type CellTables, cellOf, rowOrder } from "../changes/cell-tables.ts";
import { applyChanges } from "../changes/change.ts";
import { rawBookOf } from "../changes/raw-book.ts";
import { readRawBook } from "../read/book.ts";
import { ALL_TABLES, BOOK_TABLES } from "../schema/tables/index.ts";
import { sampleCells } from "../testing/cells.ts";
import { circleRows } from "./circle-rows.ts";
import { headingParts, headingUnit } from "./fold.ts";
import { chosenMapping, guessMapping } from "./guess.ts";
import { LABEL_WORDS } from "./label-words.ts";
import { mappedRows } from "./mapped-rows.ts";
import { mergeRows } from "./merge-rows.ts";

const { devices, fasteners, waypoints } = BOOK_TABLES;
const guessed = (header: readonly string[], table = devices) =>
  guessMapping(header, table).map(({ column, unit, how }) => [column, unit, how]);

describe("headings", () => {
  it("name units in every usual way", () => {
    for (const heading of ["X (in)", "X [in]", "X, in", "X in", "X/in", "X_in", "X（in）", "X (IN)"]) {
      expect(headingParts(heading)).toEqual({ stem: "X", unit: heading.includes("IN") ? "IN" : "in" });
      expect(headingUnit(heading, "x_mm")).toMatch(/in/i);
    }
    expect(headingParts("X (px)")).toBeNull();
    expect(headingUnit("X (mm)", "x_mm")).toBeNull();
    expect(headingUnit("Angle (rad)", "rotation_deg")).toBeNull();
    expect(headingUnit("X (V)", "x_mm")).toBeNull();
  });

  it("label words are of columns that exist, and folded", () => {
    const columns = new Set(Object.values(ALL_TABLES).flatMap((table) => Object.keys(table.columns)));
    for (const [column, words] of Object.entries(LABEL_WORDS)) {
      expect(columns).toContain(column);
      for (const word of words) expect(word).toMatch(/^[\p{L}\p{N}]+$/u);
    }
  });
});

describe("guessMapping", () => {
  it("takes the surest heading for each column", () => {
    expect(
      guessed(["id", "Label ZH", "X (in)", "y", "Angle", "Device type", "pannel", "Colour of the day"]),
    ).toEqual([
      ["id", null, "exact"],
      ["label_zh", null, "folded"],
      ["x_mm", "in", "unit"],
      ["y_mm", null, "stem"],
      ["rotation_deg", null, "label"],
      ["type", null, "label"],
      ["panel", null, "nearest"],
      [null, null, null],
    ]);
  });

  it("reads headings in Chinese", () => {
    expect(guessed(["编号", "名称", "X坐标 (mm)", "面板"]).map(([column]) => column)).toEqual([
      "id",
      "label",
      "x_mm",
      "panel",
    ]);
  });

  it("offers no column whose unit cannot be reached exactly", () => {
    expect(guessed(["Rotation (rad)", "X (V)"])).toEqual([
      [null, null, null],
      [null, null, null],
    ]);
  });

  it("gives a column once, and knows every table's own heading", () => {
    expect(guessed(["x", "X", "x_mm"]).map(([column]) => column)).toEqual([null, null, "x_mm"]);
    for (const table of Object.values(ALL_TABLES)) {
      const names = Object.keys(table.columns);
      expect(guessMapping(names, table).map(({ column }) => column)).toEqual(names);
    }
  });

  it("remembers what was chosen, also what was not to be taken", () => {
    const remembered = [
      { table: "devices", header: ["Ref", "Kommentar"], columns: ["label", "number"] },
      { table: "devices", header: ["Ref", "Kommentar", "X"], columns: ["id", "", "y_mm"] },
      { table: "fasteners", header: ["Ref"], columns: ["type"] },
    ];
    const columns = (header: readonly string[]) =>
      guessMapping(header, devices, remembered).map(({ column, how }) => [column, how]);
    expect(columns(["Ref", "Kommentar", "X"])).toEqual([
      ["id", "remembered"],
      [null, "remembered"],
      ["y_mm", "remembered"],
    ]);
    expect(columns(["Ref", "Kommentar"])).toEqual([
      ["label", "remembered"],
      ["number", "remembered"],
    ]);
    expect(columns(["REF", "Panel"])).toEqual([
      ["id", "remembered"],
      ["panel", "folded"],
    ]);
  });

  it("throws for no heading", () => {
    const heading = fc.oneof(
      fc.string(),
      fc.constantFrom("constructor", "__proto__", "X (toString)", "(in)", "in"),
    );
    fc.assert(
      fc.property(fc.array(heading, { maxLength: 12 }), (header) => {
        const columns = guessMapping(header, devices).flatMap(({ column }) => column ?? []);
        expect(new Set(columns).size).toBe(columns.length);
      }),
      { seed: 2, numRuns: 500 },
    );
  });
});

describe("mappedRows", () => {
  const header = ["Ref", "X (in)", "Y", "Side", "Panel", "Typ"];
  const mapping = chosenMapping(header, ["id", "x_mm", "y_mm", "side", "panel", "type"], devices);
  const map = (...rows: readonly (readonly string[])[]) => mappedRows(rows, mapping, devices);

  // 1 in = 25.4 mm exactly: international yard and pound agreement of 1959.
  it("converts what the heading's unit says, and writes choices and units as the book does", () => {
    const { rows, faults, missing } = map(
      ["sw.a", "1", "5 cm", "UNDER", "playfield", "t"],
      ["", "", "", "", "", ""],
      ["sw.b", "1 1/2", "7", "under", "playfield", "t"],
      ["sw.c", "30 mm", "7.25", "Top", "playfield", "t"],
    );
    expect(faults).toEqual([]);
    expect(missing).toEqual([]);
    expect(rows.map(({ index, cells }) => [index, cells.x_mm, cells.y_mm, cells.side])).toEqual([
      [0, "25.4", "50", "under"],
      [2, "38.1", "7", "under"],
      [3, "30", "7.25", "top"],
    ]);
  });

  it("keeps what it does not understand, with a fault for the cell", () => {
    const { rows, faults } = map(["SW A", "1,5", "1,250", "sideways", "", "t"]);
    expect(rows[0]?.cells).toEqual({ id: "SW A", x_mm: "1,5", y_mm: "1,250", side: "sideways", type: "t" });
    expect(faults.map(({ column, code, nearest }) => [column, code, nearest])).toEqual([
      ["id", "id-form", "sw-a"],
      ["x_mm", "number-form", null],
      ["y_mm", "number-form", "1250"],
      ["side", "choice-unknown", null],
      ["panel", "cell-blank", null],
    ]);
  });

  it("says which columns must be filled and are not mapped", () => {
    expect(mappedRows([], chosenMapping(["Ref"], ["id"], devices), devices).missing).toEqual(
      expect.arrayContaining(["type", "panel", "side", "x_mm", "y_mm"]),
    );
  });
});

describe("mergeRows", () => {
  const applied = (tables: CellTables, changes: ReturnType<typeof mergeRows>): CellTables => {
    const result = applyChanges(tables, changes);
    expect(result.conflicts).toEqual([]);
    return result.tables ?? tables;
  };
  const counter = () => {
    let n = 0;
    return () => `n${n++}`;
  };

  it("fills in rows that are there, and adds the others at the end", () => {
    const tables = sampleCells();
    const rows = [
      { id: "w2", x_mm: "61", y_mm: "" },
      { id: "w.new", panel: "cabinet", side: "top", x_mm: "1", y_mm: "2" },
      { id: "w2", x_mm: "62" },
    ];
    const after = applied(tables, mergeRows(tables, "waypoints", rows, counter()));
    expect(cellOf(after, "waypoints", "2", "x_mm")).toBe("61");
    expect(cellOf(after, "waypoints", "2", "y_mm")).toBe(cellOf(tables, "waypoints", "2", "y_mm"));
    expect(rowOrder(after.get("waypoints") ?? new Map()).slice(-2)).toEqual(["n0", "n1"]);
    expect(readRawBook(rawBookOf(after).raw).faults.map(({ code }) => code)).toContain("id-duplicate");
  });

  it("makes rows of circles that the book takes", () => {
    const tables = sampleCells();
    const circles = [
      { xMm: 5, yMm: 10, diameterMm: 3, layer: "0" },
      { xMm: 2, yMm: 10, diameterMm: 3, layer: "0" },
      { xMm: 4, yMm: 20.125, diameterMm: 3, layer: "0" },
    ];
    const common = { panel: "playfield", side: "under", type: "ws.4x16" };
    const rows = circleRows(tables, "fasteners", circles, "fx", common);
    expect(rows.map(({ id, x_mm, y_mm }) => [id, x_mm, y_mm])).toEqual([
      ["fx-1", "4", "20.125"],
      ["fx-2", "2", "10"],
      ["fx-3", "5", "10"],
    ]);
    const after = applied(tables, mergeRows(tables, "fasteners", rows, counter()));
    const { book, faults } = readRawBook(rawBookOf(after).raw);
    expect(faults).toEqual([]);
    expect(book.tables.fasteners.filter(({ id }) => id.startsWith("fx-"))).toHaveLength(3);
    expect(circleRows(after, "fasteners", circles, "fx", common)[0]?.id).toBe("fx-4");
    expect(Object.keys(fasteners.columns)).toEqual(expect.arrayContaining(["id", "x_mm", "y_mm"]));
    expect(Object.keys(waypoints.columns)).toEqual(expect.arrayContaining(["id", "x_mm", "y_mm"]));
  });
});
