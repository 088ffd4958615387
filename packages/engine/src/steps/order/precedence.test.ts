import { describe, expect, it } from "vitest";
import { FasteningSolver } from "../../fastening/index.ts";
import type { HarnessResult, HarnessRoute, Machine, Place, Precedence } from "../../model/index.ts";
import { createMachine, type SomeTables } from "../../testing/book.ts";
import { breakLoops } from "./loops.ts";
import { OrderSolver } from "./order-solver.ts";
import { itemPrecedence } from "./precedence.ts";

const PANEL = { id: "pf", purpose: "playfield", width_mm: 500, height_mm: 500, thickness_mm: 12 } as const;
const device = (id: string, x_mm: number, y_mm: number) =>
  ({ id, type: "lamp", panel: "pf", side: "under", x_mm, y_mm }) as const;
const board = (id: string, x_mm: number, y_mm: number) =>
  ({ id, type: "board", panel: "pf", side: "under", x_mm, y_mm }) as const;

/** Lamps of 20 × 20 × 12 with two terminals, and boards of 60 × 60 on stand-offs of 30 mm with a plug. */
const BASE: SomeTables = {
  panels: [PANEL],
  device_types: [{ id: "lamp", class: "lamp", width_mm: 20, depth_mm: 20, height_mm: 12 }],
  terminals: [{ device_type: "lamp", terminal: "1", family: "lug" }],
  board_types: [{ id: "board", width_mm: 60, depth_mm: 60, height_mm: 10, standoff_mm: 30 }],
  connector_families: [
    { id: "lug", kind: "lug" },
    { id: "hsg", kind: "housing", pitch_mm: 4 },
  ],
  connectors: [
    { id: "board.j1", board_type: "board", name: "j1", family: "hsg", ways: 2, x_mm: 30, y_mm: 30 },
    { id: "il", name: "il", family: "hsg", ways: 2 },
  ],
  harnesses: [
    { id: "h1", number: 1 },
    { id: "h2", number: 2 },
  ],
  fastener_types: [
    {
      id: "screw",
      kind: "wood-screw",
      diameter_mm: 3,
      length_mm: 9,
      head_diameter_mm: 6,
      head_height_mm: 2,
      drive: "cross 1",
    },
    {
      id: "standoff",
      kind: "standoff",
      diameter_mm: 3,
      length_mm: 9,
      head_diameter_mm: 6,
      head_height_mm: 30,
      drive: "hexagon 5.5 mm",
    },
  ],
};

/** A harness as it is laid: landings, and straight branches between places on the underside. */
function laid(
  machine: Machine,
  id: string,
  landingIds: readonly string[],
  way: readonly (readonly [number, number])[] = [],
): HarnessResult {
  const at = ([xMm, yMm]: readonly [number, number]): Place => ({
    panelId: "pf",
    side: "under",
    xMm,
    yMm,
    zMm: 0,
    rotationDeg: 0,
  });
  const nodes: HarnessRoute["nodes"] = [
    ...way.map((p, i) => ({ id: `wp${i}`, kind: "waypoint" as const, place: at(p), breakout: false })),
    ...landingIds.flatMap((landing) => {
      const place = machine.landings.get(landing)?.place;
      return place === undefined
        ? []
        : [{ id: `landing:${landing}`, kind: "landing" as const, place, breakout: false }];
    }),
  ];
  const branches: HarnessRoute["branches"] = [
    ...way
      .slice(1)
      .map((_, i) => ({ id: `ln${i}`, kind: "lane" as const, a: `wp${i}`, b: `wp${i + 1}`, routeMm: 1 })),
    ...(way.length === 0 ? [] : landingIds).map((landing) => ({
      id: `tail:${landing}`,
      kind: "tail" as const,
      a: "wp0",
      b: `landing:${landing}`,
      routeMm: 1,
    })),
  ];
  const harness = machine.harnesses.get(id);
  if (harness === undefined) throw new Error(`there is no harness ${id}`);
  const none = { value: 0, lowerBound: 0, gap: 0 };
  return {
    harness,
    labels: { en: id, zh: id },
    wires: [],
    splices: [],
    branches: [],
    landingIds,
    colours: none,
    route: {
      harnessId: id,
      rootId: "wp0",
      nodes,
      branches,
      paths: new Map(),
      spliceAt: new Map(),
      unreached: [],
      work: { breakouts: 0, ties: 0, insertions: 0, splices: 0, minutes: 0, metres: 0, total: none },
    },
    pinboard: {
      harnessId: id,
      widthMm: 1,
      heightMm: 1,
      kind: "planar",
      side: "under",
      nodes: [],
      branches: [],
      holders: [],
      bendPegs: [],
      crossings: 0,
      overlaps: 0,
      area: none,
    },
  };
}

type Lay = (machine: Machine) => readonly HarnessResult[];

function precedenceOf(tables: SomeTables, lay: Lay = () => []): readonly Precedence[] {
  const { edges } = solved(tables, lay);
  return edges;
}

function solved(tables: SomeTables, lay: Lay = () => []) {
  const machine = createMachine({ ...BASE, ...tables });
  const harnesses = new Map(lay(machine).map((result) => [result.harness.id, result]));
  const { fastening } = new FasteningSolver().solve(machine, harnesses);
  const edges = itemPrecedence(machine, fastening, harnesses);
  return { edges, ordered: new OrderSolver().solve(machine, fastening, harnesses) };
}

const plain = (edges: readonly Precedence[]): readonly string[] =>
  edges.map(({ beforeId, afterId, why, at }) => `${beforeId} < ${afterId} ${why} ${at}`);

describe("itemPrecedence", () => {
  it("puts a lamp before the board over it, and before the one that hides its screw", () => {
    const tables: SomeTables = {
      devices: [device("over", 130, 130), device("beside", 230, 130), device("free", 400, 400)],
      boards: [board("board1", 100, 100), board("board2", 220, 100)],
      fasteners: [
        {
          id: "f1",
          type: "screw",
          panel: "pf",
          side: "under",
          x_mm: 215,
          y_mm: 130,
          holds: "beside",
          flange_mm: 1,
        },
        {
          id: "f2",
          type: "screw",
          panel: "pf",
          side: "under",
          x_mm: 370,
          y_mm: 400,
          holds: "free",
          flange_mm: 1,
        },
      ],
    };
    expect(plain(precedenceOf(tables))).toEqual([
      "beside < board2 covers beside",
      "over < board1 covers over",
    ]);
    // A screw within the outline of the board next to its lamp.
    const moved = { ...tables, devices: [device("over", 130, 130), device("beside", 205, 130)] };
    expect(
      plain(precedenceOf({ ...moved, boards: [board("board1", 100, 100), board("board2", 210, 100)] })),
    ).toEqual(["beside < board2 hides f1", "over < board1 covers over"]);
  });

  it("puts a stand-off before its board, and names it by itself", () => {
    const fasteners = [
      { id: "so", type: "standoff", panel: "pf", side: "under", x_mm: 105, y_mm: 105, holds: "board1" },
    ] as const;
    expect(plain(precedenceOf({ boards: [board("board1", 100, 100)], fasteners }))).toEqual([
      "so < board1 stands so",
    ]);
  });

  it("puts a harness after what it ends on, and an in-line connector after both", () => {
    const tables: SomeTables = {
      devices: [device("lamp", 300, 300)],
      boards: [board("board1", 100, 100)],
      inlines: [{ id: "il1", connector: "il", panel: "pf", side: "under", x_mm: 400, y_mm: 100 }],
    };
    const lay: Lay = (machine) => [
      laid(machine, "h1", ["lamp", "board1:j1", "il1:a"]),
      laid(machine, "h2", ["il1:b"]),
    ];
    expect(plain(precedenceOf(tables, lay))).toEqual([
      "board1 < h1 stands board1:j1",
      "h1 < il1 stands il1:a",
      "h2 < il1 stands il1:b",
      "lamp < h1 stands lamp",
    ]);
  });

  it("wires what lies beneath a board before the board, unless it ends on it", () => {
    const tables: SomeTables = {
      devices: [device("beneath", 130, 130), device("far", 400, 400)],
      boards: [board("board1", 100, 100), board("board2", 200, 100), board("board3", 300, 100)],
    };
    const lay: Lay = (machine) => [
      laid(
        machine,
        "h1",
        ["beneath", "far", "board3:j1"],
        [
          [180, 130],
          [280, 130],
        ],
      ),
    ];
    expect(plain(precedenceOf(tables, lay)).filter((row) => row.includes("h1"))).toEqual([
      "beneath < h1 stands beneath",
      "board3 < h1 stands board3:j1",
      "far < h1 stands far",
      "h1 < board1 wired landing:beneath",
      "h1 < board2 wired ln0",
    ]);
  });

  it("follows the designer's rules, and tells of those that say nothing", () => {
    const { ordered } = solved({
      devices: [device("a", 100, 100), device("b", 200, 100)],
      step_rules: [
        { id: "r1", first_item: "b", then_item: "a" },
        { id: "r2", first_item: "gone", then_harness: "h1" },
        { id: "r3", first_item: "a", then_item: "a" },
      ],
    });
    expect(plain(ordered.edges)).toEqual(["b < a rule r1"]);
    expect(ordered.findings.map(({ rule, subjects, numbers }) => [rule, subjects, numbers])).toEqual([
      ["rule-idle", ["r2", "gone", "h1"], { missing: "first" }],
      ["rule-idle", ["r3", "a", "a"], { missing: "same" }],
    ]);
  });

  it("gives the designer's rule up before what is hidden, and says where the loop is", () => {
    const { ordered } = solved({
      devices: [device("over", 130, 130)],
      boards: [board("board1", 100, 100)],
      step_rules: [{ id: "r1", first_item: "board1", then_item: "over" }],
    });
    expect(plain(ordered.edges)).toEqual(["over < board1 covers over"]);
    expect(ordered.findings).toEqual([
      {
        rule: "order-loop",
        severity: "error",
        subjects: ["board1", "over"],
        numbers: { why: "rule", at: "r1", weight: 1 },
        accepted: null,
      },
    ]);
  });
});

describe("breakLoops", () => {
  const edge = (beforeId: string, afterId: string, why: Precedence["why"], at = "x"): Precedence => ({
    beforeId,
    afterId,
    why,
    at,
  });

  it("shows the shortest loop of what is given up, and leaves out what follows from others", () => {
    const ordered = breakLoops([
      edge("a", "b", "hides"),
      edge("b", "c", "covers"),
      edge("c", "a", "wired", "landing:l"),
      edge("a", "c", "hides"),
      edge("d", "b", "wired", "ln"),
      edge("c", "d", "stands"),
      edge("d", "a", "hides-nut"),
    ]);
    expect(plain(ordered.givenUp)).toEqual(["c < a wired landing:l", "d < a hides-nut x", "d < b wired ln"]);
    expect(ordered.findings.map(({ subjects, severity }) => [subjects, severity])).toEqual([
      [["c", "a"], "warning"],
      [["d", "a", "c"], "error"],
    ]);
    expect(plain(ordered.edges)).toEqual(["a < b hides x", "b < c covers x", "c < d stands x"]);
    expect([ordered.weight, ordered.lowerBound]).toEqual([38, 38]);
  });

  it("keeps the weightiest reason of each pair", () => {
    expect(plain(breakLoops([edge("a", "b", "rule", "r"), edge("a", "b", "covers", "a")]).edges)).toEqual([
      "a < b covers a",
    ]);
  });
});
