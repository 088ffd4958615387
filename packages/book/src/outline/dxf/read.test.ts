import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { signedArea } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import { FaultLog } from "../../fault-log.ts";
import { FLATTEN_MM } from "../flatten.ts";
import type { Outline, OutlinePoint } from "../outline.ts";
import { readOutline } from "../read.ts";

// The fixtures were made by ezdxf, see fixtures/make-dxf.py; the areas below are those of the shapes drawn there.
const fixture = (name: string) =>
  readFileSync(fileURLToPath(new URL(`../fixtures/${name}.dxf`, import.meta.url)), "utf8");

function read(name: string, text = fixture(name)) {
  const log = new FaultLog();
  return { outline: readOutline(`${name}.dxf`, text, log), faults: log.list() };
}

/** Every point of the rings, and the middle of every edge. */
const edgePoints = (outline: Outline | null): OutlinePoint[] =>
  (outline?.rings ?? []).flatMap((ring) =>
    ring.flatMap((p, i) => {
      const q = ring[(i + 1) % ring.length] ?? p;
      return [p, { xMm: (p.xMm + q.xMm) / 2, yMm: (p.yMm + q.yMm) / 2 }];
    }),
  );

const areas = (outline: Outline | null) => (outline?.rings ?? []).map(signedArea);

/** A polygon in a curve of this length with chords within the tolerance is smaller by less than length × tolerance. */
function expectArea(found: number | undefined, exact: number, curveLengthMm: number) {
  expect(Math.abs(exact - (found ?? 0))).toBeLessThanOrEqual(curveLengthMm * FLATTEN_MM + 1e-6);
}

describe("drawings by ezdxf", () => {
  test("a polyline with bulges, and a circle as a hole; text is passed over", () => {
    const { outline, faults } = read("plate");
    expect(faults).toEqual([]);
    const [outer, hole] = areas(outline);
    expectArea(outer, 100 * 60 - (4 - Math.PI) * 25, 2 * Math.PI * 5);
    expectArea(hole, -Math.PI * 100, 2 * Math.PI * 10);
    const xs = (outline?.rings[0] ?? []).map((p) => p.xMm);
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([0, 100]);
    for (const p of outline?.rings[1] ?? []) expect(Math.hypot(p.xMm - 50, p.yMm - 30)).toBeCloseTo(10, 5);
  });

  test("loose lines and arcs join to one ring that runs anticlockwise", () => {
    const { outline, faults } = read("loose");
    expect(faults).toEqual([]);
    expect(outline?.rings).toHaveLength(1);
    expectArea(areas(outline)[0], 40 * 20 + Math.PI * 100, 2 * Math.PI * 10);
  });

  test("an ellipse: every edge is within the tolerance of it", () => {
    const { outline, faults } = read("ellipse");
    expect(faults).toEqual([]);
    expectArea(areas(outline)[0], Math.PI * 30 * 12, 140);
    const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
    for (const { xMm, yMm } of edgePoints(outline)) {
      const [dx, dy] = [xMm - 5, yMm - 7];
      const r = Math.hypot((dx * cos + dy * sin) / 30, (dy * cos - dx * sin) / 12);
      // The distance to the curve is at most (1 − r) times the larger half axis.
      expect((1 - r) * 30).toBeLessThanOrEqual(3 * FLATTEN_MM);
      expect(r).toBeLessThanOrEqual(1 + 1e-6);
    }
  });

  test("a rational spline that is a circle is that circle", () => {
    const { outline, faults } = read("splines");
    expect(faults).toEqual([]);
    for (const { xMm, yMm } of edgePoints(outline)) {
      expect(Math.hypot(xMm, yMm)).toBeGreaterThanOrEqual(25 - FLATTEN_MM);
      expect(Math.hypot(xMm, yMm)).toBeLessThanOrEqual(25 + 1e-5);
    }
  });

  test("blocks are turned, mirrored and scaled; the larger ring comes first", () => {
    const { outline, faults } = read("blocks");
    expect(faults).toEqual([]);
    expect(areas(outline).map((a) => Math.round(a * 1e3) / 1e3)).toEqual([400, 100]);
    const corners = (outline?.rings ?? []).map((ring) =>
      ring.map((p) => `${p.xMm.toFixed(3)} ${p.yMm.toFixed(3)}`).sort(),
    );
    const d = (10 * Math.SQRT1_2).toFixed(3);
    expect(corners[0]).toEqual(["100.000 0.000", "100.000 20.000", "80.000 0.000", "80.000 20.000"]);
    expect(corners[1]).toEqual([`-${d} ${d}`, "0.000 0.000", "0.000 14.142", `${d} ${d}`]);
  });

  test("inches are converted", () => {
    const { outline, faults } = read("inches");
    expect(faults).toEqual([]);
    expectArea(areas(outline)[0], (2 + Math.PI / 8) * 25.4 * 25.4, Math.PI * 12.7);
  });

  test("what is not read is told: a hatch, an open ring; a turned plane is mirrored", () => {
    const { outline, faults } = read("faulty");
    expect(faults).toMatchObject([
      {
        code: "outline-unreadable",
        file: "outlines/faulty.dxf",
        row: expect.any(Number),
        expected: expect.stringContaining("1 HATCH"),
      },
      { code: "outline-unreadable", expected: expect.stringContaining("(0, 1) to (0, 0)") },
    ]);
    expect(outline?.rings).toHaveLength(1);
    for (const p of outline?.rings[0] ?? []) expect(Math.hypot(p.xMm - 50, p.yMm)).toBeCloseTo(5, 5);
  });
});

/** A DXF with these entities, written by hand as in the DXF Reference. */
const dxf = (...groups: readonly (string | number)[]) =>
  `${[0, "SECTION", 2, "ENTITIES", ...groups, 0, "ENDSEC", 0, "EOF"].join("\n")}\n`;

describe("files that are no use", () => {
  test.each([
    ["AutoCAD Binary DXF\r\n\u001a", "binary"],
    ["hello\nworld\n", "group code"],
    ["0\nSECTION\n2\nENTITIES\n", "cut off"],
    ["0\nEOF\n", "ENTITIES"],
    ["", "cut off"],
    [dxf(), "at least one closed ring"],
    [dxf(0, "LINE", 10, 0, 20, 0, 11, 5, 21, 5), "not part of a closed ring"],
    [dxf(0, "CIRCLE", 10, 0, 20, 0, 40, -1), "no radius"],
    [dxf(0, "CIRCLE", 10, 0, 20, 0, 40, 1, 210, 1, 220, 0, 230, 0), "tilted"],
    [dxf(0, "SPLINE", 71, 3, 11, 0, 21, 0, 11, 1, 21, 1), "fit points"],
    [dxf(0, "SPLINE", 71, 3, 40, 0, 10, 0, 20, 0), "control points"],
    [dxf(0, "INSERT", 2, "NONE", 10, 0, 20, 0), "a block named `NONE`"],
    [dxf(0, "CIRCLE", 10, "x", 20, 0, 40, 1, 0, "LWPOLYLINE", 10, "x", 20, 1), "numbers as coordinates"],
  ])("%j: %s", (text, why) => {
    const { faults } = read("plate", text);
    expect(faults.map((fault) => fault.expected).join("; ")).toContain(why);
    for (const fault of faults) expect(fault.code).toBe("outline-unreadable");
  });

  test("blocks that contain each other do not hang", () => {
    const block = [
      0,
      "BLOCK",
      2,
      "A",
      10,
      0,
      20,
      0,
      0,
      "INSERT",
      2,
      "A",
      10,
      0,
      20,
      0,
      70,
      30,
      71,
      30,
      44,
      1,
      45,
      1,
      0,
      "ENDBLK",
    ];
    const text = `${[0, "SECTION", 2, "BLOCKS", ...block, 0, "ENDSEC", 0, "SECTION", 2, "ENTITIES", 0, "INSERT", 2, "A", 10, 0, 20, 0, 0, "ENDSEC", 0, "EOF"].join("\n")}\n`;
    expect(read("plate", text).faults.length).toBeGreaterThan(0);
  });
});
