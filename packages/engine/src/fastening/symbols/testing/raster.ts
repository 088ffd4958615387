import { type RingMm, ringSides } from "@pinwright/kernel";
import { DESIGN_MM } from "../shapes.ts";

/** Ink on a square of cells, 0 to 1 in each, first row lowest. */
export interface Raster {
  readonly size: number;
  readonly cellMm: number;
  readonly ink: Float64Array;
}

/** White round a drawing, so that a blur loses nothing. */
const MARGIN_MM = 0.8;

/** Lines that are looked at in each row of cells. */
const LINES = 4;

/**
 * A drawing round the origin as cells: each holds the share of it that is ink, measured exactly along four lines.
 * Even-odd filling.
 */
export function rasterise(rings: readonly RingMm[], cellMm: number): Raster {
  const half = DESIGN_MM / 2 + MARGIN_MM;
  const size = Math.round((2 * half) / cellMm);
  const ink = new Float64Array(size * size);
  const sides = rings.flatMap(ringSides);
  for (let line = 0; line < size * LINES; line++) {
    const y = -half + ((line + 0.5) * cellMm) / LINES;
    const crossings: number[] = [];
    for (const { a, b } of sides) {
      if (a.yMm > y === b.yMm > y) continue;
      const x = a.xMm + ((b.xMm - a.xMm) * (y - a.yMm)) / (b.yMm - a.yMm);
      crossings.push((x + half) / cellMm);
    }
    crossings.sort((a, b) => a - b);
    const row = Math.floor(line / LINES) * size;
    for (let i = 0; i + 1 < crossings.length; i += 2) {
      const [from, to] = [crossings[i] ?? 0, crossings[i + 1] ?? 0];
      for (let c = Math.max(0, Math.floor(from)); c < Math.min(size, to); c++) {
        const share = Math.min(to, c + 1) - Math.max(from, c);
        ink[row + c] = (ink[row + c] ?? 0) + share / LINES;
      }
    }
  }
  return { size, cellMm, ink };
}

/** A raster seen out of focus: a Gaussian blur of this standard deviation, along rows and then columns. */
export function blur(raster: Raster, sigmaMm: number): Raster {
  const { size, cellMm } = raster;
  const reach = Math.ceil((3 * sigmaMm) / cellMm);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-(((i - reach) * cellMm) ** 2) / (2 * sigmaMm ** 2)),
  );
  const sum = kernel.reduce((s, k) => s + k, 0);
  const along = (from: Float64Array, step: number, across: number): Float64Array => {
    const to = new Float64Array(from.length);
    for (let line = 0; line < size; line++) {
      for (let i = 0; i < size; i++) {
        let s = 0;
        for (let k = Math.max(0, i - reach); k <= Math.min(size - 1, i + reach); k++)
          s += (from[line * across + k * step] ?? 0) * (kernel[k - i + reach] ?? 0);
        to[line * across + i * step] = s / sum;
      }
    }
    return to;
  };
  return { size, cellMm, ink: along(along(raster.ink, 1, size), size, 1) };
}

/** The same drawing turned a quarter anticlockwise. */
export function quarterTurn({ size, cellMm, ink }: Raster): Raster {
  const turned = new Float64Array(ink.length);
  for (let row = 0; row < size; row++)
    for (let column = 0; column < size; column++)
      turned[column * size + (size - 1 - row)] = ink[row * size + column] ?? 0;
  return { size, cellMm, ink: turned };
}

/** Share of the ink of two drawings, laid over each other, that they have in common; 1 for equal ones. */
export function inkInCommon(a: Raster, b: Raster): number {
  let differing = 0;
  let all = 0;
  for (let i = 0; i < a.ink.length; i++) {
    const x = a.ink[i] ?? 0;
    const y = b.ink[i] ?? 0;
    differing += Math.abs(x - y);
    all += Math.max(x, y);
  }
  return all === 0 ? 1 : 1 - differing / all;
}
