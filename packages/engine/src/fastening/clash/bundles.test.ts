import { describe, expect, test } from "vitest";
import type { Finding } from "../../model/index.ts";
import { createMachine, type SomeTables } from "../../testing/book.ts";
import { createHarnessResult } from "../../testing/result.ts";
import { createWiring } from "../../testing/wiring.ts";
import { SolidsSolver } from "../solids/solids-solver.ts";
import { ClashSolver } from "./clash-solver.ts";

/**
 * Two devices at the ends of a lane along y = 500 from x = 100 to 400 on the underside, and a block of 40 mm whose size in
 * y and place the test says, with its parts.
 */
function find(
  block: { readonly y: number; readonly depth: number; readonly height?: number },
  more: SomeTables = {},
): readonly Finding[] {
  const machine = createMachine(
    createWiring({
      devices: [
        { id: "d1", x: 100, y: 540 },
        { id: "d2", x: 400, y: 540 },
      ],
      nets: { n1: { h1: ["d1:1", "d2:1"] }, n2: { h1: ["d1:2", "d2:2"] } },
      more: {
        device_types: [{ id: "block", width_mm: 40, depth_mm: block.depth, height_mm: block.height ?? 60 }],
        devices: [{ id: "bl", type: "block", panel: "pf", side: "under", x_mm: 250, y_mm: block.y }],
        ...more,
      },
    }),
  );
  const harnesses = new Map([["h1", createHarnessResult(machine, "h1")]]);
  return new ClashSolver().solve(machine, new SolidsSolver().solve(machine), harnesses);
}

const PART = { id: "part", device_type: "block", width_mm: 40 } as const;

describe("bundles", () => {
  test("a lane does not pass through something", () => {
    const [finding, ...more] = find({ y: 500, depth: 100 });
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      rule: "bundle-blocked",
      severity: "error",
      subjects: ["lane.mid", "h1", "bl"],
      numbers: { moves: false, spare_mm: 5 },
    });
    // Round it by 50 mm and half the bundle from 130 mm before it: 2 × (√(130² + 51.8²) − 130).
    const { extra_mm = 0, diameter_mm = 0 } = finding?.numbers ?? {};
    const asideMm = 50 + Number(diameter_mm) / 2;
    expect(extra_mm).toBe(Math.round(2 * (Math.hypot(130, asideMm) - 130)));
  });

  test("it goes round what is small, and past what lies beside it", () => {
    expect(find({ y: 500, depth: 20 })).toEqual([]);
    expect(find({ y: 552, depth: 100 })).toEqual([]);
  });

  test("it goes over what is low, and under what leaves it room", () => {
    expect(find({ y: 500, depth: 100, height: 8 })).toEqual([]);
    const part = { ...PART, depth_mm: 100, to_mm: 60 };
    expect(find({ y: 500, depth: 100 }, { bodies: [{ ...part, from_mm: 10 }] })).toEqual([]);
    expect(find({ y: 500, depth: 100 }, { bodies: [{ ...part, from_mm: 1 }] })).toHaveLength(1);
  });

  test("past what moves it may not be dressed", () => {
    const part = { ...PART, depth_mm: 20, from_mm: 0, to_mm: 60 };
    expect(find({ y: 500, depth: 100 }, { bodies: [part] })).toEqual([]);
    expect(find({ y: 500, depth: 100 }, { bodies: [{ ...part, moves: true }] })).toMatchObject([
      { rule: "bundle-blocked", severity: "error", numbers: { moves: true } },
    ]);
  });

  test("what it lands at, and the screws of that, are no obstacle", () => {
    const screw = {
      id: "w",
      kind: "wood-screw",
      diameter_mm: 4,
      length_mm: 10,
      head_diameter_mm: 40,
      head_height_mm: 60,
    } as const;
    const at = { type: "w", panel: "pf", side: "under", x_mm: 100, y_mm: 535 } as const;
    const held = (holds: string | null): SomeTables => ({
      fastener_types: [screw],
      fasteners: [{ id: "f", ...at, holds }],
    });
    expect(find({ y: 800, depth: 20 }, held("d1"))).toEqual([]);
    const other = find({ y: 800, depth: 20 }, held("bl"));
    expect(other.filter(({ rule }) => rule === "bundle-blocked")).toMatchObject([
      { severity: "warning", subjects: ["tail:d1", "h1", "f"] },
    ]);
  });
});
