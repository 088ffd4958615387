import { signedArea } from "@pinwright/kernel";
import { describe, expect, test } from "vitest";
import { FaultLog } from "../../fault-log.ts";
import { FLATTEN_MM } from "../flatten.ts";
import { readOutline } from "../read.ts";
import { parseTransform } from "./affine.ts";
import { parseLength } from "./lengths.ts";

function read(text: string) {
  const log = new FaultLog();
  const outline = readOutline("a.svg", text, log);
  const points = (outline?.rings ?? []).flat();
  const xs = points.map((p) => p.xMm);
  const ys = points.map((p) => p.yMm);
  return {
    areas: (outline?.rings ?? []).map(signedArea),
    box:
      points.length === 0
        ? null
        : [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)].map(
            (v) => Math.round(v * 1e6) / 1e6,
          ),
    points,
    faults: log.list(),
  };
}

const svg = (attributes: string, body: string) =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${body}</svg>`;
const MM = 'width="200mm" height="100mm" viewBox="0 0 200 100"';
/** The drawing's own origin counts. */
const CENTRED = 'width="200mm" height="100mm" viewBox="-100 -50 200 100"';

describe("the frame", () => {
  const rect = '<rect x="10" y="20" width="30" height="40"/>';

  test("a page that starts at (0, 0) has its origin in the lower left corner", () => {
    expect(read(svg(MM, rect))).toMatchObject({ box: [10, 40, 40, 80], areas: [1200], faults: [] });
  });

  test("otherwise the drawing's own origin counts, with y up", () => {
    expect(read(svg(CENTRED, rect))).toMatchObject({ box: [10, -60, 40, -20], areas: [1200] });
  });

  test("units: width and height over the view box; 96 px and 72 pt are an inch", () => {
    expect(read(svg('width="20cm" height="10cm" viewBox="0 0 400 200"', rect)).box).toEqual([5, 70, 20, 90]);
    expect(read(svg('width="2in" height="1in" viewBox="0 0 200 100"', rect)).areas[0]).toBeCloseTo(
      1200 * 0.254 ** 2,
      9,
    );
    expect(read(svg('width="192" height="96" viewBox="0 0 200 100"', rect)).areas[0]).toBeCloseTo(
      1200 * 0.254 ** 2,
      9,
    );
    expect(read(svg('viewBox="0 0 200 100"', rect)).areas[0]).toBeCloseTo(1200, 9);
    expect(
      read(svg('width="96px" height="96px"', '<rect width="10mm" height="0.5in"/>')).areas[0],
    ).toBeCloseTo(127, 4);
    expect(parseLength("72pt")).toBeCloseTo(96, 12);
    expect(parseLength("50%")).toBeNull();
  });

  test.each([
    [svg("", rect), "`viewBox`"],
    [svg('viewBox="0 0 0 10"', rect), "four numbers"],
    [svg('width="200mm" height="200mm" viewBox="0 0 200 100"', rect), "same scale"],
    ["<html/>", "outermost"],
    ["<svg", "well-formed XML"],
    [svg(MM, "<path d='M0 0"), "well-formed XML"],
  ])("%s is refused: %s", (text, why) => {
    expect(read(text).faults).toContainEqual(
      expect.objectContaining({ code: "outline-unreadable", expected: expect.stringContaining(why) }),
    );
  });
});

describe("shapes", () => {
  test("circle and ellipse, within the tolerance also when they are scaled up", () => {
    const { points, faults } = read(svg(CENTRED, '<circle cx="1" cy="1" r="2" transform="scale(20)"/>'));
    expect(faults).toEqual([]);
    const n = points.length;
    points.forEach((p, i) => {
      const q = points[(i + 1) % n] ?? p;
      expect(Math.hypot(p.xMm - 20, p.yMm + 20)).toBeCloseTo(40, 5);
      expect(Math.hypot((p.xMm + q.xMm) / 2 - 20, (p.yMm + q.yMm) / 2 + 20)).toBeGreaterThanOrEqual(
        40 - FLATTEN_MM,
      );
    });
    expect(read(svg(CENTRED, '<ellipse rx="30" ry="10"/>')).box).toEqual([-30, -10, 30, 10]);
  });

  test("a rounded rectangle, a polygon, and a hole in it", () => {
    const [area] = read(svg(MM, '<rect width="100" height="60" rx="5"/>')).areas;
    expect(area).toBeGreaterThan(6000 - (4 - Math.PI) * 25 - 2 * Math.PI * 5 * FLATTEN_MM);
    expect(area).toBeLessThanOrEqual(6000 - (4 - Math.PI) * 25 + 1e-6);
    const ring = '<polygon points="0,0 50,0 50,50 0,50"/><path d="M10 10h10v10h-10z"/>';
    expect(read(svg(MM, ring)).areas).toEqual([2500, -100]);
  });

  test("curves and arcs of paths; SVG 2, section 9.5: an arc of radius 25 over 50 is a half circle", () => {
    const { areas, box } = read(svg(CENTRED, '<path d="M-25 0a25 25 0 0 1 50 0z"/>'));
    expect(Math.abs((areas[0] ?? 0) - (Math.PI * 625) / 2)).toBeLessThan(25 * Math.PI * FLATTEN_MM);
    expect(box).toEqual([-25, 0, 25, 25]);
    // Area under a quadratic Bézier is two thirds of its control triangle (Archimedes).
    expect(read(svg(CENTRED, '<path d="M0 0Q20 -40 40 0Z"/>')).areas[0]).toBeCloseTo((2 / 3) * 800, -1);
    // The same as a smooth and as a cubic one.
    expect(
      read(svg(CENTRED, '<path d="M0 0C13.333333333 -26.666666667 26.666666667 -26.666666667 40 0Z"/>'))
        .areas[0],
    ).toBeCloseTo((2 / 3) * 800, -1);
  });

  test("loose lines join; text and definitions are passed over", () => {
    const body =
      '<defs><rect width="9" height="9"/></defs><title>x</title><line x1="0" y1="0" x2="10" y2="0"/><polyline points="10,0 10,10 0,0"/><text>hi</text>';
    expect(read(svg(MM, body))).toMatchObject({ areas: [50], faults: [] });
  });

  test("groups and transforms nest", () => {
    const body =
      '<g transform="translate(10,0)"><g transform="rotate(90)"><rect width="4" height="2" transform="scale(2)"/></g></g>';
    expect(read(svg(CENTRED, body))).toMatchObject({ box: [6, -8, 10, 0], areas: [32] });
  });

  test.each([
    ['<use href="#a"/><circle r="1"/>', "1 `use` element is not read"],
    ['<path d="M0 0 X"/>', "malformed data"],
    ['<path d="M0 0 L10 0 L10 10"/>', "not part of a closed ring"],
    ['<rect width="10" height="5%"/>', "no size"],
    ["<circle/>", "no radius"],
    ['<polygon points="1 2 3"/>', "pairs of numbers"],
    ['<rect width="1" height="1" transform="turn(3)"/>', "transform"],
    ["", "at least one closed ring"],
    [
      '<line x1="0" y1="0" x2="5" y2="5"/><line x1="0" y1="0" x2="5" y2="0"/><line x1="0" y1="0" x2="0" y2="5"/>',
      "3 lines meet at",
    ],
  ])("%s: %s", (body, why) => {
    expect(
      read(svg(CENTRED, body))
        .faults.map((fault) => fault.expected)
        .join("; "),
    ).toContain(why);
  });
});

test("transforms: SVG 2, section 8.5", () => {
  expect(parseTransform("matrix(1 2 3 4 5 6)")).toEqual({ a: 1, b: 2, c: 3, d: 4, e: 5, f: 6 });
  expect(parseTransform("translate(3) scale(2)")).toEqual({ a: 2, b: 0, c: 0, d: 2, e: 3, f: 0 });
  expect(parseTransform("rotate(90 10 0)")?.f).toBeCloseTo(-10, 12);
  expect(parseTransform("skewX(45)")?.c).toBeCloseTo(1, 12);
  expect(parseTransform("scale(a)")).toBeNull();
});
