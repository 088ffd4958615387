import { describe, expect, test } from "vitest";
import { createMachine } from "../testing/book.ts";
import { crossingLengths } from "./crossing-lengths.ts";
import { crossing, waypoint } from "./testing/routed.ts";

const panels = [
  { id: "pf", width_mm: 500, height_mm: 1000, thickness_mm: 13 },
  { id: "cab", width_mm: 500, height_mm: 1000, thickness_mm: 18 },
];

describe("crossingLengths", () => {
  test("a hinge gets its longest pull over all poses, the slack, and the next step", () => {
    const machine = createMachine({
      panels,
      waypoints: [
        waypoint("p", 100, 0, { side: "top" }),
        waypoint("c", 100, 0, { panel: "cab", side: "top" }),
      ],
      crossings: [crossing("p", "c")],
      poses: [{ id: "down" }, { id: "up" }],
      pose_places: [
        { pose: "down", panel: "cab" },
        { pose: "down", panel: "pf", z_mm: 30 },
        { pose: "up", panel: "cab" },
        { pose: "up", panel: "pf", ry_deg: -90 },
      ],
    });
    const found = crossingLengths(machine).get("x.p-c");
    expect(found?.shut).toEqual({ poseId: "down", distanceMm: 30 });
    // Turned up by a quarter about the y axis, 100 to the right becomes 100 up: the diagonal of a square.
    expect(found?.pull?.poseId).toBe("up");
    expect(found?.pull?.distanceMm).toBeCloseTo(100 * Math.SQRT2, 3);
    expect(found?.lengthMm).toBe(155);
  });

  test("the underside lies a thickness below the panel's frame", () => {
    const machine = createMachine({
      panels,
      waypoints: [waypoint("p", 0, 0), waypoint("c", 0, 0, { panel: "cab", side: "top" })],
      crossings: [crossing("p", "c", { kind: "gap" })],
      poses: [{ id: "down" }],
      pose_places: [
        { pose: "down", panel: "cab" },
        { pose: "down", panel: "pf", z_mm: 113 },
      ],
    });
    expect(crossingLengths(machine).get("x.p-c")?.pull?.distanceMm).toBe(100);
  });

  test("a hole is as long as the panel is thick and its ties are apart, without slack", () => {
    const machine = createMachine({
      panels,
      waypoints: [waypoint("u", 0, 0), waypoint("t", 0, 84, { side: "top" })],
      crossings: [crossing("u", "t", { kind: "hole" })],
    });
    // 13, 84, 85 is a Pythagorean triple.
    expect(crossingLengths(machine).get("x.u-t")).toMatchObject({
      lengthMm: 85,
      distances: [{ poseId: "", distanceMm: 85 }],
    });
  });

  test("a given length goes before what the poses tell", () => {
    const machine = createMachine({
      panels,
      waypoints: [waypoint("u", 0, 0), waypoint("t", 0, 0, { side: "top" })],
      crossings: [crossing("u", "t", { kind: "hole", length_mm: 42 })],
    });
    expect(crossingLengths(machine).get("x.u-t")?.lengthMm).toBe(45);
  });
});
