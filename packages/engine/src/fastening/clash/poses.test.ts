import { describe, expect, test } from "vitest";
import type { SomeTables } from "../../testing/book.ts";
import { findClashes, PANEL, rulesOf, TOP } from "../testing/clashes.ts";

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
    expect(findClashes(room(80, {}))).toEqual([]);
    expect(findClashes(room(72, {}))).toMatchObject([
      {
        rule: "pose-clash",
        severity: "warning",
        subjects: ["a", "b"],
        numbers: { poses: "shut", gap_mm: 2 },
      },
    ]);
    expect(findClashes(room(60, {}))).toMatchObject([
      { severity: "error", subjects: ["a", "b"], numbers: { overlap_mm2: 200, gap_mm: 0 } },
    ]);
  });

  test("a turned panel is where its pose turns it", () => {
    // Turned over about x, the lid's underside looks up and its top face lies below: nothing of it hangs down.
    const over = { rx_deg: 180, y_mm: 200 };
    expect(rulesOf(findClashes(room(33, over)))).toEqual([]);
    expect(findClashes(room(31, over))).toMatchObject([{ subjects: ["a", "lid"], numbers: { gap_mm: 1 } }]);
    expect(findClashes(room(25, over))).toMatchObject([
      { subjects: ["a", "lid"], numbers: { overlap_mm2: 200 } },
    ]);
    expect(rulesOf(findClashes(room(60, { rz_deg: 90 })))).toEqual([]);
    expect(rulesOf(findClashes(room(60, { rz_deg: 90, x_mm: 200 })))).toEqual(["pose-clash a b"]);
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
    expect(findClashes(low(40))).toEqual([]);
    expect(findClashes(low(24))).toMatchObject([
      { subjects: ["a", "lid"], severity: "warning", numbers: { gap_mm: 2 } },
    ]);
    expect(findClashes(low(10))).toMatchObject([{ subjects: ["a", "lid"], severity: "error" }]);
  });

  test("panels that only ever stand in one way are joined; others must not cut each other", () => {
    const bare = { devices: [] };
    expect(rulesOf(findClashes(room(-5, {}, bare)))).toEqual(["pose-clash lid pf"]);
    expect(findClashes(room(10, {}, bare))).toEqual([]);
    const { pose_places = [] } = room(-5, {});
    const one = pose_places.filter(({ pose }) => pose === "shut");
    expect(findClashes(room(-5, {}, { ...bare, pose_places: one }))).toEqual([]);
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
    expect(findClashes(under(45))).toEqual([]);
    expect(findClashes(under(42))).toMatchObject([
      {
        rule: "glass-clearance",
        severity: "warning",
        subjects: ["a", "gl"],
        numbers: { gap_mm: 7, wanted_mm: 10, poses: "shut" },
      },
    ]);
    expect(findClashes(under(33))).toMatchObject([{ rule: "glass-clearance", severity: "error" }]);
  });
});
