import { applyChanges, type CellTables, RANK, rowOrder } from "@pinwright/book";
import { expect, it } from "vitest";
import { putRows } from "./put-rows.ts";

const TABLES: CellTables = new Map([
  [
    "ways",
    new Map([
      [
        "r1",
        new Map([
          [RANK, "a0"],
          ["part", "p.post"],
          ["way", "turned"],
          ["chosen", "yes"],
        ]),
      ],
    ]),
  ],
]);

const rowsAfter = (edit: Omit<Parameters<typeof putRows>[1], "kind">) => {
  const { tables } = applyChanges(TABLES, putRows(TABLES, { kind: "put", ...edit }));
  const rows = tables?.get("ways") ?? new Map<string, ReadonlyMap<string, string>>();
  return rowOrder(rows).map((row) =>
    Object.fromEntries([...(rows.get(row) ?? [])].filter(([column]) => column !== RANK)),
  );
};

it("sets the cells of a row that is there, by its whole key, and makes one that is not at the end", () => {
  const after = rowsAfter({
    rows: [
      { table: "ways", key: { part: "p.post", way: "moulded" }, cells: { chosen: "yes", kind: "make" } },
      { table: "ways", key: { part: "p.post", way: "turned" }, cells: { chosen: "" } },
    ],
  });
  expect(after).toEqual([
    { part: "p.post", way: "turned" },
    { part: "p.post", way: "moulded", chosen: "yes", kind: "make" },
  ]);
});

it("takes rows away, and changes nothing for what is so already", () => {
  expect(rowsAfter({ rows: [], gone: [{ table: "ways", key: { part: "p.post", way: "turned" } }] })).toEqual(
    [],
  );
  const same = { table: "ways", key: { part: "p.post", way: "turned" }, cells: { chosen: "yes" } };
  expect(putRows(TABLES, { kind: "put", rows: [same] })).toEqual([]);
  expect(
    putRows(TABLES, { kind: "put", rows: [], gone: [{ table: "ways", key: { part: "none" } }] }),
  ).toEqual([]);
});
