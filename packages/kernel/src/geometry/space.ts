import { cosSinDeg } from "./angle.ts";

/** A point or a vector in space, in millimetres. */
export interface Point3Mm {
  readonly xMm: number;
  readonly yMm: number;
  readonly zMm: number;
}

/** A frame in space: its origin and its turns about the fixed axes of the room, x first, then y, then z. */
export interface Frame3Mm extends Point3Mm {
  readonly rxDeg: number;
  readonly ryDeg: number;
  readonly rzDeg: number;
}

/** A vector turned about the fixed x axis, then the fixed y axis, then the fixed z axis; exact at quarters. */
export function rotateXyz(p: Point3Mm, rxDeg: number, ryDeg: number, rzDeg: number): Point3Mm {
  const x = cosSinDeg(rxDeg);
  const y1 = p.yMm * x.cos - p.zMm * x.sin;
  const z1 = p.yMm * x.sin + p.zMm * x.cos;
  const y = cosSinDeg(ryDeg);
  const x2 = p.xMm * y.cos + z1 * y.sin;
  const z2 = z1 * y.cos - p.xMm * y.sin;
  const z = cosSinDeg(rzDeg);
  return { xMm: x2 * z.cos - y1 * z.sin, yMm: x2 * z.sin + y1 * z.cos, zMm: z2 };
}

/** The inverse of `rotateXyz`. */
export function unrotateXyz(p: Point3Mm, rxDeg: number, ryDeg: number, rzDeg: number): Point3Mm {
  const back = rotateXyz(p, 0, 0, -rzDeg);
  const tilted = rotateXyz(back, 0, -ryDeg, 0);
  return rotateXyz(tilted, -rxDeg, 0, 0);
}

/** A point of a panel's frame (z out of its top face), in the room. */
export function fromFrame3(frame: Frame3Mm, local: Point3Mm): Point3Mm {
  const turned = rotateXyz(local, frame.rxDeg, frame.ryDeg, frame.rzDeg);
  return { xMm: frame.xMm + turned.xMm, yMm: frame.yMm + turned.yMm, zMm: frame.zMm + turned.zMm };
}

/** A point of the room, in a panel's frame: the inverse of `fromFrame3`. */
export function intoFrame3(frame: Frame3Mm, room: Point3Mm): Point3Mm {
  return unrotateXyz(
    { xMm: room.xMm - frame.xMm, yMm: room.yMm - frame.yMm, zMm: room.zMm - frame.zMm },
    frame.rxDeg,
    frame.ryDeg,
    frame.rzDeg,
  );
}

/** Distance of two points in space, mm. */
export const distance3 = (a: Point3Mm, b: Point3Mm): number =>
  Math.sqrt((a.xMm - b.xMm) ** 2 + (a.yMm - b.yMm) ** 2 + (a.zMm - b.zMm) ** 2);
