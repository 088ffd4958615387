import type { OutlinePoint } from "@pinwright/book";
import { cosSinDeg } from "@pinwright/kernel";

/** Hundredths of a millimetre: finer than anything that is seen. */
const fine = (mm: number): number => Math.round(mm * 100) / 100;

/** Corners as one list of numbers, x and y by turns. */
export const flat = (ring: readonly OutlinePoint[]): readonly number[] =>
  ring.flatMap(({ xMm, yMm }) => [fine(xMm), fine(yMm)]);

/** Corners about an origin of their own. */
export const flatAbout = (ring: readonly OutlinePoint[], origin: OutlinePoint): readonly number[] =>
  ring.flatMap(({ xMm, yMm }) => [fine(xMm - origin.xMm), fine(yMm - origin.yMm)]);

/** A turned rectangle about a centre. */
export function centredRing(
  xMm: number,
  yMm: number,
  rotationDeg: number,
  widthMm: number,
  heightMm: number,
): readonly number[] {
  const w = widthMm / 2;
  const h = heightMm / 2;
  return turned(xMm, yMm, rotationDeg, [-w, -h, w, -h, w, h, -w, h]);
}

/** Corners of a polygon that stands for a round line: at 40 mm across it is 0.03 mm off. */
const ARC_STEPS = 24;

/** A rectangle with round ends, longest in its own x; a circle when both extents are the same. */
export function slotRing(
  xMm: number,
  yMm: number,
  rotationDeg: number,
  widthMm: number,
  heightMm: number,
): readonly number[] {
  const long = Math.max(widthMm, heightMm);
  const r = Math.min(widthMm, heightMm) / 2;
  const reach = long / 2 - r;
  const own: number[] = [];
  for (let i = 0; i <= ARC_STEPS; i++) {
    const { cos, sin } = cosSinDeg(-90 + (180 * i) / ARC_STEPS);
    own.push(reach + r * cos, r * sin);
  }
  for (let i = 0; i <= ARC_STEPS; i++) {
    const { cos, sin } = cosSinDeg(90 + (180 * i) / ARC_STEPS);
    own.push(-reach + r * cos, r * sin);
  }
  return turned(xMm, yMm, rotationDeg, own);
}

/** A list of corners turned about their origin and moved to a place. */
export function turned(
  xMm: number,
  yMm: number,
  rotationDeg: number,
  own: readonly number[],
): readonly number[] {
  const { cos, sin } = cosSinDeg(rotationDeg);
  const ring: number[] = [];
  for (let i = 0; i + 1 < own.length; i += 2) {
    const x = own[i] ?? 0;
    const y = own[i + 1] ?? 0;
    ring.push(fine(xMm + x * cos - y * sin), fine(yMm + x * sin + y * cos));
  }
  return ring;
}
