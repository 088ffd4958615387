import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createMachine } from "../../testing/book.ts";
import { testWalk } from "./test-walk.ts";

const SEED = 71;

interface At {
  readonly xMm: number;
  readonly yMm: number;
  readonly panel: string;
  readonly type: string;
}

const machineOf = (devices: readonly At[]) =>
  createMachine({
    panels: ["field", "door"].map((id) => ({ id, width_mm: 500, height_mm: 1000, thickness_mm: 12 })),
    device_types: (["switch", "sensor", "button", "lamp", "coil", "motor", "speaker"] as const).map((id) => ({
      ...{ id, class: id, width_mm: 10, depth_mm: 10, height_mm: 10 },
    })),
    devices: devices.map(({ xMm, yMm, panel, type }, i) => ({
      ...{ id: `d.${i}`, type, panel, side: "top" as const, x_mm: xMm, y_mm: yMm },
    })),
  });

const lengthMm = (points: readonly At[]): number =>
  points.slice(1).reduce((sum, b, i) => {
    const a = points[i] ?? b;
    return sum + Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
  }, 0);

/** Length of the shortest open path from the first point, by trying all. */
function shortest(points: readonly At[]): number {
  const go = (from: At, left: readonly At[]): number =>
    left.length === 0
      ? 0
      : Math.min(
          ...left.map(
            (next) =>
              lengthMm([from, next]) +
              go(
                next,
                left.filter((one) => one !== next),
              ),
          ),
        );
  const [first, ...rest] = points;
  return first === undefined ? 0 : go(first, rest);
}

const place = fc.record({
  xMm: fc.integer({ min: 0, max: 500 }),
  yMm: fc.integer({ min: 0, max: 1000 }),
  panel: fc.constant("field"),
  type: fc.constantFrom("switch", "button", "sensor"),
});

describe("the walk of a test over the machine", () => {
  it("goes panel by panel along what the test is about, and along nothing else", () => {
    const devices = ["switch", "lamp", "button", "coil", "motor", "sensor", "speaker"].flatMap((type, i) => [
      { xMm: 10 * i, yMm: 10, panel: "door", type },
      { xMm: 10 * i, yMm: 900, panel: "field", type },
    ]);
    const machine = machineOf(devices);
    const count = (purpose: string) =>
      testWalk(machine, purpose).map(({ panelId, itemIds }) => [panelId, itemIds.length]);
    expect(count("switch")).toEqual([
      ["field", 3],
      ["door", 3],
    ]);
    for (const purpose of ["lamp", "coil", "motor"])
      expect(count(purpose)).toEqual([
        ["field", 1],
        ["door", 1],
      ]);
    for (const purpose of ["bond", "other", "ball", "burn-in"]) expect(count(purpose)).toEqual([]);
  });

  it("begins nearest to the player and is as short as trying all orders makes it", () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 6 }), (devices) => {
        const walk = testWalk(machineOf(devices), "switch").flatMap(({ itemIds }) => itemIds);
        const points = walk.flatMap((id) => devices[Number(id.slice(2))] ?? []);
        expect(points).toHaveLength(devices.length);
        expect(points[0]?.yMm).toBe(Math.min(...devices.map(({ yMm }) => yMm)));
        expect(lengthMm(points)).toBeCloseTo(shortest(points), 6);
      }),
      { seed: SEED, numRuns: 60 },
    );
  });

  it("has each once in stretches of eight at most, and is no longer than the way from edge to edge", () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 13, maxLength: 90 }), (devices) => {
        const stretches = testWalk(machineOf(devices), "switch");
        const ids = stretches.flatMap(({ itemIds }) => itemIds);
        expect([...ids].sort()).toEqual(devices.map((_, i) => `d.${i}`).sort());
        const sizes = stretches.map(({ itemIds }) => itemIds.length);
        expect(Math.max(...sizes)).toBeLessThanOrEqual(8);
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
        const walked = ids.flatMap((id) => devices[Number(id.slice(2))] ?? []);
        const [first, ...rest] = walked;
        const swept = [first, ...rest.sort((a, b) => a.yMm - b.yMm || a.xMm - b.xMm)];
        expect(lengthMm(walked)).toBeLessThanOrEqual(
          lengthMm(swept.filter((one) => one !== undefined)) + 1e-6,
        );
      }),
      { seed: SEED, numRuns: 40 },
    );
  });
});
