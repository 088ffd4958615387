import { applyChanges, type CellTables, inverse, RANK } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { addRows, copyRows, removeRows } from "./layout-rows.ts";

const rows = (...list: Record<string, string>[]) =>
  new Map(list.map((cells, i) => [String(i + 1), new Map(Object.entries({ [RANK]: `a${i}`, ...cells }))]));
const tables: CellTables = new Map([
  [
    "waypoints",
    rows({ id: "wp.a", panel: "p", side: "top", x_mm: "1" }, { id: "wp.b", panel: "p", side: "top" }),
  ],
  ["lanes", rows({ id: "ln.ab", from: "wp.a", to: "wp.b" }, { id: "ln.bc", from: "wp.b", to: "wp.c" })],
  ["devices", rows({ id: "sw.1", panel: "p", side: "top", x_mm: "5", y_mm: "7.5", number: "12" })],
  ["ends", rows({ point: "sw.1:no", net: "n" }, { point: "sw.10:no", net: "n" })],
  ["fasteners", rows({ id: "fx.1", holds: "sw.1" }, { id: "fx.2" })],
]);
const after = (changes: ReturnType<typeof addRows>): CellTables => {
  const applied = applyChanges(tables, changes);
  expect(applied.conflicts).toEqual([]);
  if (applied.tables === null) throw new Error("the changes do not fit");
  return applied.tables;
};
const ids = (of: CellTables, table: string, column = "id") =>
  [...(of.get(table)?.values() ?? [])].map((cells) => cells.get(column));

describe("rows of the drawing", () => {
  it("adds a lane to a waypoint that is added with it", () => {
    const changes = addRows(tables, {
      kind: "add",
      rows: [
        { table: "waypoints", cells: { id: "wp.c", panel: "p", side: "top", x_mm: 3.25, y_mm: 4 } },
        { table: "lanes", cells: { id: "ln.ac", from: "wp.a", to: "wp.c", max_diameter_mm: 20 } },
      ],
    });
    const result = after(changes);
    expect(ids(result, "waypoints")).toEqual(["wp.a", "wp.b", "wp.c"]);
    expect(ids(result, "waypoints", "x_mm")[2]).toBe("3.25");
    expect(ids(result, "lanes")).toContain("ln.ac");
  });

  it("copies with a new id and place, and without the number that only one can have", () => {
    const result = after(
      copyRows(tables, {
        kind: "copy",
        rows: [{ table: "devices", id: "sw.1", newId: "sw.2" }],
        dxMm: 10,
        dyMm: -0.5,
        panelId: "q",
        side: "under",
      }),
    );
    const copy = [...(result.get("devices")?.values() ?? [])][1];
    expect(copy?.get("id")).toBe("sw.2");
    expect(copy?.get("x_mm")).toBe("15");
    expect(copy?.get("y_mm")).toBe("7");
    expect(copy?.get("panel")).toBe("q");
    expect(copy?.has("number")).toBe(false);
  });

  it("copies lanes between the copies of their waypoints", () => {
    const result = after(
      copyRows(tables, {
        kind: "copy",
        rows: [
          { table: "waypoints", id: "wp.a", newId: "wp.a2" },
          { table: "lanes", id: "ln.ab", newId: "ln.ab2" },
        ],
        dxMm: 0,
        dyMm: 0,
        panelId: "p",
        side: "top",
      }),
    );
    const lane = [...(result.get("lanes")?.values() ?? [])].find((cells) => cells.get("id") === "ln.ab2");
    expect([lane?.get("from"), lane?.get("to")]).toEqual(["wp.a2", "wp.b"]);
  });

  it("deletes what cannot be without what is deleted, nothing else, and can be undone", () => {
    const changes = removeRows(tables, {
      kind: "remove",
      rows: [
        { table: "waypoints", id: "wp.b" },
        { table: "lanes", id: "ln.ab" },
        { table: "devices", id: "sw.1" },
      ],
    });
    const result = after(changes);
    expect(ids(result, "lanes")).toEqual([]);
    expect(ids(result, "waypoints")).toEqual(["wp.a"]);
    expect(ids(result, "ends", "point")).toEqual(["sw.10:no"]);
    expect(ids(result, "fasteners")).toEqual(["fx.2"]);
    const back = applyChanges(result, inverse(changes)).tables;
    expect(back?.get("lanes")?.size).toBe(2);
    expect(back?.get("devices")?.get("1")).toEqual(tables.get("devices")?.get("1"));
  });
});
