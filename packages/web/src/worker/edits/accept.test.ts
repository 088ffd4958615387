import { applyChanges, type CellTables, cellOf, RANK, rowOrder } from "@pinwright/book";
import { describe, expect, it } from "vitest";
import { acceptFindings, reopenFindings } from "./accept.ts";

const start: CellTables = new Map([
  [
    "choices",
    new Map([
      [
        "r1",
        new Map([
          [RANK, "a0"],
          ["kind", "colour"],
          ["subject", "w.1"],
        ]),
      ],
    ]),
  ],
]);
const accepted = (tables: CellTables, basis: string, ...subjects: readonly string[]): CellTables => {
  const changes = acceptFindings(tables, {
    kind: "accept",
    findings: subjects.map((subject) => ({ subject, basis })),
    by: "Mara",
    reason: "it never moves",
  });
  return applyChanges(tables, changes).tables ?? new Map();
};
const texts = (tables: CellTables, column: string): readonly string[] =>
  rowOrder(tables.get("choices") ?? new Map()).map((row) => cellOf(tables, "choices", row, column));

describe("acceptFindings", () => {
  it("adds a row for each finding, behind what was there", () => {
    const tables = accepted(start, "wires<=3", "net-split|a", "net-split|b");
    expect(texts(tables, "subject")).toEqual(["w.1", "net-split|a", "net-split|b"]);
    expect(texts(tables, "by")).toEqual(["", "Mara", "Mara"]);
    expect(texts(tables, "basis")).toEqual(["", "wires<=3", "wires<=3"]);
  });

  it("accepts again in the row that it has", () => {
    const once = accepted(start, "wires<=3", "net-split|a");
    const again = accepted(once, "wires<=4", "net-split|a");
    expect(texts(again, "basis")).toEqual(["", "wires<=4"]);
  });

  it("is taken back whole, and leaves other choices", () => {
    const tables = accepted(start, "", "net-split|a", "net-split|b");
    const changes = reopenFindings(tables, { kind: "reopen", subjects: ["net-split|a", "w.1"] });
    expect(texts(applyChanges(tables, changes).tables ?? new Map(), "subject")).toEqual([
      "w.1",
      "net-split|b",
    ]);
  });
});
