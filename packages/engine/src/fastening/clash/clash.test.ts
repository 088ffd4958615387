import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Finding, type HarnessResult, Resolver } from "../../model/index.ts";
import { createBook, createMachine, createShop, type SomeTables } from "../../testing/book.ts";
import { SolidsSolver } from "../solids/solids-solver.ts";
import { ClashSolver } from "./clash-solver.ts";
import { boardHoles } from "./stand-offs.ts";

const PANEL = { id: "pf", width_mm: 500, height_mm: 1000, thickness_mm: 13 } as const;
const TOP = { panel: "pf", side: "top" } as const;
const NO_HARNESSES: ReadonlyMap<string, HarnessResult> = new Map();

const find = (some: SomeTables): readonly Finding[] => {
  const machine = createMachine({ panels: [PANEL], ...some });
  return new ClashSolver().solve(machine, new SolidsSolver().solve(machine), NO_HARNESSES);
};

const rules = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ rule, subjects }) => `${rule} ${subjects.join(" ")}`);

/** Two boxes of 20 × 10 × 30 mm whose middles are `apart` mm apart in x. */
const two = (apart: number, b: object = {}): SomeTables => ({
  device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30 }],
  devices: [
    { id: "a", type: "dt", ...TOP, x_mm: 100, y_mm: 100 },
    { id: "b", type: "dt", ...TOP, x_mm: 100 + apart, y_mm: 100, ...b },
  ],
});

describe("solids beside each other", () => {
  test("an overlap is an error with its area and heights", () => {
    const [finding, ...more] = find(two(18, { z_mm: 10 }));
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ rule: "solids-clash", severity: "error", subjects: ["a", "b"] });
    expect(finding?.numbers).toEqual({
      gap_mm: 0,
      wanted_mm: 0.5,
      overlap_mm2: 20,
      from_mm: 10,
      to_mm: 30,
      moves: false,
    });
  });

  test("a touch is a joint, a sliver too; a gap that is too narrow is a warning", () => {
    expect(find(two(20))).toEqual([]);
    expect(find(two(19.7))).toEqual([]);
    expect(find(two(20.3))).toMatchObject([{ severity: "warning", numbers: { gap_mm: 0.3 } }]);
    expect(find(two(20.5))).toEqual([]);
  });

  test("above each other they are no matter", () => {
    expect(find(two(0, { z_mm: 30 }))).toEqual([]);
    expect(rules(find(two(0, { z_mm: 29 })))).toEqual(["solids-clash a b"]);
    expect(find(two(0, { side: "under" }))).toEqual([]);
  });

  test("two things that carry current may not touch", () => {
    const elements: SomeTables = {
      elements: [{ id: "e", device_type: "dt", kind: "contact", from: "1", to: "2" }],
      terminals: ["1", "2"].map((terminal) => ({ device_type: "dt", terminal, family: "lug" })),
      connector_families: [{ id: "lug" }],
    };
    expect(find({ ...two(20), ...elements })).toMatchObject([
      { severity: "warning", numbers: { gap_mm: 0 } },
    ]);
  });

  test("what moves keeps its clearance on all sides", () => {
    const body = { id: "bo", device_type: "dt", width_mm: 20, depth_mm: 10, moves: true } as const;
    const moving = (apart: number, z: number): SomeTables => ({
      ...two(apart, { z_mm: z }),
      bodies: [{ ...body, from_mm: 0, to_mm: 30 }],
    });
    expect(find(moving(20.8, 0))).toMatchObject([{ numbers: { wanted_mm: 1, gap_mm: 0.8, moves: true } }]);
    expect(find(moving(21, 0))).toEqual([]);
    expect(find(moving(0, 30.4))).toMatchObject([{ numbers: { gap_mm: 0.4 } }]);
    expect(find(moving(0, 31))).toEqual([]);
  });

  test("a fastener and what it holds are one thing", () => {
    const screw = {
      id: "w",
      kind: "wood-screw",
      diameter_mm: 4,
      length_mm: 12,
      head_diameter_mm: 8,
      head_height_mm: 3,
    } as const;
    const some = (holds: string | null): SomeTables => ({
      ...two(40),
      fastener_types: [screw],
      fasteners: [{ id: "f", type: "w", ...TOP, x_mm: 105, y_mm: 100, flange_mm: 2, holds }],
    });
    expect(find(some("a"))).toEqual([]);
    expect(rules(find(some(null)))).toEqual(["solids-clash a f"]);
    expect(rules(find(some("b")))).toEqual(["solids-clash a f"]);
  });
});

describe("boards", () => {
  const board = (height: number, holes = ""): SomeTables => ({
    board_types: [{ id: "bt", width_mm: 80, depth_mm: 40, height_mm: 14, standoff_mm: 12, holes }],
    boards: [{ id: "bd", type: "bt", ...TOP, x_mm: 100, y_mm: 100 }],
    device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: height }],
    devices: [{ id: "a", type: "dt", ...TOP, x_mm: 140, y_mm: 120 }],
  });

  test("a board over something that is too tall for its stand-offs", () => {
    expect(find(board(10))).toEqual([]);
    expect(find(board(11))).toMatchObject([
      {
        rule: "board-over",
        severity: "warning",
        subjects: ["bd", "a"],
        numbers: { gap_mm: 1, wanted_mm: 2 },
      },
    ]);
    expect(find(board(13))).toMatchObject([{ rule: "board-over", severity: "error" }]);
    expect(rules(find(board(40)))).toEqual(["board-over bd a"]);
  });

  test("stand-offs stand under the holes, as high as the board wants", () => {
    const standOff = (x: number, height: number): SomeTables => ({
      ...board(2, "4,4 76,36"),
      fastener_types: [
        {
          id: "so",
          kind: "standoff",
          diameter_mm: 3,
          length_mm: 9,
          head_diameter_mm: 6,
          head_height_mm: height,
        },
      ],
      fasteners: [
        { id: "f1", type: "so", ...TOP, x_mm: 104, y_mm: 104, holds: "bd" },
        { id: "f2", type: "so", ...TOP, x_mm: x, y_mm: 136, holds: "bd" },
      ],
    });
    expect(find(standOff(176, 12))).toEqual([]);
    expect(rules(find(standOff(176, 10)))).toEqual(["standoff-height f1 bd", "standoff-height f2 bd"]);
    expect(find(standOff(170, 12))).toMatchObject([
      { rule: "standoff-missing", subjects: ["bd"], numbers: { hole: 2, x_mm: 176, y_mm: 136 } },
    ]);
    expect(boardHoles("4,4 x 3 7,8,9 5,6")).toEqual([
      { xMm: 4, yMm: 4 },
      { xMm: 5, yMm: 6 },
    ]);
  });
});

describe("panels", () => {
  const through = (cut: object | null, body: object = {}): SomeTables => ({
    device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30 }],
    devices: [{ id: "a", type: "dt", panel: "pf", side: "under", x_mm: 100, y_mm: 100 }],
    bodies: [{ id: "pin", device_type: "dt", round: true, width_mm: 6, from_mm: -20, to_mm: 0, ...body }],
    cutouts:
      cut === null
        ? []
        : [
            {
              id: "c",
              ...TOP,
              purpose: "mechanism",
              shape: "circle",
              x_mm: 100,
              y_mm: 100,
              width_mm: 8,
              ...cut,
            },
          ],
  });

  test("a part passes through the panel only where that is open", () => {
    expect(find(through({}))).toEqual([]);
    expect(find(through(null))).toMatchObject([
      {
        rule: "no-opening",
        severity: "error",
        subjects: ["a", "pf"],
        numbers: { part: "pin", opening: "none" },
      },
    ]);
    expect(find(through({ width_mm: 5 }))).toMatchObject([{ numbers: { opening: "small" } }]);
    expect(find(through({ shape: "rect", height_mm: 8 }))).toEqual([]);
    expect(rules(find(through({ depth_mm: 9 })))).toEqual(["no-opening a pf"]);
  });

  test("a pocket that is deep enough takes what only goes into the wood", () => {
    const into = { from_mm: -5 };
    expect(find(through({ side: "under", depth_mm: 6 }, into))).toEqual([]);
    expect(rules(find(through({ side: "under", depth_mm: 4 }, into)))).toEqual(["no-opening a pf"]);
  });

  test("what moves in an opening needs its clearance there", () => {
    expect(find(through({ width_mm: 8.1 }, { moves: true }))).toEqual([]);
    expect(rules(find(through({ width_mm: 7.5 }, { moves: true })))).toEqual(["no-opening a pf"]);
  });

  test("two openings that meet are one", () => {
    const some = through({ shape: "rect", width_mm: 4, height_mm: 8, x_mm: 98 });
    const right = { ...some.cutouts?.[0], id: "d", x_mm: 102 };
    expect(find({ ...some, cutouts: [...(some.cutouts ?? []), right] })).toEqual([]);
    expect(rules(find(some))).toEqual(["no-opening a pf"]);
  });

  test("a type that reaches through finds nothing to reach through", () => {
    const some: SomeTables = {
      ...through(null),
      bodies: [],
      device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30, reach_mm: 5 }],
    };
    expect(find(some)).toMatchObject([{ rule: "no-opening", numbers: { part: "reach", opening: "none" } }]);
  });

  test("what lies on the face stays on the panel", () => {
    const at = (x: number): SomeTables => ({
      device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30 }],
      devices: [{ id: "a", type: "dt", ...TOP, x_mm: x, y_mm: 100 }],
    });
    expect(find(at(490))).toEqual([]);
    expect(find(at(495))).toMatchObject([
      { rule: "off-panel", severity: "warning", subjects: ["a", "pf"], numbers: { over_mm: 5, off: false } },
    ]);
    expect(find(at(520))).toMatchObject([{ severity: "error", numbers: { off: true } }]);
  });
});

describe("poses", () => {
  const GLASS = { id: "gl", purpose: "glass", width_mm: 500, height_mm: 1000, thickness_mm: 5 } as const;
  const room = (z: number, lid: object, some: SomeTables = {}): SomeTables => ({
    panels: [PANEL, { id: "lid", width_mm: 500, height_mm: 1000, thickness_mm: 10 }],
    poses: [{ id: "open" }, { id: "shut" }],
    pose_places: [
      { pose: "shut", panel: "pf" },
      { pose: "shut", panel: "lid", z_mm: z, ...lid },
      { pose: "open", panel: "pf" },
      { pose: "open", panel: "lid", x_mm: 2000 },
    ],
    device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30 }],
    devices: [
      { id: "a", type: "dt", ...TOP, x_mm: 100, y_mm: 100 },
      { id: "b", type: "dt", panel: "lid", side: "under", x_mm: 100, y_mm: 100 },
    ],
    ...some,
  });

  test("things of two panels meet in the pose that brings them together", () => {
    expect(find(room(80, {}))).toEqual([]);
    expect(find(room(72, {}))).toMatchObject([
      {
        rule: "pose-clash",
        severity: "warning",
        subjects: ["a", "b"],
        numbers: { poses: "shut", gap_mm: 2 },
      },
    ]);
    expect(find(room(60, {}))).toMatchObject([
      { severity: "error", subjects: ["a", "b"], numbers: { overlap_mm2: 200, gap_mm: 0 } },
    ]);
  });

  test("a turned panel is where its pose turns it", () => {
    // Turned over about x, the lid's underside looks up and its top face lies below: nothing of it hangs down.
    const over = { rx_deg: 180, y_mm: 200 };
    expect(rules(find(room(33, over)))).toEqual([]);
    expect(find(room(31, over))).toMatchObject([{ subjects: ["a", "lid"], numbers: { gap_mm: 1 } }]);
    expect(find(room(25, over))).toMatchObject([{ subjects: ["a", "lid"], numbers: { overlap_mm2: 200 } }]);
    expect(rules(find(room(60, { rz_deg: 90 })))).toEqual([]);
    expect(rules(find(room(60, { rz_deg: 90, x_mm: 200 })))).toEqual(["pose-clash a b"]);
  });

  test("a thing may pass through another panel where that is open", () => {
    const low = (width: number): SomeTables =>
      room(
        20,
        {},
        {
          devices: [{ id: "a", type: "dt", ...TOP, x_mm: 100, y_mm: 100 }],
          cutouts: [
            {
              id: "c",
              panel: "lid",
              side: "top",
              shape: "rect",
              x_mm: 100,
              y_mm: 100,
              width_mm: width,
              height_mm: 20,
            },
          ],
        },
      );
    expect(find(low(40))).toEqual([]);
    expect(find(low(24))).toMatchObject([
      { subjects: ["a", "lid"], severity: "warning", numbers: { gap_mm: 2 } },
    ]);
    expect(find(low(10))).toMatchObject([{ subjects: ["a", "lid"], severity: "error" }]);
  });

  test("panels that only ever stand in one way are joined; others must not cut each other", () => {
    const bare = { devices: [] };
    expect(rules(find(room(-5, {}, bare)))).toEqual(["pose-clash lid pf"]);
    expect(find(room(10, {}, bare))).toEqual([]);
    const { pose_places = [] } = room(-5, {});
    const one = pose_places.filter(({ pose }) => pose === "shut");
    expect(find(room(-5, {}, { ...bare, pose_places: one }))).toEqual([]);
  });

  test("the glass wants its own clearance", () => {
    const under = (z: number): SomeTables => ({
      ...room(0, {}),
      panels: [PANEL, GLASS],
      devices: [{ id: "a", type: "dt", ...TOP, x_mm: 100, y_mm: 100 }],
      pose_places: [
        { pose: "shut", panel: "pf" },
        { pose: "shut", panel: "gl", z_mm: z },
      ],
    });
    expect(find(under(45))).toEqual([]);
    expect(find(under(42))).toMatchObject([
      {
        rule: "glass-clearance",
        severity: "warning",
        subjects: ["a", "gl"],
        numbers: { gap_mm: 7, wanted_mm: 10, poses: "shut" },
      },
    ]);
    expect(find(under(33))).toMatchObject([{ rule: "glass-clearance", severity: "error" }]);
  });
});

describe("memory of clashes", () => {
  /** A field of boxes with some boards and screws between them, and a lid over it. */
  const field = (columns: number, rows: number): SomeTables => ({
    panels: [
      { ...PANEL, width_mm: 60 * columns, height_mm: 60 * rows },
      { id: "lid", width_mm: 100, height_mm: 100, thickness_mm: 10 },
    ],
    poses: [{ id: "shut" }],
    pose_places: [
      { pose: "shut", panel: "pf" },
      { pose: "shut", panel: "lid", z_mm: 70, rx_deg: 6 },
    ],
    device_types: [
      { id: "dt", width_mm: 50, depth_mm: 30, height_mm: 30 },
      { id: "hang", width_mm: 40, depth_mm: 40, height_mm: 25 },
    ],
    devices: [
      ...Array.from({ length: columns * rows }, (_, i) => ({
        id: `d${i}`,
        type: "dt",
        ...TOP,
        x_mm: 30 + 60 * (i % columns),
        y_mm: 30 + 60 * Math.floor(i / columns),
      })),
      { id: "hung", type: "hang", panel: "lid", side: "under", x_mm: 50, y_mm: 50 },
    ],
  });

  test("after one moved thing only the cells that it touches are looked at again, however large the panel", () => {
    const looked = [6, 24].map((size) => {
      const resolver = new Resolver();
      const [solids, clash] = [new SolidsSolver(), new ClashSolver()];
      const shop = createShop();
      const book = createBook(field(size, size));
      const run = (x: number): number => {
        const before = clash.computed;
        const devices = book.tables.devices.map((d, i) => (i === 3 ? { ...d, x_mm: d.x_mm + x } : d));
        const machine = resolver.resolve({ ...book, tables: { ...book.tables, devices } }, shop);
        clash.solve(machine, solids.solve(machine), NO_HARNESSES);
        for (const part of [resolver, solids, clash]) part.sweep();
        return clash.computed - before;
      };
      run(0);
      return run(7);
    });
    expect(looked[0]).toBeLessThan(10);
    expect(looked[1]).toBe(looked[0]);
  });

  test("remembered findings are those from scratch, over random edits", () => {
    const edit = fc.record({
      i: fc.nat(12),
      x: fc.integer({ min: 0, max: 240 }),
      y: fc.integer({ min: 0, max: 240 }),
      turn: fc.integer({ min: 0, max: 90 }),
      lift: fc.integer({ min: 40, max: 100 }),
      clear: fc.constantFrom(0.5, 5),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const resolver = new Resolver();
        const [solids, clash] = [new SolidsSolver(), new ClashSolver()];
        let book = createBook(field(4, 3));
        let shop = createShop();
        for (const { i, x, y, turn, lift, clear } of edits) {
          const t = book.tables;
          if (shop.numbers.clear_solids_mm !== clear) shop = createShop({}, { clear_solids_mm: clear });
          const devices = t.devices.map((d, at) =>
            at === i ? { ...d, x_mm: x, y_mm: y, rotation_deg: turn } : d,
          );
          const pose_places =
            lift % 2 === 0
              ? t.pose_places.map((p) => (p.panel === "lid" ? { ...p, z_mm: lift } : p))
              : t.pose_places;
          book = { ...book, tables: { ...t, devices, pose_places } };
          const machine = resolver.resolve(book, shop);
          const remembered = clash.solve(machine, solids.solve(machine), NO_HARNESSES);
          const fresh = new ClashSolver().solve(machine, new SolidsSolver().solve(machine), NO_HARNESSES);
          expect(remembered).toEqual(fresh);
          for (const part of [resolver, solids, clash]) part.sweep();
        }
      }),
      { numRuns: 30, seed: 11 },
    );
  });
});
