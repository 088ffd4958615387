import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { circlesOf } from "./circles.ts";

// The fixtures were made by ezdxf, see fixtures/make-dxf.py.
const fixture = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../fixtures/${name}.dxf`, import.meta.url)), "utf8");

type Group = readonly [code: number, value: string | number];

/** A DXF drawing from groups; the unit is that of `$INSUNITS`. */
const drawing = (unit: number, blocks: readonly Group[], entities: readonly Group[]): string =>
  [
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$INSUNITS"],
    [70, unit],
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "BLOCKS"],
    ...blocks,
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "ENTITIES"],
    ...entities,
    [0, "ENDSEC"],
    [0, "EOF"],
  ]
    .map(([code, value]) => `${code}\n${value}\n`)
    .join("");

const circle = (layer: string, x: number, y: number, radius: number): readonly Group[] => [
  [0, "CIRCLE"],
  [8, layer],
  [10, x],
  [20, y],
  [40, radius],
];

describe("circlesOf", () => {
  it("finds the circles of real drawings, turned planes included", () => {
    expect(circlesOf(fixture("plate"))).toEqual({
      circles: [{ xMm: 50, yMm: 30, diameterMm: 20, layer: "0" }],
      problems: [],
    });
    expect(circlesOf(fixture("faulty")).circles).toEqual([{ xMm: 50, yMm: 0, diameterMm: 10, layer: "0" }]);
  });

  it("gives millimetres, and the layer, of a drawing in inches", () => {
    const text = drawing(1, [], circle("HOLES", 1, 2, 0.125));
    expect(circlesOf(text).circles).toEqual([{ xMm: 25.4, yMm: 50.8, diameterMm: 6.35, layer: "HOLES" }]);
  });

  it("follows blocks that are turned, scaled and repeated; layer 0 in a block is that of the block", () => {
    const block: readonly Group[] = [
      [0, "BLOCK"],
      [2, "POST"],
      [10, 0],
      [20, 0],
      ...circle("0", 10, 0, 2),
      ...circle("PILOT", 0, 0, 1),
      [0, "ENDBLK"],
    ];
    const insert: readonly Group[] = [
      [0, "INSERT"],
      [2, "POST"],
      [8, "POSTS"],
      [10, 100],
      [20, 50],
      [41, 2],
      [42, 2],
      [50, 90],
    ];
    expect(circlesOf(drawing(4, block, insert)).circles).toEqual([
      { xMm: 100, yMm: 70, diameterMm: 8, layer: "POSTS" },
      { xMm: 100, yMm: 50, diameterMm: 4, layer: "PILOT" },
    ]);
  });

  it("takes two half circles of one polyline for a circle, and counts one that is drawn twice once", () => {
    const twice = [...circle("A", 5, 5, 1), ...circle("A", 5, 5, 1), ...circle("B", 5, 5, 1)];
    const polyline: readonly Group[] = [
      [0, "LWPOLYLINE"],
      [8, "A"],
      [70, 1],
      [10, 0],
      [20, 0],
      [42, 1],
      [10, 6],
      [20, 0],
      [42, 1],
    ];
    expect(circlesOf(drawing(4, [], [...twice, ...polyline])).circles).toEqual([
      { xMm: 5, yMm: 5, diameterMm: 2, layer: "A" },
      { xMm: 5, yMm: 5, diameterMm: 2, layer: "B" },
      { xMm: 3, yMm: 0, diameterMm: 6, layer: "A" },
    ]);
  });

  it("says what it cannot use", () => {
    expect(circlesOf("hello").problems).toHaveLength(1);
    expect(circlesOf(drawing(4, [], circle("A", 0, 0, 0)))).toMatchObject({
      circles: [],
      problems: [{ text: expect.stringContaining("no radius") }],
    });
    const tilted = [...circle("A", 0, 0, 1), [210, 1] as const, [220, 0] as const, [230, 0] as const];
    expect(circlesOf(drawing(4, [], tilted)).problems).toMatchObject([
      { text: expect.stringContaining("tilted") },
    ]);
  });
});
