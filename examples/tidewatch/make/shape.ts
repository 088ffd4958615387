import type { Outline } from "@pinwright/book";
import {
  anticlockwise,
  differenceRings,
  type PointMm,
  polar,
  thickenLine,
  unionRings,
} from "@pinwright/kernel";

/** A closed shape in the playfield's frame, in mm. */
export type Shape = readonly PointMm[];

export type Xy = readonly [xMm: number, yMm: number];

/** The playing area between the rails is 10 to 460 mm wide: its middle is the axis of the lower playfield. */
export const AXIS_X_MM = 235;

export const polygon = (...corners: readonly Xy[]): Shape => corners.map(([xMm, yMm]) => ({ xMm, yMm }));

export const box = (minX: number, minY: number, maxX: number, maxY: number): Shape =>
  polygon([minX, minY], [maxX, minY], [maxX, maxY], [minX, maxY]);

/** Points of an arc from one direction to another, anticlockwise when the second is larger, 6 degrees apart. */
export function arc([x, y]: Xy, radius: number, fromDeg: number, toDeg: number): Xy[] {
  const steps = Math.max(1, Math.ceil(Math.abs(toDeg - fromDeg) / 6));
  return Array.from({ length: steps + 1 }, (_, i): Xy => {
    const at = polar(fromDeg + ((toDeg - fromDeg) * i) / steps, radius);
    return [x + at.xMm, y + at.yMm];
  });
}

export const disc = (centre: Xy, radius: number): Shape => polygon(...arc(centre, radius, 0, 354));

/** A bent strip of metal, wood or wire of one width, with round ends. */
export function strip(width: number, ...line: readonly Xy[]): Shape {
  const [ring] = thickenLine(
    line.map(([xMm, yMm]) => ({ xMm, yMm })),
    width,
  );
  if (ring === undefined) throw new Error("A strip needs at least one point.");
  return ring;
}

/** A rubber ring stretched over posts of one radius: the hull of their discs. */
export function rubber(radius: number, ...posts: readonly Xy[]): Shape {
  const points = posts
    .flatMap((post) => disc(post, radius))
    .toSorted((a, b) => a.xMm - b.xMm || a.yMm - b.yMm);
  const half = (list: readonly PointMm[]) => {
    const hull: PointMm[] = [];
    for (const p of list) {
      for (;;) {
        const [a, b] = [hull.at(-2), hull.at(-1)];
        if (a === undefined || b === undefined) break;
        const turn = (b.xMm - a.xMm) * (p.yMm - a.yMm) - (b.yMm - a.yMm) * (p.xMm - a.xMm);
        if (turn > 0) break;
        hull.pop();
      }
      hull.push(p);
    }
    return hull.slice(0, -1);
  };
  return [...half(points), ...half(points.toReversed())];
}

/** Several shapes that are made as one piece. */
export function together(...shapes: readonly Shape[]): Shape {
  const [ring, ...others] = unionRings(shapes);
  if (ring === undefined || others.length > 0) throw new Error("The shapes do not make one piece.");
  return ring;
}

/** A shape with a recess cut into its edge. */
export function without(shape: Shape, recess: Shape): Shape {
  const [ring, ...others] = differenceRings([shape], [recess]);
  if (ring === undefined || others.length > 0) throw new Error("The recess cuts the shape apart.");
  return ring;
}

/** The same shape on the other hand, mirrored about the axis of the lower playfield. */
export const mirrored = (shape: Shape): Shape =>
  anticlockwise(shape.map((p) => ({ xMm: 2 * AXIS_X_MM - p.xMm, yMm: p.yMm })));

export const mirroredXy = ([x, y]: Xy): Xy => [2 * AXIS_X_MM - x, y];

const hundredth = (value: number) => Math.round(value * 100) / 100;

/** An outline about an own origin, from a shape in the playfield's frame. */
export const outlineAbout = ([x, y]: Xy, shape: Shape): Outline => ({
  rings: [anticlockwise(shape).map((p) => ({ xMm: hundredth(p.xMm - x), yMm: hundredth(p.yMm - y) }))],
});
