import type { BookRow } from "@pinwright/book";
import { signedArea } from "@pinwright/kernel";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Machine, Resolver, resolveMachine, type Solid } from "../../model/index.ts";
import { createBook, createMachine, createShop, type SomeTables } from "../../testing/book.ts";
import { SolidsSolver, solidIndexOf } from "./solids-solver.ts";

const PANEL = { id: "pf", width_mm: 500, height_mm: 1000, thickness_mm: 13 } as const;
const AT = { panel: "pf", x_mm: 100, y_mm: 200 } as const;

const solve = (machine: Machine): readonly Solid[] => [...new SolidsSolver().solve(machine).values()].flat();

const solids = (some: SomeTables): readonly Solid[] => solve(createMachine({ panels: [PANEL], ...some }));

const heights = (list: readonly Solid[]): Record<string, readonly [number, number]> =>
  Object.fromEntries(list.map((s) => [s.id, [s.lowMm, s.highMm] as const]));

const bounds = ({ box }: Solid): readonly number[] => [box.minXMm, box.minYMm, box.maxXMm, box.maxYMm];

const DEVICE = { id: "dt", width_mm: 20, depth_mm: 10, height_mm: 30 } as const;

describe("solids of items", () => {
  test("a device stands off its own side", () => {
    const list = solids({
      device_types: [DEVICE],
      devices: [
        { id: "a", type: "dt", side: "top", ...AT },
        { id: "b", type: "dt", side: "under", ...AT, z_mm: 5 },
      ],
    });
    expect(heights(list)).toEqual({ a: [0, 30], b: [-48, -18] });
    expect(list.map(bounds)).toEqual([
      [90, 195, 110, 205],
      [90, 195, 110, 205],
    ]);
    expect(list.every(({ ring }) => signedArea(ring) > 0)).toBe(true);
  });

  test("what reaches through the panel is what of it lies over its opening", () => {
    const some: SomeTables = {
      device_types: [{ ...DEVICE, reach_mm: 24 }],
      devices: [{ id: "a", type: "dt", side: "under", ...AT }],
    };
    const cut = { panel: "pf", side: "top", shape: "circle", width_mm: 6, x_mm: 109, y_mm: 200 } as const;
    const other = { ...cut, x_mm: 95, serves: "other" };
    const list = solids({
      ...some,
      cutouts: [
        { id: "c", ...cut },
        { id: "d", ...other },
      ],
    });
    expect(heights(list)).toEqual({ a: [-43, -13], "a#reach": [-13, 24] });
    const reach = list[1];
    expect(reach === undefined ? [] : bounds(reach)).toEqual([106, 197, 110, 203]);
    expect(solids({ ...some, cutouts: [{ id: "c", ...cut, depth_mm: 5 }] }).map(({ id }) => id)).toEqual([
      "a",
    ]);
  });

  test("parts of a type take the place of its outline; those of a device are turned over on the underside", () => {
    const body = { id: "bo", device_type: "dt", x_mm: 6, y_mm: 0, width_mm: 4, depth_mm: 2 } as const;
    const list = solids({
      device_types: [{ ...DEVICE, reach_mm: 8 }],
      devices: [{ id: "a", type: "dt", side: "under", ...AT, rotation_deg: 90 }],
      bodies: [
        { ...body, from_mm: 2, to_mm: 12 },
        { ...body, id: "pin", round: true, x_mm: 0, width_mm: 3, from_mm: -20, to_mm: 2, moves: true },
      ],
    });
    expect(heights(list)).toEqual({ "a#bo": [-25, -15], "a#pin": [-15, 7] });
    expect(list.map(({ moves }) => moves)).toEqual([false, true]);
    // Its own x points to −x on the underside, and a quarter turn makes that −y.
    expect(list[0] === undefined ? [] : bounds(list[0])).toEqual([99, 192, 101, 196]);
  });

  test("devices of a mechanism belong to it, and one beyond the far face stands away from that", () => {
    const list = solids({
      mechanism_types: [{ id: "mt", width_mm: 60, depth_mm: 40, height_mm: 50 }],
      device_types: [DEVICE],
      mechanism_devices: [
        { mechanism_type: "mt", child: "coil", device_type: "dt", x_mm: 10, z_mm: 8, rotation_deg: 90 },
        { mechanism_type: "mt", child: "bat", device_type: "dt", x_mm: 20, z_mm: -16 },
      ],
      mechanisms: [{ id: "m", type: "mt", side: "under", ...AT, rotation_deg: 90 }],
    });
    expect(heights(list)).toEqual({ m: [-63, -13], "m/coil": [-51, -21], "m/bat": [3, 33] });
    expect(new Set(list.map(({ itemId }) => itemId))).toEqual(new Set(["m"]));
    expect(list.map(({ kind }) => kind)).toEqual(["mechanism", "device", "device"]);
    expect(list.map(bounds)).toEqual([
      [80, 170, 120, 230],
      [95, 210, 105, 230],
      [90, 205, 110, 215],
    ]);
  });

  test("a board lies on its stand-offs, which are hexagons of their own height", () => {
    const list = solids({
      board_types: [{ id: "bt", width_mm: 80, depth_mm: 40, height_mm: 14, standoff_mm: 36 }],
      boards: [{ id: "b", type: "bt", side: "under", ...AT }],
      fastener_types: [
        { id: "so", kind: "standoff", diameter_mm: 3, length_mm: 9, head_diameter_mm: 6, head_height_mm: 36 },
      ],
      fasteners: [{ id: "f", type: "so", side: "under", ...AT, holds: "b" }],
    });
    expect(heights(list)).toEqual({ b: [-64.6, -49], "f#body": [-49, -13], "f#shank": [-13, -4] });
    expect(list.find(({ id }) => id === "f#body")?.ring).toHaveLength(6);
    expect(list[0] === undefined ? [] : bounds(list[0])).toEqual([100, 200, 180, 240]);
  });

  test("a screw has head, washer, shank, point and nut; a post stands between the panel and what it holds", () => {
    const types: readonly Partial<BookRow<"fastener_types">>[] = [
      {
        id: "m4",
        kind: "machine-screw",
        diameter_mm: 4,
        length_mm: 20,
        head_diameter_mm: 8,
        head_height_mm: 3,
      },
      { id: "w", kind: "washer", diameter_mm: 4.3, length_mm: 0.8, head_diameter_mm: 9 },
      { id: "n", kind: "nut", diameter_mm: 4, length_mm: 3.2, head_diameter_mm: 7 },
      { id: "post", kind: "post", diameter_mm: 4, length_mm: 34, head_diameter_mm: 8, head_height_mm: 0 },
    ];
    const list = solids({
      fastener_types: types,
      fasteners: [
        { id: "f", type: "m4", side: "top", ...AT, flange_mm: 2, washer: "w", nut: "n" },
        { id: "p", type: "post", side: "top", ...AT, flange_mm: 24 },
      ],
    });
    const found = Object.fromEntries(
      Object.entries(heights(list)).map(([id, [low, high]]) => [
        id,
        [low, high].map((mm) => Number(mm.toFixed(3))),
      ]),
    );
    expect(found).toEqual({
      "f#head": [2.8, 5.8],
      "f#washer": [2, 2.8],
      "f#shank": [-13, 0],
      "f#point": [-18, -13],
      "f#nut": [-16.2, -13],
      "p#body": [0, 24],
      "p#shank": [-10, 0],
    });
  });

  test("an outline with a hole is cut into pieces that cover its area", () => {
    const square = (half: number): { xMm: number; yMm: number }[] => [
      { xMm: -half, yMm: -half },
      { xMm: half, yMm: -half },
      { xMm: half, yMm: half },
      { xMm: -half, yMm: half },
    ];
    const book = createBook({
      panels: [PANEL],
      device_types: [{ ...DEVICE, outline: "ring.svg" }],
      devices: [{ id: "a", type: "dt", side: "top", ...AT, rotation_deg: 30 }],
    });
    const rings = [square(20), square(15).toReversed()];
    const machine = resolveMachine({ ...book, outlines: new Map([["ring.svg", { rings }]]) }, createShop());
    const list = solve(machine);
    expect(list.map(({ id }) => id)).toEqual(["a", "a#part.2"]);
    expect(list.reduce((sum, { ring }) => sum + signedArea(ring), 0)).toBeCloseTo(1600 - 900, 1);
  });
});

describe("memory of solids", () => {
  const rows = (n: number): SomeTables => ({
    panels: [PANEL],
    device_types: [{ ...DEVICE, reach_mm: 4 }],
    cutouts: [{ id: "c", panel: "pf", side: "top", shape: "circle", width_mm: 9, x_mm: 100, y_mm: 100 }],
    mechanism_types: [{ id: "mt", width_mm: 60, depth_mm: 40, height_mm: 50 }],
    mechanism_devices: [{ mechanism_type: "mt", child: "coil", device_type: "dt", z_mm: 8 }],
    mechanisms: Array.from({ length: n }, (_, i) => ({
      id: `m${i}`,
      type: "mt",
      panel: "pf",
      side: "under" as const,
      x_mm: 50 * i,
    })),
  });

  test("after one moved mechanism only it and its devices are made anew", () => {
    const resolver = new Resolver();
    const solver = new SolidsSolver();
    const book = createBook(rows(40));
    const before = solver.solve(resolver.resolve(book, createShop()));
    solver.sweep();
    const mechanisms = book.tables.mechanisms.map((m, i) => (i === 7 ? { ...m, x_mm: 1 } : m));
    const computed = solver.computed;
    const after = solver.solve(
      resolver.resolve({ ...book, tables: { ...book.tables, mechanisms } }, createShop()),
    );
    expect(solver.computed - computed).toBe(2);
    for (const [id, list] of after) if (id !== "m7") expect(list).toBe(before.get(id));
  });

  test("remembered solids are those from scratch, over random edits", () => {
    const edit = fc.record({
      i: fc.nat(5),
      x: fc.integer({ min: 0, max: 400 }),
      body: fc.boolean(),
      cut: fc.integer({ min: 60, max: 140 }),
    });
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 6 }), (edits) => {
        const resolver = new Resolver();
        const solver = new SolidsSolver();
        const shop = createShop();
        let book = createBook(rows(6));
        for (const { i, x, body, cut } of edits) {
          const t = book.tables;
          const [filled] = createBook({
            bodies: [{ id: "b", mechanism_type: "mt", width_mm: x / 10 + 1, from_mm: -20, to_mm: 10 }],
          }).tables.bodies;
          book = {
            ...book,
            tables: {
              ...t,
              mechanisms: t.mechanisms.map((m, at) => (at === i ? { ...m, x_mm: x } : m)),
              cutouts: t.cutouts.map((c) => ({ ...c, x_mm: cut })),
              bodies: body && filled !== undefined ? [filled] : [],
            },
          };
          const machine = resolver.resolve(book, shop);
          expect([...solver.solve(machine)]).toEqual([...new SolidsSolver().solve(machine)]);
          solver.sweep();
          resolver.sweep();
        }
      }),
      { numRuns: 25, seed: 5 },
    );
  });

  test("the index finds what overlaps a box between two heights, and is found once for the same solids", () => {
    const found = new SolidsSolver().solve(createMachine(rows(12)));
    const index = solidIndexOf(found);
    expect(solidIndexOf(found)).toBe(index);
    const box = { minXMm: 95, minYMm: -5, maxXMm: 105, maxYMm: 5 };
    const all = [...found.values()].flat();
    const near = all.filter(
      (s) =>
        s.box.minXMm < 105 && s.box.maxXMm > 95 && s.box.minYMm < 5 && s.box.maxYMm > -5 && s.highMm > -60,
    );
    expect(new Set(index.near("pf", box, -60, 0))).toEqual(new Set(near));
    expect(near.length).toBeGreaterThan(1);
    expect(index.near("other", box)).toEqual([]);
  });
});
