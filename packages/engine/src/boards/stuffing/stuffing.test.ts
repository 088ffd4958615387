import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createMachine } from "../../testing/book.ts";
import { arbitraryParts, boardTables, part, type SomePlacement } from "../testing/boards.ts";
import { heightClass } from "./height-class.ts";
import { partSeconds } from "./seconds.ts";
import { splitRuns } from "./split.ts";
import { stuffingPlan } from "./stuffing-plan.ts";

const planOf = (parts: readonly SomePlacement[], benches = 1, way: "hand" | "bath" = "hand") =>
  stuffingPlan(createMachine(boardTables(parts)), "bt", benches, way);

/** The longest run of the best of all ways to cut a row of pieces into at most so many runs, one by one. */
function bruteForce(next: readonly number[], first: readonly number[], most: number): number {
  const from = (at: number, runs: number): number => {
    if (at === next.length) return 0;
    if (runs === 0) return Number.POSITIVE_INFINITY;
    let best = Number.POSITIVE_INFINITY;
    let own = 0;
    for (let to = at; to < next.length; to++) {
      own += (to === at ? first[to] : next[to]) ?? 0;
      best = Math.min(best, Math.max(own, from(to + 1, runs - 1)));
    }
    return best;
  };
  return from(0, most);
}

describe("order of stuffing", () => {
  it("takes low before high, like after like, far before near, and what cannot be washed last", () => {
    const { order } = planOf([
      part("K1", { part: "p.relay", height_mm: 2, after_wash: true }),
      part("C1", { part: "p.cap", height_mm: 17, width_mm: 10, depth_mm: 10 }),
      part("R2", { x_mm: 40, y_mm: 20 }),
      part("R1", { x_mm: 10, y_mm: 20 }),
      part("R3", { x_mm: 10, y_mm: 60 }),
      part("D1", { part: "p.diode", x_mm: 15, y_mm: 70, polarity: "ring" }),
      part("D3", { part: "p.diode", x_mm: 15, y_mm: 40, polarity: "ring", rotation_deg: 180 }),
      part("D2", { part: "p.diode", x_mm: 15, y_mm: 20, polarity: "ring" }),
    ]);
    expect(order).toEqual(["D1", "D2", "D3", "R3", "R1", "R2", "C1", "K1"]);
  });

  it("does not reach over a like part that is in already (seed 61)", () => {
    fc.assert(
      fc.property(arbitraryParts, (parts) => {
        const machine = createMachine(boardTables(parts));
        const rows = new Map(machine.book.tables.placements.map((row) => [row.reference, row]));
        const order = planOf(parts).order.flatMap((reference) => rows.get(reference) ?? []);
        for (const [i, row] of order.entries()) {
          const before = order[i - 1];
          if (before === undefined) continue;
          expect(Number(row.after_wash)).toBeGreaterThanOrEqual(Number(before.after_wash));
          if (row.after_wash !== before.after_wash) continue;
          expect(heightClass(row.height_mm)).toBeGreaterThanOrEqual(heightClass(before.height_mm));
          const isLike = row.part === before.part && row.rotation_deg === before.rotation_deg;
          // A row of parts is a finger's breadth deep.
          if (isLike) expect(row.y_mm).toBeLessThan(before.y_mm + 12);
        }
        // Parts of one kind follow one another on each side of the wash.
        const runs = order.filter(
          (row, i) => row.part !== order[i - 1]?.part || row.after_wash !== order[i - 1]?.after_wash,
        );
        expect(runs.length).toBe(new Set(order.map((row) => `${row.part} ${row.after_wash}`)).size);
      }),
      { seed: 61, numRuns: 60 },
    );
  });

  it("is the same whatever the order of rows (seed 62)", () => {
    fc.assert(
      fc.property(arbitraryParts, (parts) => {
        expect(planOf(parts.toReversed(), 3)).toEqual(planOf(parts, 3));
      }),
      { seed: 62, numRuns: 30 },
    );
  });
});

describe("stages", () => {
  it("hold every part once, in order, each of one bench, one height class and one side of the wash (seed 63)", () => {
    fc.assert(
      fc.property(arbitraryParts, fc.integer({ min: 1, max: 5 }), (parts, benches) => {
        const plan = planOf(parts, benches, "bath");
        expect(plan.stages.flatMap((stage) => stage.references)).toEqual(plan.order);
        expect(plan.stages.map((stage) => stage.number)).toEqual(plan.stages.map((_, i) => i + 1));
        expect(plan.benches).toBeLessThanOrEqual(benches);
        const loads = new Map<number, number>();
        for (const stage of plan.stages)
          loads.set(stage.bench, (loads.get(stage.bench) ?? 0) + stage.seconds);
        expect(Math.max(0, ...loads.values())).toBeCloseTo(plan.busiestSeconds, 6);
        expect(plan.busiestSeconds).toBeGreaterThanOrEqual(plan.busiestBound - 1e-9);
        const rows = new Map(parts.map((row) => [row.reference, row]));
        for (const stage of plan.stages) {
          const own = stage.references.map((reference) => rows.get(reference));
          expect(new Set(own.map((row) => heightClass(row?.height_mm ?? 0))).size).toBe(1);
          expect(new Set(own.map((row) => row?.after_wash)).size).toBe(1);
          expect(own.length).toBeLessThanOrEqual(40);
        }
      }),
      { seed: 63, numRuns: 60 },
    );
  });

  it("do not grow beyond what a card shows", () => {
    const parts = Array.from({ length: 100 }, (_, i) => part(`R${i}`, { x_mm: i, part: `p.${i % 3}` }));
    expect(planOf(parts).stages.map((stage) => stage.references.length)).toEqual([40, 40, 20]);
    const kinds = Array.from({ length: 10 }, (_, i) => part(`R${i}`, { x_mm: i, part: `p.${i}` }));
    expect(planOf(kinds).stages.map((stage) => stage.references.length)).toEqual([8, 2]);
  });

  it("are none for a type without parts", () => {
    expect(planOf([])).toMatchObject({
      order: [],
      stages: [],
      benches: 0,
      busiestSeconds: 0,
      busiestBound: 0,
    });
    expect(() => planOf([], 0)).toThrow(RangeError);
  });
});

describe("split over benches", () => {
  it("has the shortest longest run of all ways to cut the order (seed 64)", () => {
    const piece = fc.record({ next: fc.integer({ min: 1, max: 30 }), look: fc.integer({ min: 0, max: 5 }) });
    fc.assert(
      fc.property(
        fc.array(piece, { minLength: 1, maxLength: 10 }),
        fc.integer({ min: 1, max: 5 }),
        (pieces, most) => {
          const next = pieces.map((p) => p.next);
          const first = pieces.map((p) => p.next + p.look);
          const split = splitRuns(next, first, most);
          expect(split.longest).toBe(bruteForce(next, first, most));
          const loads = split.starts.map((start, i) => {
            const rest = next.slice(start + 1, split.starts[i + 1]);
            return rest.reduce((sum, s) => sum + s, first[start] ?? 0);
          });
          expect(Math.max(...loads)).toBe(split.longest);
          expect(split.starts.length).toBeLessThanOrEqual(most);
        },
      ),
      { seed: 64, numRuns: 300 },
    );
  });
});

describe("time of one part", () => {
  it("is near what somebody measured for a resistor from the box to the inspected joint", () => {
    // 60 resistors in 17 min 40 s, all steps of one person at home: bend, insert, solder, snip, inspect (synth-diy
    // mailing list, June 2022, message 129631). Ours has no inspection and a practised hand, so it lies below.
    const measuredS = 17.67;
    const machine = createMachine(boardTables([part("R1"), part("R2")]));
    const [one, two] = machine.book.tables.placements;
    if (one === undefined || two === undefined) throw new Error("No parts.");
    const seconds = partSeconds(machine.shop.numbers, two, one, "hand");
    expect(seconds).toBeLessThan(measuredS);
    expect(seconds).toBeGreaterThan(measuredS * 0.7);
    // One to three seconds a joint (EPTAC, soldering tips: how long should it take to create a solder joint).
    expect(machine.shop.numbers.hand_joint_s).toBeGreaterThanOrEqual(1);
    expect(machine.shop.numbers.hand_joint_s).toBeLessThanOrEqual(3);
  });
});
