import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FastenerFit } from "../../model/index.ts";
import { createMachine, type SomeTables } from "../../testing/book.ts";
import { handLikeness } from "./hand-likeness.ts";
import { symbolLetters } from "./letters.ts";
import { symbolLikeness } from "./symbol-likeness.ts";
import { SymbolSolver, type Symbols } from "./symbol-solver.ts";

interface Screw {
  readonly type: string;
  readonly x: number;
  readonly y?: number;
  readonly side?: "top" | "under";
}

const screwType = (
  id: string,
  length_mm: number,
  diameter_mm = 3,
  kind: "wood-screw" | "standoff" = "wood-screw",
) => ({
  id,
  kind,
  length_mm,
  diameter_mm,
  head: "pan",
  head_diameter_mm: 2 * diameter_mm,
  head_height_mm: 2,
  drive: "cross 1",
  colour: "zinc",
});

const TYPES = [
  screwType("a", 12),
  screwType("b", 13),
  screwType("c", 40, 6),
  { ...screwType("d", 20, 4), head: "hexagon", drive: "hexagon 7 mm" },
];

const book = (screws: readonly Screw[], choices: SomeTables["choices"] = []): SomeTables => ({
  panels: [{ id: "p", width_mm: 500, height_mm: 500, thickness_mm: 13 }],
  fastener_types: TYPES,
  fasteners: screws.map(({ type, x, y, side }, i) => ({
    id: `f${i}`,
    type,
    panel: "p",
    side: side ?? "under",
    x_mm: x,
    y_mm: y ?? 10,
    flange_mm: 1,
  })),
  choices,
});

const solve = (tables: SomeTables, fits: ReadonlyMap<string, FastenerFit> = new Map()): Symbols =>
  new SymbolSolver().solve(createMachine(tables), fits);

const fit = (fastenerId: string, leftMm: number, engagedMm: number): [string, FastenerFit] => [
  fastenerId,
  {
    fastenerId,
    holdsIn: "wood",
    recessMm: 0,
    woodMm: 13,
    reachMm: engagedMm,
    engagedMm,
    leastEngagedMm: 7,
    leftMm,
    hole: null,
  },
];

describe("symbols of screws", () => {
  it("gives every type that is used a letter and a sign of its own", () => {
    const { symbols, likeness } = solve(book(TYPES.map(({ id }, i) => ({ type: id, x: 100 * i }))));
    expect([...symbols.values()].map((s) => s.letter)).toEqual(["A", "B", "C", "D"]);
    expect(new Set([...symbols.values()].map((s) => `${s.shape} ${s.shade}`)).size).toBe(4);
    expect(likeness.lowerBound).toBeLessThanOrEqual(likeness.value);
    expect([...solve(book([{ type: "c", x: 0 }])).symbols.keys()]).toEqual(["c"]);
  });

  it("tells apart best what is alike in the hand and stands side by side", () => {
    const { symbols } = solve(book(TYPES.map(({ id }, i) => ({ type: id, x: 20 * i }))));
    const sign = (id: string) => symbols.get(id) ?? ({ shape: "circle", shade: "solid" } as const);
    const all = TYPES.flatMap((a, i) => TYPES.slice(0, i).map((b) => symbolLikeness(sign(a.id), sign(b.id))));
    expect(symbolLikeness(sign("a"), sign("b"))).toBe(Math.min(...all));
  });

  it("keeps what is pinned and settled, and says what it cannot keep", () => {
    const screws = TYPES.map(({ id }, i) => ({ type: id, x: 100 * i }));
    const { symbols, findings } = solve(
      book(screws, [
        { kind: "symbol", subject: "b", value: "A square dotted", held: "pinned" },
        { kind: "symbol", subject: "a", value: "A circle solid", held: "settled" },
        { kind: "symbol", subject: "c", value: "K moon open", held: "settled" },
        { kind: "symbol", subject: "d", value: "K blob", held: "pinned" },
      ]),
    );
    expect(symbols.get("b")).toEqual({ typeId: "b", letter: "A", shape: "square", shade: "dotted" });
    expect(symbols.get("c")).toEqual({ typeId: "c", letter: "K", shape: "moon", shade: "open" });
    expect(symbols.get("a")?.letter).toBe("B");
    expect(findings.map((f) => [f.rule, f.subjects[0]])).toEqual([
      ["choice-not-followed", "d"],
      ["settled-dropped", "a"],
    ]);
  });

  it("tells of pinned symbols that are too alike", () => {
    const pin = (subject: string, value: string) =>
      ({ kind: "symbol", subject, value, held: "pinned" }) as const;
    const screws = [
      { type: "a", x: 0 },
      { type: "b", x: 20 },
    ];
    const alike = solve(book(screws, [pin("a", "A circle open"), pin("b", "B square open")])).findings;
    expect(alike.map((f) => f.rule)).toEqual(["symbol-alike"]);
    expect(solve(book(screws, [pin("a", "A circle open"), pin("b", "B cross solid")])).findings).toEqual([]);
  });

  it("repeats signs beside other letters when there are more types than signs", () => {
    const types = Array.from({ length: 60 }, (_, i) =>
      screwType(`t${String(i).padStart(2, "0")}`, 5 + i, 2 + (i % 5)),
    );
    const tables = book(
      types.map(({ id }, i) => ({ type: id, x: (i % 20) * 25, y: 25 * Math.floor(i / 20) })),
    );
    const { symbols } = solve({ ...tables, fastener_types: types });
    expect(new Set([...symbols.values()].map((s) => s.letter)).size).toBe(60);
    expect(new Set([...symbols.values()].map((s) => `${s.shape} ${s.shade}`)).size).toBeGreaterThan(30);
  });

  it("is from scratch what it is from memory, and chooses nothing anew while no pair comes or goes (seed 3)", () => {
    const screw = fc.record({
      type: fc.constantFrom("a", "b", "c", "d"),
      x: fc.integer({ min: 0, max: 200 }),
      y: fc.integer({ min: 0, max: 200 }),
      side: fc.constantFrom<("top" | "under")[]>("top", "under"),
    });
    fc.assert(
      fc.property(fc.array(fc.array(screw, { maxLength: 12 }), { minLength: 2, maxLength: 4 }), (states) => {
        const solver = new SymbolSolver();
        for (const screws of states) {
          const tables = book(screws);
          const remembered = solver.solve(createMachine(tables), new Map());
          solver.sweep();
          expect(remembered).toEqual(solve(tables));
        }
      }),
      { seed: 3, numRuns: 30 },
    );
    const solver = new SymbolSolver();
    const before = solver.solve(
      createMachine(
        book([
          { type: "a", x: 0 },
          { type: "b", x: 50 },
        ]),
      ),
      new Map(),
    );
    solver.sweep();
    const after = solver.solve(
      createMachine(
        book([
          { type: "a", x: 0 },
          { type: "b", x: 51 },
        ]),
      ),
      new Map(),
    );
    expect(after.symbols).toBe(before.symbols);
  });
});

describe("letters", () => {
  it("leave out what is taken for a figure, and go on with two", () => {
    const all = Array.from({ length: 462 }, (_, i) => symbolLetters(i));
    expect(new Set(all).size).toBe(462);
    expect(all.join("")).not.toMatch(/[IOQSZ]/);
    expect([all[0], all[20], all[21], all[22], all[461]]).toEqual(["A", "Y", "AA", "AB", "YY"]);
  });
});

describe("likeness in the hand", () => {
  const [a, b, c] = TYPES.map(
    (type) => createMachine({ ...book([]), fastener_types: [type] }).book.tables.fastener_types[0],
  );
  it("is 1 for the same, high for near lengths, low for one clear difference", () => {
    if (a === undefined || b === undefined || c === undefined) throw new Error("no types");
    expect(handLikeness(a, a)).toBe(1);
    expect(handLikeness(a, b)).toBeGreaterThan(0.7);
    expect(handLikeness(a, b)).toBe(handLikeness(b, a));
    expect(handLikeness(a, c)).toBeLessThan(0.1);
    expect(handLikeness(a, { ...a, kind: "nut" })).toBeLessThanOrEqual(0.1);
    expect(handLikeness(a, { ...a, colour: "black" })).toBeCloseTo(0.4, 9);
  });
});

describe("screws that are swapped with harm", () => {
  const pair = [
    { type: "a", x: 0 },
    { type: "b", x: 20 },
  ];

  it("are told of when the longer one would come through or the shorter one holds too little", () => {
    const { findings } = solve(book(pair), new Map([fit("f0", 0.5, 7.5), fit("f1", 3, 7.5)]));
    expect(findings.map((f) => [f.rule, f.severity, f.subjects, f.numbers.harm])).toEqual([
      ["screw-lookalike", "warning", ["f0", "f1", "a", "b"], "through"],
      ["screw-lookalike", "note", ["f1", "f0", "b", "a"], "short"],
    ]);
  });

  it("are left alone when nothing happens, when they stand apart or on two sides, or look different", () => {
    const fits = new Map([fit("f0", 0.5, 7.5), fit("f1", 3, 7.5)]);
    const rules = (tables: SomeTables, given = fits) => solve(tables, given).findings.map((f) => f.rule);
    expect(rules(book(pair), new Map([fit("f0", 3, 10), fit("f1", 3, 10)]))).toEqual([]);
    expect(
      rules(
        book([
          { type: "a", x: 0 },
          { type: "b", x: 31 },
        ]),
      ),
    ).toEqual([]);
    expect(
      rules(
        book([
          { type: "a", x: 0 },
          { type: "b", x: 20, side: "top" },
        ]),
      ),
    ).toEqual([]);
    expect(
      rules(
        book([
          { type: "a", x: 0 },
          { type: "c", x: 20 },
        ]),
      ),
    ).toEqual([]);
  });

  it("are stand-offs of two heights under one board", () => {
    const tall = { ...screwType("t", 9, 3.5, "standoff"), head_height_mm: 12 };
    const tables = book([
      { type: "s", x: 0 },
      { type: "t", x: 20 },
    ]);
    const types = [{ ...tall, id: "s", head_height_mm: 10 }, tall];
    const { findings } = solve({ ...tables, fastener_types: types });
    expect(findings.map((f) => f.numbers.harm)).toEqual(["askew", "askew"].slice(0, 1));
    expect(findings[0]?.numbers.pairs).toBe(2);
  });
});
