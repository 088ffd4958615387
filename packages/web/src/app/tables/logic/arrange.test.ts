import { describe, expect, it } from "vitest";
import { AS_IT_IS, arrange, cellMatches, keepOrder, type TableRow } from "./arrange.ts";

const row = (id: string, cells: Record<string, string>): TableRow => ({ id, cells });
const rows = [
  row("1", { "#": "a0", id: "sw.2", x_mm: "10" }),
  row("2", { "#": "a1", id: "sw.10", x_mm: "9.5", label: "Left lane" }),
  row("3", { "#": "a2", id: "lp.1" }),
];
const ids = (list: readonly TableRow[]): string => list.map((one) => one.id).join("");

describe("arrange", () => {
  it("finds all words anywhere in a row, but not in its rank", () => {
    expect(ids(arrange(rows, { ...AS_IT_IS, text: "lane SW" }))).toBe("2");
    expect(ids(arrange(rows, { ...AS_IT_IS, text: "a1" }))).toBe("");
    expect(ids(arrange(rows, { ...AS_IT_IS, byColumn: { id: "sw", x_mm: "=10" } }))).toBe("1");
    expect(ids(arrange(rows, { ...AS_IT_IS, only: new Set(["3"]) }))).toBe("3");
  });

  it("sorts numbers by value, names by the numbers in them, and blank cells last", () => {
    const by = (column: string, down: boolean) => ids(arrange(rows, { ...AS_IT_IS, sort: { column, down } }));
    expect(by("id", false)).toBe("312");
    expect(by("id", true)).toBe("213");
    expect(by("x_mm", false)).toBe("213");
    expect(by("x_mm", true)).toBe("123");
  });

  it("matches exactly, blank and filled", () => {
    expect(cellMatches("Top", "=top")).toBe(true);
    expect(cellMatches("Top side", "=top")).toBe(false);
    expect(cellMatches("", "=")).toBe(true);
    expect(cellMatches("", "*")).toBe(false);
    expect(cellMatches("x", "*")).toBe(true);
  });

  it("keeps rows in place while they are edited, drops those that are gone and adds new ones", () => {
    const order = ["3", "1"];
    const known = new Set(["1", "2", "3"]);
    expect(keepOrder(order, known, rows)).toBe(order);
    expect(keepOrder(order, known, [...rows.slice(1), row("4", {})])).toEqual(["3", "4"]);
  });
});
