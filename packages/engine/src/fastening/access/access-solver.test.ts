import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Resolver } from "../../model/index.ts";
import { createBook, createShop, type SomeShopTables, type SomeTables } from "../../testing/book.ts";
import { SolidsSolver } from "../solids/solids-solver.ts";
import { type Access, AccessSolver } from "./access-solver.ts";
import { liesOver } from "./lies-over.ts";

const SCREW = {
  id: "screw",
  kind: "wood-screw",
  diameter_mm: 4,
  length_mm: 12,
  head_diameter_mm: 8,
  head_height_mm: 3,
  drive: "cross 2",
} as const;
const TYPES: NonNullable<SomeTables["fastener_types"]> = [
  SCREW,
  { ...SCREW, id: "bolt", kind: "machine-screw", length_mm: 30 },
  { id: "nut", kind: "nut", diameter_mm: 4, length_mm: 3, head_diameter_mm: 7, drive: "hexagon 7 mm" },
  { id: "t-nut", kind: "t-nut", diameter_mm: 4, length_mm: 8 },
  {
    id: "standoff",
    kind: "standoff",
    diameter_mm: 4,
    length_mm: 10,
    head_diameter_mm: 6,
    head_height_mm: 30,
    drive: "hexagon 5.5 mm",
  },
];
type Drivers = NonNullable<SomeShopTables["drivers"]>;
const DRIVERS: Drivers = [
  {
    id: "long",
    kind: "driver",
    fits: "cross 2",
    tip_diameter_mm: 6,
    tip_length_mm: 100,
    grip_diameter_mm: 40,
    grip_length_mm: 120,
    swing_deg: 360,
  },
  {
    id: "short",
    kind: "driver",
    fits: "cross 2",
    tip_diameter_mm: 6,
    tip_length_mm: 20,
    grip_diameter_mm: 30,
    grip_length_mm: 60,
    swing_deg: 360,
  },
  {
    id: "socket",
    kind: "socket",
    fits: "hexagon 5.5 mm",
    tip_diameter_mm: 8,
    tip_length_mm: 60,
    grip_diameter_mm: 30,
    grip_length_mm: 60,
    swing_deg: 360,
  },
  {
    id: "spanner",
    kind: "spanner",
    fits: "hexagon 7 mm",
    tip_diameter_mm: 16,
    tip_length_mm: 4,
    grip_diameter_mm: 8,
    grip_length_mm: 90,
    swing_deg: 60,
  },
];

type Body = NonNullable<SomeTables["bodies"]>[number];
interface Box {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  readonly side?: "top" | "under";
  readonly width?: number;
  readonly depth?: number;
  /** Heights off its side. */
  readonly from?: number;
  readonly to?: number;
  /** Further parts of it. */
  readonly bodies?: readonly Body[];
}
type Fastener = NonNullable<SomeTables["fasteners"]>[number];

/** Boxes on a panel of 12 mm, each of a type of its own, and fasteners. */
function tables(boxes: readonly Box[], fasteners: readonly Fastener[]): SomeTables {
  return {
    panels: [{ id: "pf", purpose: "playfield", width_mm: 500, height_mm: 500, thickness_mm: 12 }],
    device_types: boxes.map((box) => ({
      id: box.id,
      class: "other",
      width_mm: 1,
      depth_mm: 1,
      height_mm: 1,
    })),
    bodies: boxes.flatMap((box) => [
      {
        id: `${box.id}.body`,
        device_type: box.id,
        width_mm: box.width ?? 20,
        depth_mm: box.depth ?? 20,
        from_mm: box.from ?? 0,
        to_mm: box.to ?? 40,
      },
      ...(box.bodies ?? []).map((body) => ({ device_type: box.id, ...body })),
    ]),
    devices: boxes.map((box) => ({
      id: box.id,
      type: box.id,
      panel: "pf",
      side: box.side ?? "top",
      x_mm: box.x,
      y_mm: box.y,
    })),
    fastener_types: TYPES,
    fasteners: fasteners.map((row) => ({ type: "screw", panel: "pf", side: "top", flange_mm: 2, ...row })),
  };
}

function accessOf(boxes: readonly Box[], fasteners: readonly Fastener[], drivers: Drivers = DRIVERS): Access {
  const machine = new Resolver().resolve(createBook(tables(boxes, fasteners)), createShop({ drivers }));
  return new AccessSolver().solve(machine, new SolidsSolver().solve(machine));
}

const FREE = { inWay: [], nutDriverId: null, nutInWay: [], ownInWay: false, comesOff: [] };

describe("AccessSolver", () => {
  it("takes the tool that the fewest things stand in the way of", () => {
    // 15 mm beside the axis and 60 mm high: clear of the long tip, within the short tool's hand.
    const { reaches } = accessOf(
      [{ id: "tall", x: 122, y: 100, to: 60, width: 20 }],
      [{ id: "f", x_mm: 100, y_mm: 100 }],
    );
    expect(reaches.get("f")).toEqual({ fastenerId: "f", driverId: "long", ...FREE });
  });

  it("counts what stands in the room of tip and hand, and what has to come off before", () => {
    const boxes: Box[] = [
      { id: "near", x: 112, y: 100, to: 60 },
      // Lies over `near`, and is itself held by a screw that `beside` stands over.
      { id: "lid", x: 130, y: 100, from: 62, to: 70, width: 60 },
      { id: "beside", x: 160, y: 140, to: 200, width: 30, depth: 30 },
      { id: "far", x: 300, y: 300, to: 200 },
    ];
    const { reaches, findings } = accessOf(boxes, [
      { id: "f", x_mm: 100, y_mm: 100 },
      { id: "g", x_mm: 165, y_mm: 120, holds: "lid" },
    ]);
    expect(reaches.get("f")?.inWay).toEqual(["lid", "near"]);
    expect(reaches.get("f")?.comesOff).toEqual(["beside", "lid", "near"]);
    expect(findings).toEqual([]);
  });

  it("asks for more to come off than the shop allows", () => {
    const boxes = [0, 1, 2, 3, 4].map(
      (i): Box => ({ id: `b${i}`, x: 100, y: 100, from: 10 + 30 * i, to: 30 + 30 * i }),
    );
    const { reaches, findings } = accessOf(boxes, [{ id: "f", x_mm: 100, y_mm: 100 }]);
    expect(reaches.get("f")?.comesOff).toEqual(["b4", "b3", "b2", "b1", "b0"]);
    expect(findings).toEqual([
      {
        rule: "service-deep",
        severity: "warning",
        subjects: ["f", "f", "b4", "b3", "b2", "b1", "b0"],
        numbers: { off: 5, most: 4 },
        accepted: null,
      },
    ]);
  });

  it("finds what a screw holds itself over its head, and what tip would do", () => {
    const wide: Box = { id: "own", x: 100, y: 100, width: 60, depth: 60, to: 2 };
    const arm = (x: number, to: number): Body => ({
      id: `arm${x}`,
      x_mm: x,
      width_mm: 10,
      depth_mm: 10,
      from_mm: 2,
      to_mm: to,
    });
    const screw = { id: "f", x_mm: 100, y_mm: 100, holds: "own" };
    expect(accessOf([{ ...wide, bodies: [arm(12, 90)] }], [screw]).findings).toEqual([]);
    const grip = accessOf([{ ...wide, bodies: [arm(12, 130)] }], [screw]);
    expect(grip.reaches.get("f")).toMatchObject({ ownInWay: true, inWay: [], driverId: "long" });
    expect(grip.findings).toMatchObject([
      {
        rule: "driver-blocked",
        subjects: ["f", "own"],
        numbers: { because: "own-grip", tip_mm: 100, clear_tip_mm: 125 },
      },
    ]);
    expect(accessOf([{ ...wide, bodies: [arm(4, 130)] }], [screw]).findings).toMatchObject([
      { rule: "driver-blocked", numbers: { because: "own-tip", clear_tip_mm: "-" } },
    ]);
  });

  it("finds a blocker that has to be there before", () => {
    // `post` stands over the head of `lid`'s screw, but begins below `lid`, which lies over its foot.
    const boxes: Box[] = [
      {
        id: "post",
        x: 130,
        y: 100,
        to: 4,
        width: 30,
        bodies: [{ id: "top", x_mm: -26, width_mm: 14, depth_mm: 14, from_mm: 30, to_mm: 40 }],
      },
      { id: "lid", x: 120, y: 100, width: 60, from: 6, to: 8 },
    ];
    const { findings } = accessOf(boxes, [{ id: "f", x_mm: 104, y_mm: 100, holds: "lid", flange_mm: 8 }]);
    expect(findings).toMatchObject([
      { rule: "driver-blocked", severity: "error", subjects: ["f", "post"], numbers: { because: "beneath" } },
    ]);
  });

  it("lets a stand-off go in before its board, which comes off before it", () => {
    const board: Box = { id: "board", x: 100, y: 100, width: 60, depth: 60, from: 30, to: 40 };
    const { reaches, findings } = accessOf(
      [board],
      [{ id: "f", type: "standoff", x_mm: 80, y_mm: 80, holds: "board", flange_mm: 0 }],
    );
    expect(reaches.get("f")).toEqual({ fastenerId: "f", driverId: "socket", ...FREE, comesOff: ["board"] });
    expect(findings).toEqual([]);
  });

  it("swings the spanner in any sector that is free", () => {
    const bolt = { id: "f", type: "bolt", nut: "nut", x_mm: 100, y_mm: 100 };
    const at = (id: string, x: number, y: number): Box => ({ id, x, y, side: "under", width: 30, depth: 30 });
    const three = [at("right", 140, 100), at("up", 100, 140), at("left", 60, 100)];
    expect(accessOf(three, [bolt]).reaches.get("f")).toMatchObject({ nutDriverId: "spanner", nutInWay: [] });
    const ring = [...three, at("down", 100, 60), at("upright", 130, 130)];
    expect(accessOf(ring, [bolt]).reaches.get("f")?.nutInWay).toHaveLength(1);
    expect(accessOf(ring, [{ ...bolt, nut: "t-nut" }]).reaches.get("f")).toMatchObject({
      nutDriverId: null,
      nutInWay: [],
    });
  });

  it("finds a nut in the middle of what its screw holds", () => {
    const own: Box = {
      id: "own",
      x: 100,
      y: 100,
      side: "under",
      bodies: [{ id: "wall", x_mm: 9, width_mm: 6, depth_mm: 60, from_mm: 0, to_mm: 20 }],
      from: 8,
      to: 20,
    };
    const { findings } = accessOf(
      [own],
      [{ id: "f", type: "bolt", nut: "nut", x_mm: 100, y_mm: 100, holds: "own" }],
    );
    expect(findings).toMatchObject([
      { rule: "nut-blocked", subjects: ["f", "own"], numbers: { tool: "spanner" } },
    ]);
  });

  it("tells once of each type that no tool fits, and takes usual tools where none are listed", () => {
    const screws = [
      { id: "f", x_mm: 100, y_mm: 100 },
      { id: "g", x_mm: 200, y_mm: 100 },
    ];
    const some = DRIVERS.filter((row) => row.fits !== "cross 2");
    expect(accessOf([], screws, some).findings).toEqual([
      {
        rule: "driver-missing",
        severity: "warning",
        subjects: ["screw", "f"],
        numbers: { drive: "cross 2", fasteners: 2 },
        accepted: null,
      },
    ]);
    const usual = accessOf([{ id: "near", x: 115, y: 100 }], screws, []);
    expect(usual.findings).toEqual([]);
    expect(usual.reaches.get("f")).toMatchObject({ driverId: null, inWay: [] });
    expect(accessOf([{ id: "near", x: 115, y: 100, to: 80 }], screws, []).reaches.get("f")?.inWay).toEqual([
      "near",
    ]);
  });

  it("gives after any edits what it gives from scratch, and keeps what has not changed", () => {
    const coordinate = fc.integer({ min: 0, max: 20 }).map((n) => n * 10);
    const box = fc.record({
      x: coordinate,
      y: coordinate,
      from: fc.constantFrom(0, 6, 25),
      to: fc.constantFrom(30, 60, 150),
      side: fc.constantFrom("top" as const, "under" as const),
    });
    const screw = fc.record({
      x_mm: coordinate,
      y_mm: coordinate,
      type: fc.constantFrom("screw", "bolt", "standoff"),
      nut: fc.constantFrom(null, "nut"),
      holds: fc.constantFrom(null, "b0", "b1", "b5"),
      side: fc.constantFrom("top" as const, "under" as const),
    });
    const layout = fc.record({
      boxes: fc.array(box, { maxLength: 8 }),
      screws: fc.array(screw, { maxLength: 8 }),
    });
    fc.assert(
      fc.property(
        layout,
        fc.array(
          fc.record({ at: fc.nat(7), box, screw, what: fc.constantFrom("box", "screw", "drop", "shop") }),
          { maxLength: 5 },
        ),
        (start, edits) => {
          const resolver = new Resolver();
          const solids = new SolidsSolver();
          const solver = new AccessSolver();
          const shop = createShop({ drivers: DRIVERS });
          const fewer = createShop({ drivers: DRIVERS.slice(1) });
          let boxes = start.boxes;
          let screws = start.screws;
          let current = shop;
          for (const edit of [null, ...edits]) {
            if (edit?.what === "box" && edit.at < boxes.length) boxes = boxes.with(edit.at, edit.box);
            if (edit?.what === "screw" && edit.at < screws.length) screws = screws.with(edit.at, edit.screw);
            if (edit?.what === "drop") boxes = boxes.slice(0, edit.at);
            if (edit?.what === "shop") current = current === shop ? fewer : shop;
            const book = createBook(
              tables(
                boxes.map((b, i) => ({ ...b, id: `b${i}` })),
                screws.map((s, i) => ({ ...s, id: `f${i}` })),
              ),
            );
            const machine = resolver.resolve(book, current);
            const fresh = new Resolver().resolve(book, current);
            const own = solids.solve(machine);
            const access = solver.solve(machine, own);
            const scratch = new SolidsSolver().solve(fresh);
            expect(access).toEqual(new AccessSolver().solve(fresh, scratch));
            expect(liesOver(machine, own)).toEqual(liesOver(fresh, new Map(scratch)));
            const again = solver.solve(machine, own);
            expect(again.reaches).toBe(access.reaches);
            expect(again.findings).toBe(access.findings);
            for (const part of [resolver, solids, solver]) part.sweep();
          }
        },
      ),
      { numRuns: 60, seed: 21 },
    );
  });

  it("looks again only at fasteners near what has changed", () => {
    const grid = Array.from({ length: 100 }, (_, i) => ({ x: (i % 10) * 50, y: Math.floor(i / 10) * 50 }));
    const resolver = new Resolver();
    const solids = new SolidsSolver();
    const solver = new AccessSolver();
    const shop = createShop({ drivers: DRIVERS });
    const screws = grid.map(({ x, y }, i) => ({ id: `f${i}`, x_mm: x, y_mm: y }));
    const boxes = grid.map(({ x, y }, i): Box => ({ id: `b${i}`, x: x + 25, y }));
    const book = createBook(tables(boxes, screws));
    const moved = book.tables.devices.map((row) => (row.id === "b44" ? { ...row, x_mm: row.x_mm + 2 } : row));
    for (const devices of [book.tables.devices, moved]) {
      const machine = resolver.resolve({ ...book, tables: { ...book.tables, devices } }, shop);
      solver.solve(machine, solids.solve(machine));
      for (const part of [resolver, solids, solver]) part.sweep();
    }
    // The screws on either side of it; all others are out of reach of a hand of 40 mm.
    expect(solver.computed).toBe(100 + 2);
  });
});
