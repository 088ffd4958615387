import { describe, expect, it } from "vitest";
import { doneStates, offcutsOf, stockAfter } from "./cut-rows.ts";

const area = { xMm: 0, yMm: 0, widthMm: 700, heightMm: 300 };
const sheet = (stockId: string, copies: number) => ({
  stockId,
  offcut: false,
  copies,
  widthMm: 2440,
  heightMm: 1220,
  trimMm: 5,
  panels: [],
  offcuts: [area],
  cuts: [],
});
const ply = {
  id: "ply-18",
  partId: "sheet.ply-18",
  widthMm: 1220,
  lengthMm: 2440,
  thicknessMm: 18,
  measuredMm: 17.6,
  count: null,
  isOffcut: false,
};

describe("the stock after cutting", () => {
  it("has the offcuts of all copies, like sizes together", () => {
    expect(offcutsOf({ sheets: [sheet("ply-18", 3), sheet("ply-18", 2)] })).toEqual([
      { stockId: "ply-18", lengthMm: 700, widthMm: 300, count: 5 },
    ]);
    expect(stockAfter([ply], [{ sheets: [sheet("ply-18", 3)] }])).toEqual({
      rows: [
        {
          table: "stock_sheets",
          key: { id: "off.700x300-ply-18" },
          cells: {
            part: "sheet.ply-18",
            width_mm: "300",
            length_mm: "700",
            thickness_mm: "18",
            measured_mm: "17.6",
            count: "3",
            offcut: "yes",
          },
        },
      ],
      gone: [],
    });
  });

  it("adds to a row of the same size, takes counted sheets away and drops an offcut that is used up", () => {
    const kept = { ...ply, id: "off.a", lengthMm: 700, widthMm: 300, count: 1, isOffcut: true };
    const spent = { ...kept, id: "off.b", lengthMm: 900 };
    const stock = [{ ...ply, count: 4 }, kept, spent];
    const none = { ...sheet("off.b", 1), offcuts: [] };
    expect(stockAfter(stock, [{ sheets: [sheet("ply-18", 3), none] }])).toEqual({
      rows: [
        { table: "stock_sheets", key: { id: "ply-18" }, cells: { count: "1" } },
        { table: "stock_sheets", key: { id: "off.a" }, cells: { count: "4" } },
      ],
      gone: [{ table: "stock_sheets", key: { id: "off.b" } }],
    });
  });

  it("keeps an offcut's row when one is used and a like one comes", () => {
    const kept = { ...ply, id: "off.a", lengthMm: 700, widthMm: 300, count: 1, isOffcut: true };
    expect(stockAfter([kept], [{ sheets: [{ ...sheet("off.a", 1) }] }])).toEqual({ rows: [], gone: [] });
  });
});

describe("what a cut frees", () => {
  const panel = { ...area, panelId: "side", panelIds: ["side"], copy: 1, turned: false };
  const cut = (number: number, doneAt: readonly number[]) => ({
    number,
    kind: "rip" as const,
    fenceMm: 300,
    setup: 1,
    line: [0, 0, 1, 0] as const,
    doneIds: doneAt.map(() => "side"),
    doneAt,
  });
  const pattern = {
    ...sheet("ply-18", 1),
    panels: [panel, panel, panel],
    cuts: [cut(1, [2]), cut(2, []), cut(3, [0, 1])],
  };

  it("is told of each panel, also where several have one name", () => {
    expect(doneStates(pattern, new Set([3]))).toEqual(["now", "now", "done"]);
    expect(doneStates(pattern, new Set([1]))).toEqual(["later", "later", "now"]);
    expect(doneStates(pattern, new Set())).toEqual(["later", "later", "later"]);
  });
});
