import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Area,
  advance,
  at,
  extendTo,
  isWholeRows,
  navigate,
  rangeOf,
  wholeColumns,
} from "./selection.ts";

/** 4 rows and a blank one, 3 columns; `#` is filled. */
const FILLED = ["#.#", "#..", "..#", "#.#", "..."];
const area: Area = { rows: 5, last: 3, cols: 3, page: 2, filled: (row, col) => FILLED[row]?.[col] === "#" };
const plain = { ctrl: false, shift: false };
const ctrl = { ctrl: true, shift: false };
const shift = { ctrl: false, shift: true };

describe("navigate", () => {
  it("moves by arrows, pages and to the edges, and stays inside", () => {
    expect(navigate(at(0, 0), "ArrowUp", plain, area)?.active).toEqual({ row: 0, col: 0 });
    expect(navigate(at(1, 1), "ArrowRight", plain, area)?.active).toEqual({ row: 1, col: 2 });
    expect(navigate(at(4, 0), "PageUp", plain, area)?.active).toEqual({ row: 2, col: 0 });
    expect(navigate(at(1, 1), "End", plain, area)?.active).toEqual({ row: 1, col: 2 });
    expect(navigate(at(3, 2), "Home", ctrl, area)?.active).toEqual({ row: 0, col: 0 });
    expect(navigate(at(0, 0), "End", ctrl, area)?.active).toEqual({ row: 3, col: 2 });
    expect(navigate(at(0, 0), "x", plain, area)).toBeNull();
  });

  it("jumps with Ctrl to the end of a run, over a gap to the next filled cell, else to the edge", () => {
    const from = (row: number) => navigate(at(row, 0), "ArrowDown", ctrl, area)?.active.row;
    expect(from(0)).toBe(1);
    expect(from(1)).toBe(3);
    expect(from(3)).toBe(4);
    expect(navigate(at(0, 0), "ArrowRight", ctrl, area)?.active.col).toBe(2);
  });

  it("selects with Shift from a corner that stays", () => {
    const once = navigate(at(1, 1), "ArrowDown", shift, area);
    const twice = once && navigate(once, "ArrowLeft", shift, area);
    expect(twice && rangeOf(twice)).toEqual({ top: 1, left: 0, bottom: 2, right: 1 });
    expect(twice?.active).toEqual({ row: 1, col: 1 });
  });

  it("selects everything, columns and rows without the blank row", () => {
    const all = navigate(at(1, 1), "a", ctrl, area);
    expect(all && rangeOf(all)).toEqual({ top: 0, left: 0, bottom: 3, right: 2 });
    expect(rangeOf(wholeColumns(1, 2, area))).toEqual({ top: 0, left: 1, bottom: 3, right: 2 });
    const rows = navigate(extendTo(at(1, 1), { row: 2, col: 1 }), " ", shift, area);
    expect(rows && rangeOf(rows)).toEqual({ top: 1, left: 0, bottom: 2, right: 2 });
    expect(rows !== null && isWholeRows(rows, area)).toBe(true);
  });
});

describe("advance", () => {
  it("goes to the next cell by Tab and over the end of a row, and down by Enter", () => {
    expect(advance(at(0, 2), true, false, area).active).toEqual({ row: 1, col: 0 });
    expect(advance(at(1, 0), true, true, area).active).toEqual({ row: 0, col: 2 });
    expect(advance(at(4, 2), true, false, area).active).toEqual({ row: 4, col: 2 });
    expect(advance(at(1, 1), false, false, area).active).toEqual({ row: 2, col: 1 });
  });

  it("visits each cell of a selection once before it is back, and leaves the selection as it is", () => {
    const spot = fc.record({ row: fc.nat(4), col: fc.nat(2) });
    fc.assert(
      fc.property(spot, spot, fc.boolean(), (anchor, head, across) => {
        const start = { anchor, head, active: anchor };
        const { top, left, bottom, right } = rangeOf(start);
        const count = (bottom - top + 1) * (right - left + 1);
        fc.pre(count > 1);
        const seen = new Set<string>();
        let now = advance(start, across, false, area);
        for (let i = 0; i < count; i++) {
          seen.add(`${now.active.row} ${now.active.col}`);
          now = advance(now, across, false, area);
        }
        expect(seen.size).toBe(count);
        expect(rangeOf(now)).toEqual(rangeOf(start));
        expect(advance(advance(start, across, false, area), across, true, area).active).toEqual(anchor);
      }),
      { seed: 4 },
    );
  });
});
