import { describe, expect, test } from "vitest";
import type { SomeTables } from "../../testing/book.ts";
import { findClashes, rulesOf, TOP } from "../testing/clashes.ts";
import { boardHoles } from "./stand-offs.ts";

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
    const [finding, ...more] = findClashes(two(18, { z_mm: 10 }));
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
    expect(findClashes(two(20))).toEqual([]);
    expect(findClashes(two(19.7))).toEqual([]);
    expect(findClashes(two(20.3))).toMatchObject([{ severity: "warning", numbers: { gap_mm: 0.3 } }]);
    expect(findClashes(two(20.5))).toEqual([]);
  });

  test("above each other they are no matter", () => {
    expect(findClashes(two(0, { z_mm: 30 }))).toEqual([]);
    expect(rulesOf(findClashes(two(0, { z_mm: 29 })))).toEqual(["solids-clash a b"]);
    expect(findClashes(two(0, { side: "under" }))).toEqual([]);
  });

  test("two things that carry current may not touch", () => {
    const elements: SomeTables = {
      elements: [{ id: "e", device_type: "dt", kind: "contact", from: "1", to: "2" }],
      terminals: ["1", "2"].map((terminal) => ({ device_type: "dt", terminal, family: "lug" })),
      connector_families: [{ id: "lug" }],
    };
    expect(findClashes({ ...two(20), ...elements })).toMatchObject([
      { severity: "warning", numbers: { gap_mm: 0 } },
    ]);
  });

  test("what moves keeps its clearance on all sides", () => {
    const body = { id: "bo", device_type: "dt", width_mm: 20, depth_mm: 10, moves: true } as const;
    const moving = (apart: number, z: number): SomeTables => ({
      ...two(apart, { z_mm: z }),
      bodies: [{ ...body, from_mm: 0, to_mm: 30 }],
    });
    expect(findClashes(moving(20.8, 0))).toMatchObject([
      { numbers: { wanted_mm: 1, gap_mm: 0.8, moves: true } },
    ]);
    expect(findClashes(moving(21, 0))).toEqual([]);
    expect(findClashes(moving(0, 30.4))).toMatchObject([{ numbers: { gap_mm: 0.4 } }]);
    expect(findClashes(moving(0, 31))).toEqual([]);
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
    expect(findClashes(some("a"))).toEqual([]);
    expect(rulesOf(findClashes(some(null)))).toEqual(["solids-clash a f"]);
    expect(rulesOf(findClashes(some("b")))).toEqual(["solids-clash a f"]);
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
    expect(findClashes(board(10))).toEqual([]);
    expect(findClashes(board(11))).toMatchObject([
      {
        rule: "board-over",
        severity: "warning",
        subjects: ["bd", "a"],
        numbers: { gap_mm: 1, wanted_mm: 2 },
      },
    ]);
    expect(findClashes(board(13))).toMatchObject([{ rule: "board-over", severity: "error" }]);
    expect(rulesOf(findClashes(board(40)))).toEqual(["board-over bd a"]);
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
    expect(findClashes(standOff(176, 12))).toEqual([]);
    expect(rulesOf(findClashes(standOff(176, 10)))).toEqual([
      "standoff-height f1 bd",
      "standoff-height f2 bd",
    ]);
    expect(findClashes(standOff(170, 12))).toMatchObject([
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
    expect(findClashes(through({}))).toEqual([]);
    expect(findClashes(through(null))).toMatchObject([
      {
        rule: "no-opening",
        severity: "error",
        subjects: ["a", "pf"],
        numbers: { part: "pin", opening: "none" },
      },
    ]);
    expect(findClashes(through({ width_mm: 5 }))).toMatchObject([{ numbers: { opening: "small" } }]);
    expect(findClashes(through({ shape: "rect", height_mm: 8 }))).toEqual([]);
    expect(rulesOf(findClashes(through({ depth_mm: 9 })))).toEqual(["no-opening a pf"]);
  });

  test("a pocket that is deep enough takes what only goes into the wood", () => {
    const into = { from_mm: -5 };
    expect(findClashes(through({ side: "under", depth_mm: 6 }, into))).toEqual([]);
    expect(rulesOf(findClashes(through({ side: "under", depth_mm: 4 }, into)))).toEqual(["no-opening a pf"]);
  });

  test("what moves in an opening needs its clearance there", () => {
    expect(findClashes(through({ width_mm: 8.1 }, { moves: true }))).toEqual([]);
    expect(rulesOf(findClashes(through({ width_mm: 7.5 }, { moves: true })))).toEqual(["no-opening a pf"]);
  });

  test("two openings that meet are one", () => {
    const some = through({ shape: "rect", width_mm: 4, height_mm: 8, x_mm: 98 });
    const right = { ...some.cutouts?.[0], id: "d", x_mm: 102 };
    expect(findClashes({ ...some, cutouts: [...(some.cutouts ?? []), right] })).toEqual([]);
    expect(rulesOf(findClashes(some))).toEqual(["no-opening a pf"]);
  });

  test("a type that reaches through finds nothing to reach through", () => {
    const some: SomeTables = {
      ...through(null),
      bodies: [],
      device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30, reach_mm: 5 }],
    };
    expect(findClashes(some)).toMatchObject([
      { rule: "no-opening", numbers: { part: "reach", opening: "none" } },
    ]);
  });

  test("what lies on the face stays on the panel", () => {
    const at = (x: number): SomeTables => ({
      device_types: [{ id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30 }],
      devices: [{ id: "a", type: "dt", ...TOP, x_mm: x, y_mm: 100 }],
    });
    expect(findClashes(at(490))).toEqual([]);
    expect(findClashes(at(495))).toMatchObject([
      { rule: "off-panel", severity: "warning", subjects: ["a", "pf"], numbers: { over_mm: 5, off: false } },
    ]);
    expect(findClashes(at(520))).toMatchObject([{ severity: "error", numbers: { off: true } }]);
  });
});
