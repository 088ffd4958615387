import { describe, expect, it } from "vitest";
import { cutFaults } from "./check.ts";
import { type CuttingPlan, fewestSheets } from "./fewest.ts";
import { mostValue } from "./most-value.ts";
import { type CutPart, fenceSettings } from "./plan.ts";
import type { CutPiece, CuttingProblem, StockSheet } from "./problem.ts";

const NO_TRIM = { leftMm: 0, rightMm: 0, bottomMm: 0, topMm: 0 };
const QUICK = { steps: 200_000, settingSteps: 0 };

/** A full sheet of plywood, 2440 × 1220 mm. */
const plywood = (changes: Partial<StockSheet> = {}): StockSheet => ({
  widthMm: 2440,
  heightMm: 1220,
  trim: NO_TRIM,
  count: null,
  cost: 1,
  ...changes,
});

const pieces = (widthMm: number, heightMm: number, count: number, mayTurn = false): CutPiece => ({
  widthMm,
  heightMm,
  count,
  mayTurn,
});

const sawn = (changes: Partial<CuttingProblem>): CuttingProblem => ({
  pieces: [],
  sheets: [plywood()],
  kerfMm: 3.2,
  stages: 3,
  firstCut: "either",
  lastTrim: false,
  ...changes,
});

const planOf = (problem: CuttingProblem, effort = QUICK): CuttingPlan => {
  const found = fewestSheets(problem, effort);
  if (!found.found) throw new Error("no plan");
  expect(cutFaults(found.plans, problem)).toEqual([]);
  return found;
};

describe("kerf, trim and grain", () => {
  // 5 × 240 + 4 × 3.2 = 1212.8 of 1220 and 4 × 600 + 3 × 3.2 = 2409.6 of 2440.
  it("leave room for 5 strips of 4 pieces, with two settings of the fence, and not for one more", () => {
    const full = planOf(sawn({ pieces: [pieces(600, 240, 20)] }));
    expect(full).toMatchObject({ cost: 1, lowerBound: 1 });
    expect(full.settings).toEqual([
      { cut: "rip", atMm: 240 },
      { cut: "cross", atMm: 600 },
    ]);
    expect(planOf(sawn({ pieces: [pieces(600, 240, 21)] }))).toMatchObject({ cost: 2, lowerBound: 2 });
  });

  it("count between pieces that would fill the sheet without a kerf", () => {
    const halves = [pieces(1220, 1220, 2)];
    expect(planOf(sawn({ pieces: halves, kerfMm: 0 })).cost).toBe(1);
    expect(planOf(sawn({ pieces: halves }))).toMatchObject({ cost: 2, lowerBound: 2 });
    // The kerf may reach past the edge when there is nothing behind it.
    expect(planOf(sawn({ pieces: [pieces(2439, 1220, 1)] })).cost).toBe(1);
  });

  it("take the trim off every edge", () => {
    const trim = { leftMm: 10, rightMm: 10, bottomMm: 5, topMm: 5 };
    const sheets = [plywood({ trim })];
    expect(planOf(sawn({ sheets, pieces: [pieces(2420, 1210, 1)] })).cost).toBe(1);
    expect(fewestSheets(sawn({ sheets, pieces: [pieces(2421, 1210, 1)] }))).toMatchObject({
      found: false,
      tooLarge: [0],
    });
  });

  it("forbid to turn a piece whose grain matters", () => {
    const upright = (mayTurn: boolean): CuttingProblem => sawn({ pieces: [pieces(600, 2000, 1, mayTurn)] });
    expect(fewestSheets(upright(false))).toMatchObject({ found: false, tooLarge: [0] });
    expect(planOf(upright(true)).cost).toBe(1);
  });
});

describe("stages", () => {
  // 3 × 1 across the foot, above it two columns, the second of two halves: the column's cut is the third change.
  const nested = (stages: number | null, lastTrim = false, firstCut: "rip" | "cross" | "either" = "either") =>
    sawn({
      kerfMm: 0,
      sheets: [plywood({ widthMm: 3, heightMm: 3 })],
      pieces: [pieces(3, 1, 1), pieces(2, 2, 1), pieces(1, 1, 2)],
      stages,
      lastTrim,
      firstCut,
    });

  it("limit how often the direction changes", () => {
    expect(fewestSheets(nested(1), QUICK)).toMatchObject({ found: false, unplaced: [1, 2] });
    expect(planOf(nested(2)).cost).toBe(2);
    expect(planOf(nested(3)).cost).toBe(1);
    expect(planOf(nested(null)).cost).toBe(1);
    expect(planOf(nested(3, false, "rip")).cost).toBe(1);
    expect(planOf(nested(3, false, "cross")).cost).toBe(2);
  });

  it("allow a last trim only when asked to", () => {
    const uneven = (lastTrim: boolean) =>
      sawn({
        kerfMm: 0,
        sheets: [plywood({ widthMm: 2, heightMm: 3 })],
        pieces: [pieces(1, 3, 1), pieces(1, 2, 1)],
        stages: 1,
        firstCut: "cross",
        lastTrim,
      });
    expect(planOf(uneven(true)).cost).toBe(1);
    expect(fewestSheets(uneven(false), QUICK)).toMatchObject({ found: false, unplaced: [1] });
  });
});

describe("stock of several sizes", () => {
  const small = plywood({ widthMm: 1220, cost: 55 });
  const large = plywood({ cost: 100 });

  it("is chosen by cost", () => {
    const four = (sheets: StockSheet[]) => sawn({ sheets, pieces: [pieces(1200, 1200, 3)] });
    expect(planOf(four([large, small]))).toMatchObject({ cost: 155, lowerBound: 155 });
    expect(planOf(four([large, { ...small, cost: 45 }])).cost).toBe(135);
    expect(
      planOf(
        four([
          { ...large, count: 1 },
          { ...small, cost: 60 },
        ]),
      ).cost,
    ).toBe(160);
  });

  it("may not suffice", () => {
    const found = fewestSheets(
      sawn({ sheets: [{ ...large, count: 1 }], pieces: [pieces(1200, 1200, 3)] }),
      QUICK,
    );
    expect(found).toMatchObject({ found: false, unplaced: [0] });
  });
});

describe("fewer settings", () => {
  it("are found with the same sheets", () => {
    const problem = sawn({
      kerfMm: 3,
      pieces: [
        pieces(500, 300, 4, true),
        pieces(310, 410, 5, true),
        pieces(700, 210, 4, true),
        pieces(333, 180, 9, true),
        pieces(290, 270, 6),
      ],
    });
    const plain = planOf(problem);
    const settled = planOf(problem, { steps: 200_000, settingSteps: 1_000_000 });
    expect(settled.cost).toBe(plain.cost);
    expect(settled.settings.length).toBeLessThan(plain.settings.length);
    expect(settled.settings).toEqual(fenceSettings(settled.plans));
  });
});

describe("the checker", () => {
  const problem = sawn({ kerfMm: 3, pieces: [pieces(100, 50, 1), pieces(40, 30, 1, true)] });
  const wasteAfter = (cut: "rip" | "cross", atMm: number, first: CutPart): CutPart => ({
    kind: "cut",
    cut,
    atMm,
    first,
    rest: { kind: "waste" },
  });
  const piece = (n: number, turned = false): CutPart => ({ kind: "piece", piece: n, turned });
  const faultsOf = (...parts: CutPart[]) =>
    cutFaults(
      parts.map((part) => ({ sheet: 0, part })),
      problem,
    ).map(({ kind }) => kind);
  const large = wasteAfter("rip", 50, wasteAfter("cross", 100, piece(0)));
  const small = wasteAfter("rip", 30, wasteAfter("cross", 40, piece(1)));

  it("names each rule that is broken", () => {
    expect(faultsOf(large, small)).toEqual([]);
    expect(faultsOf(large)).toEqual(["count"]);
    expect(faultsOf(large, small, small)).toEqual(["count"]);
    expect(faultsOf(large, wasteAfter("rip", 40, wasteAfter("cross", 30, piece(1, true))))).toEqual([]);
    expect(faultsOf(wasteAfter("rip", 100, wasteAfter("cross", 50, piece(0, true))), small)).toEqual([
      "turned",
    ]);
    expect(faultsOf(wasteAfter("rip", 50, wasteAfter("cross", 99, piece(0))), small)).toEqual(["size"]);
    expect(faultsOf(large, small, piece(7))).toEqual(["unknown-piece"]);
    expect(faultsOf(large, small, wasteAfter("rip", 1220, { kind: "waste" }))).toEqual(["outside"]);
    expect(cutFaults([{ sheet: 4, part: large }], { ...problem, pieces: [] })).toMatchObject([
      { kind: "unknown-sheet", sheet: 4 },
    ]);
    expect(
      cutFaults(
        [{ sheet: 0, part: piece(0) }],
        sawn({ pieces: [pieces(2440, 1220, 1)], sheets: [plywood({ count: 0 })] }),
      ),
    ).toEqual([{ kind: "sheets", sheet: 0, used: 1, available: 0 }]);
    const deep = wasteAfter(
      "rip",
      60,
      wasteAfter("cross", 120, wasteAfter("rip", 50, wasteAfter("cross", 100, piece(0)))),
    );
    expect(faultsOf(deep, small)).toEqual(["stage"]);
    expect(
      cutFaults([{ sheet: 0, part: deep }], { ...problem, pieces: [pieces(100, 50, 1)], lastTrim: true }),
    ).toEqual([]);
  });
});

describe("a mistake in the problem", () => {
  it("is refused", () => {
    expect(() => fewestSheets(sawn({ kerfMm: -1 }))).toThrow(RangeError);
    expect(() => fewestSheets(sawn({ stages: 0 }))).toThrow(RangeError);
    expect(() => fewestSheets(sawn({ pieces: [pieces(0, 1, 1)] }))).toThrow(RangeError);
    expect(() => fewestSheets(sawn({ pieces: [pieces(1, 1, 0.5)] }))).toThrow(RangeError);
    expect(() => fewestSheets(sawn({ sheets: [plywood({ cost: 0 })] }))).toThrow(RangeError);
    expect(() => fewestSheets(sawn({ sheets: [plywood({ trim: { ...NO_TRIM, topMm: -1 } })] }))).toThrow(
      RangeError,
    );
    const worth = { ...pieces(1, 1, 1), value: -1 };
    expect(() => mostValue({ pieces: [worth], sheet: plywood(), kerfMm: 0 })).toThrow(RangeError);
  });

  it("asks for nothing", () => {
    expect(fewestSheets(sawn({}))).toMatchObject({
      found: true,
      cost: 0,
      lowerBound: 0,
      plans: [],
      settings: [],
    });
    expect(mostValue({ pieces: [], sheet: plywood(), kerfMm: 0 })).toMatchObject({ value: 0, upperBound: 0 });
  });
});
