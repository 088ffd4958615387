import { boxOf, type PointMm, polar, rectangleCorners } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Finding, Machine, Solid } from "../../model/index.ts";
import { createMachine, createShop, type SomeTables } from "../../testing/book.ts";
import { BallSolver } from "./ball-solver.ts";
import { jamFromMm } from "./clearance.ts";
import { obstacleOf, outermost, touchRadiusMm } from "./obstacles.ts";

const at = (xMm: number, yMm: number): PointMm => ({ xMm, yMm });

const solid = (id: string, ring: readonly PointMm[], more: Partial<Solid> = {}): Solid => ({
  id,
  itemId: id,
  kind: "device",
  panelId: "p",
  side: "top",
  ring,
  box: boxOf(ring) ?? { minXMm: 0, minYMm: 0, maxXMm: 0, maxYMm: 0 },
  lowMm: 0,
  highMm: 40,
  moves: false,
  ...more,
});

const disc = (id: string, x: number, y: number, radius: number, more: Partial<Solid> = {}): Solid =>
  solid(
    id,
    Array.from({ length: 72 }, (_, i) => {
      const p = polar(i * 5, radius);
      return at(x + p.xMm, y + p.yMm);
    }),
    more,
  );

const bar = (
  id: string,
  x: number,
  y: number,
  width: number,
  rotationDeg = 0,
  more: Partial<Solid> = {},
): Solid => solid(id, rectangleCorners({ xMm: x, yMm: y, widthMm: width, depthMm: 6, rotationDeg }), more);

/** A panel of 300 × 400 whose floor falls from both sides to a drain in its middle. */
const FLOOR = [bar("floor-left", 75, 40, 170, -20), bar("floor-right", 225, 40, 170, 20)];

const book = (more: SomeTables = {}): SomeTables => ({
  panels: [{ id: "p", purpose: "playfield", width_mm: 300, height_mm: 400, thickness_mm: 13 }],
  cutouts: [
    {
      id: "drain",
      panel: "p",
      purpose: "ball-path",
      shape: "rect",
      x_mm: 150,
      y_mm: 30,
      width_mm: 60,
      height_mm: 50,
    },
  ],
  ...more,
});

const byItem = (solids: readonly Solid[]): ReadonlyMap<string, readonly Solid[]> =>
  new Map(solids.map((s) => [s.itemId, [s]]));

const find = (solids: readonly Solid[], machine: Machine = createMachine(book())): readonly Finding[] =>
  new BallSolver().solve(machine, byItem([...FLOOR, ...solids]));

const rules = (findings: readonly Finding[]): readonly string[] => findings.map((f) => f.rule);

describe("a ball on a playing surface", () => {
  it("runs to the drain when nothing holds it", () => {
    expect(find([])).toEqual([]);
    expect(find([disc("post", 150, 250, 5)])).toEqual([]);
  });

  it("stays in the fork of two walls, and is let go by a hole, a coil or a thing that moves", () => {
    const fork = [bar("left", 120, 220, 70, -35), bar("right", 180, 220, 70, 35)];
    const found = find(fork);
    expect(found.map((f) => [f.rule, f.severity, f.subjects, f.numbers.way])).toEqual([
      ["ball-pocket", "error", ["p", "left", "right"], "over"],
    ]);
    expect(found[0]?.numbers.x_mm).toBeCloseTo(150, 0);
    const hole = {
      id: "cave",
      panel: "p",
      purpose: "ball-path",
      shape: "circle",
      x_mm: 150,
      width_mm: 40,
    } as const;
    const y = Number(found[0]?.numbers.y_mm);
    const cutouts = [...(book().cutouts ?? []), { ...hole, y_mm: y }];
    expect(find(fork, createMachine(book({ cutouts })))).toEqual([]);
    const coil = {
      device_types: [{ id: "coil", class: "coil", width_mm: 10, depth_mm: 10, height_mm: 10 }],
      mechanism_types: [{ id: "kicker", width_mm: 10, depth_mm: 10, height_mm: 10 }],
      mechanism_devices: [{ mechanism_type: "kicker", id: "k", device_type: "coil" }],
      mechanisms: [{ id: "right", type: "kicker", panel: "p", side: "top", x_mm: 180, y_mm: 220 }],
    } as const;
    expect(find(fork, createMachine(book(coil)))).toEqual([]);
    expect(find(fork.map((s) => ({ ...s, moves: true })))).toEqual([]);
  });

  it("stays behind a level wall only for a machine that leans, when its ends are open", () => {
    const shelf = [bar("shelf", 150, 220, 80), disc("stop", 196, 232, 3)];
    const found = find(shelf);
    expect(found.map((f) => [f.rule, f.numbers.lean])).toEqual([["ball-pocket", "right"]]);
    const shop = createShop({}, { ball_pocket_mm: 100 });
    expect(find(shelf, createMachine(book(), shop))).toEqual([]);
  });

  it("does not rest where it cannot get to", () => {
    const cage = [
      bar("a", 150, 200, 90),
      bar("b", 150, 280, 90),
      bar("c", 107, 240, 80, 90),
      bar("d", 193, 240, 80, 90),
    ];
    expect(find(cage)).toEqual([]);
    expect(rules(find(cage.filter((s) => s.id !== "b")))).toEqual(["ball-pocket"]);
  });

  it.each([
    [25.4, 0],
    [25.6, 1],
    [26.9, 1],
    [27.1, 1],
    [28.4, 1],
    [28.6, 0],
  ])("between posts %d mm apart: %i findings", (gap, count) => {
    // One above the other, so that nothing rests on both.
    const posts = [disc("one", 150, 200, 5), disc("two", 150, 200 + gap + 10, 5)];
    const found = find(posts).filter((f) => f.rule === "ball-gap");
    expect(found).toHaveLength(count);
    if (count === 1) expect(found[0]?.subjects).toEqual(["one", "two"]);
  });

  it("does not get into a gap that something else fills or shuts off", () => {
    const posts = [disc("one", 150, 200, 5), disc("two", 150, 236, 5)];
    const count = (more: readonly Solid[]) =>
      rules(find([...posts, ...more])).filter((r) => r === "ball-gap").length;
    expect(count([])).toBe(1);
    expect(count([bar("rubber", 150, 218, 46, 90)])).toBe(0);
  });

  it("needs room below what stands over its way", () => {
    const over = (lowMm: number) =>
      rules(find([disc("plastic", 150, 250, 30, { lowMm, highMm: lowMm + 3 })])).filter(
        (r) => r === "ramp-clearance",
      );
    expect(over(30)).toEqual([]);
    expect(over(29)).toEqual(["ramp-clearance"]);
    expect(over(26)).toEqual(["ramp-clearance"]);
    expect(over(20)).toEqual([]);
    expect(jamFromMm(27)).toBeCloseTo(25.19, 2);
  });

  it("looks at playing surfaces only", () => {
    const machine = createMachine({
      ...book(),
      panels: [{ id: "p", purpose: "cabinet", width_mm: 300, height_mm: 400 }],
    });
    expect(find([bar("shelf", 150, 200, 90)], machine)).toEqual([]);
  });
});

describe("the radius at which a ball touches", () => {
  it("is its own beside what is taller than its middle, less at low and overhanging edges, none below and above", () => {
    expect(touchRadiusMm(0, 40, 27)).toBe(13.5);
    expect(touchRadiusMm(0, 13.5, 27)).toBe(13.5);
    // A chord: √(2·13.5·h − h²).
    expect(touchRadiusMm(0, 8, 27)).toBeCloseTo(Math.sqrt(27 * 8 - 64), 9);
    expect(touchRadiusMm(20, 30, 27)).toBeCloseTo(Math.sqrt(27 * 20 - 400), 9);
    expect(touchRadiusMm(0, 5, 27)).toBeNull();
    expect(touchRadiusMm(27, 40, 27)).toBeNull();
  });
});

describe("the memory of the ball", () => {
  const thing = fc.record({
    x: fc.integer({ min: 20, max: 280 }),
    y: fc.integer({ min: 90, max: 380 }),
    turn: fc.integer({ min: -60, max: 60 }),
    kind: fc.constantFrom<("disc" | "bar")[]>("disc", "bar"),
  });
  const solidsOf = (things: readonly { x: number; y: number; turn: number; kind: "disc" | "bar" }[]) =>
    things.map(({ x, y, turn, kind }, i) =>
      kind === "disc" ? disc(`t${i}`, x, y, 8) : bar(`t${i}`, x, y, 60, turn),
    );

  it("gives what from scratch gives, over random moves (seed 23)", () => {
    fc.assert(
      fc.property(
        fc.array(thing, { minLength: 3, maxLength: 7 }),
        fc.array(fc.record({ which: fc.nat(6), to: thing }), { minLength: 1, maxLength: 4 }),
        (things, moves) => {
          const machine = createMachine(book());
          const solver = new BallSolver();
          let solids: readonly Solid[] = [...FLOOR, ...solidsOf(things)];
          solver.solve(machine, byItem(solids));
          solver.sweep();
          for (const { which, to } of moves) {
            const index = FLOOR.length + (which % things.length);
            const [moved] = solidsOf([to]);
            solids = solids.map((s, i) =>
              i === index && moved !== undefined ? { ...moved, id: s.id, itemId: s.itemId } : s,
            );
            const remembered = solver.solve(machine, byItem(solids));
            solver.sweep();
            expect(remembered).toEqual(new BallSolver().solve(machine, byItem(solids)));
          }
        },
      ),
      { seed: 23, numRuns: 25 },
    );
  });

  it("does nothing while what is below the surface moves, and cuts again only the bands that a thing leaves and enters", () => {
    const machine = createMachine(book());
    const solver = new BallSolver();
    const below = (x: number) => disc("coil", x, 200, 20, { side: "under", lowMm: -60, highMm: -13 });
    const run = (solids: readonly Solid[]) => {
      const found = solver.solve(machine, byItem([...FLOOR, ...solids]));
      solver.sweep();
      return found;
    };
    const post = disc("post", 150, 130, 5);
    const first = run([post, below(100)]);
    const computed = solver.computed;
    expect(run([post, below(110)])).toBe(first);
    expect(solver.computed).toEqual(computed);
    run([disc("post", 152, 130, 5), below(110)]);
    expect(solver.computed.panels).toBe(computed.panels + 1);
    expect(solver.computed.bands).toBe(computed.bands + 1);
  });
});

describe("what the ball cannot touch", () => {
  it("is left out: a screw in a guide, and nothing that stands out of it", () => {
    const guide = bar("guide", 150, 200, 60);
    const screw = disc("screw", 150, 200, 2, { highMm: 10 });
    const post = disc("post", 150, 202, 2);
    const ids = (solids: readonly Solid[]) =>
      outermost(
        solids.flatMap((s) => obstacleOf(s, 27) ?? []),
        27,
      ).map((o) => o.solid.id);
    expect(ids([guide, screw])).toEqual(["guide"]);
    expect(ids([guide, post])).toEqual(["guide", "post"]);
    expect(ids([{ ...guide, highMm: 8 }, screw])).toEqual(["guide", "screw"]);
  });
});
