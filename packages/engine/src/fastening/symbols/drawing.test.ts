import { signedArea } from "@pinwright/kernel";
import { describe, expect, it } from "vitest";
import { SHADES, symbolOutline } from "./drawing.ts";
import { SHADE_COLOURS, SHADE_COLOURS_ON_DARK } from "./shade-colours.ts";
import { SIGNS, type Sign } from "./symbol-likeness.ts";
import {
  DEFICIENCIES,
  greyOf,
  labDifference,
  labOf,
  linearOf,
  luminance,
  type Rgb,
  seenBy,
} from "./testing/colour-vision.ts";
import { blur, rasterise } from "./testing/raster.ts";

const CELL_MM = 0.05;

/** Cells of a disc of this diameter, as offsets. */
function disc(diameterMm: number): readonly (readonly [number, number])[] {
  const r = diameterMm / 2 / CELL_MM;
  const reach = Math.ceil(r);
  const cells: [number, number][] = [];
  for (let y = -reach; y <= reach; y++)
    for (let x = -reach; x <= reach; x++) if (x * x + y * y <= r * r) cells.push([x, y]);
  return cells;
}

/** Cells from which no part of the disc leaves `cells`; outside the raster is `beyond`. */
function spread(
  cells: Uint8Array,
  size: number,
  by: readonly (readonly [number, number])[],
  value: 0 | 1,
): Uint8Array {
  const out = Uint8Array.from(cells);
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++) {
      if (cells[row * size + column] !== value) continue;
      for (const [x, y] of by) {
        const [c, r] = [column + x, row + y];
        if (c >= 0 && r >= 0 && c < size && r < size) out[r * size + c] = value;
      }
    }
  return out;
}

/** Area of what a disc of this diameter cannot be moved within: places that are narrower, mm². */
function narrowerArea(cells: Uint8Array, size: number, diameterMm: number, ink: 0 | 1): number {
  const by = disc(diameterMm);
  const other = ink === 1 ? 0 : 1;
  const opened = spread(spread(cells, size, by, other), size, by, ink);
  let lost = 0;
  cells.forEach((cell, i) => {
    if (cell === ink && opened[i] !== ink) lost++;
  });
  return lost * CELL_MM * CELL_MM;
}

describe("drawings of symbols", () => {
  it.each(SIGNS.map((sign): [string, Sign] => [`${sign.shade} ${sign.shape}`, sign]))(
    "%s has no stroke and no gap under 0.3 mm at 4 mm, and keeps within its square",
    (_, sign) => {
      const rings = symbolOutline(sign, 4);
      for (const p of rings.flat()) {
        expect(Math.abs(p.xMm)).toBeLessThanOrEqual(2.15);
        expect(Math.abs(p.yMm)).toBeLessThanOrEqual(2.15);
      }
      const { size, ink } = rasterise(rings, CELL_MM);
      const cells = Uint8Array.from(ink, (share) => (share >= 0.5 ? 1 : 0));
      // A disc one cell smaller, since the cells round the curves; what is left are cells at corners.
      expect(narrowerArea(cells, size, 0.3 - CELL_MM, 1)).toBeLessThan(0.06);
      expect(narrowerArea(cells, size, 0.3 - CELL_MM, 0)).toBeLessThan(0.06);
    },
  );

  it("of a stroke of 0.2 mm would fail", () => {
    const line = [-0.1, 0.1].flatMap((x) => [
      { xMm: x, yMm: -x * 15 },
      { xMm: x, yMm: x * 15 },
    ]);
    const { size, ink } = rasterise([line], CELL_MM);
    const cells = Uint8Array.from(ink, (share) => (share >= 0.5 ? 1 : 0));
    expect(narrowerArea(cells, size, 0.3 - CELL_MM, 1)).toBeGreaterThan(0.3);
  });

  it("scales, and winds holes the other way", () => {
    const [at4, at8] = [4, 8].map((mm) => symbolOutline({ shape: "circle", shade: "open" }, mm));
    expect(at4?.map((ring) => Math.sign(signedArea(ring))).sort()).toEqual([-1, 1]);
    expect(at8?.[0]?.[0]?.xMm).toBeCloseTo(2 * (at4?.[0]?.[0]?.xMm ?? 0), 9);
  });
});

const EYES: Readonly<Record<string, (rgb: Rgb) => Rgb>> = {
  usual: (rgb) => rgb,
  protan: (rgb) => seenBy(DEFICIENCIES.protan, rgb),
  deutan: (rgb) => seenBy(DEFICIENCIES.deutan, rgb),
  tritan: (rgb) => seenBy(DEFICIENCIES.tritan, rgb),
  grey: greyOf,
};

describe("colours of symbols", () => {
  it("are simulated with matrices that leave greys grey", () => {
    for (const rows of Object.values(DEFICIENCIES))
      for (const row of rows) expect(row.reduce((s, x) => s + x, 0)).toBeCloseTo(1, 5);
  });

  it("stand 4.5 : 1 against their ground", () => {
    for (const shade of SHADES) {
      expect(1.05 / (luminance(linearOf(SHADE_COLOURS[shade])) + 0.05)).toBeGreaterThanOrEqual(4.5);
      const dark = luminance(linearOf("#1b2229"));
      const on = luminance(linearOf(SHADE_COLOURS_ON_DARK[shade]));
      expect((on + 0.05) / (dark + 0.05)).toBeGreaterThanOrEqual(4.5);
    }
  });

  // 0.15 mm is what one minute of arc, the sharpness of a sound eye, comes to at half a metre.
  it.each(Object.keys(EYES))("leave any two symbols apart by ΔE 20 somewhere, seen by a %s eye", (eye) => {
    const see = EYES[eye] ?? greyOf;
    const seen = SIGNS.map((sign) => {
      const ink = see(linearOf(SHADE_COLOURS[sign.shade]));
      const { ink: shares } = blur(rasterise(symbolOutline(sign, 4), 0.2), 0.15);
      return [...shares].map((share) => labOf([mix(ink[0], share), mix(ink[1], share), mix(ink[2], share)]));
    });
    let least = Number.POSITIVE_INFINITY;
    seen.forEach((a, i) => {
      for (const b of seen.slice(0, i)) {
        const most = a.reduce((m, lab, c) => Math.max(m, labDifference(lab, b[c] ?? lab)), 0);
        least = Math.min(least, most);
      }
    });
    expect(least).toBeGreaterThan(20);
  });
});

/** White paper with a share of ink, linear light. */
const mix = (ink: number, share: number): number => 1 - share + ink * share;
