import { type Frame3Mm, fromFrame, type PointMm, seededRandom } from "@pinwright/kernel";
import { discRing } from "../solids/rings.ts";

/** Coordinates of layouts are whole micrometres, so that every program starts from the same numbers. */
const rounded = (ring: readonly PointMm[]): PointMm[] =>
  ring.map((p) => ({ xMm: Math.round(p.xMm * 1000) / 1000, yMm: Math.round(p.yMm * 1000) / 1000 }));

const AREA_MM = 120;
const MOST_MM = 40;

type Random = () => number;

const between = (random: Random, least: number, most: number): number => least + random() * (most - least);

function rectangle(widthMm: number, depthMm: number): PointMm[] {
  return [
    { xMm: 0, yMm: 0 },
    { xMm: widthMm, yMm: 0 },
    { xMm: widthMm, yMm: depthMm },
    { xMm: 0, yMm: depthMm },
  ];
}

function angle(widthMm: number, depthMm: number, legMm: number): PointMm[] {
  return [
    { xMm: 0, yMm: 0 },
    { xMm: widthMm, yMm: 0 },
    { xMm: widthMm, yMm: legMm },
    { xMm: legMm, yMm: legMm },
    { xMm: legMm, yMm: depthMm },
    { xMm: 0, yMm: depthMm },
  ];
}

function shape(random: Random): readonly PointMm[] {
  const widthMm = between(random, 3, MOST_MM);
  const depthMm = between(random, 3, MOST_MM);
  const kind = Math.floor(random() * 3);
  if (kind === 0) return rectangle(widthMm, depthMm);
  if (kind === 1) return discRing(widthMm);
  return angle(widthMm, depthMm, between(random, 1, Math.min(widthMm, depthMm) - 0.5));
}

/** A shape whose lower left corner touches the right-hand side of the box of another one. */
function touching(random: Random, other: readonly PointMm[]): PointMm[] {
  const right = Math.max(...other.map((p) => p.xMm));
  const low = Math.min(...other.map((p) => p.yMm));
  const ring = rectangle(between(random, 3, MOST_MM), between(random, 3, MOST_MM));
  return ring.map((p) => ({ xMm: p.xMm + right, yMm: p.yMm + low }));
}

/**
 * A layout of 6 to 14 shapes: rectangles, discs and angles, turned in any direction or by quarters, apart, overlapping,
 * one within another, or touching. The same for the same seed.
 */
export function randomLayout(seed: number): readonly (readonly PointMm[])[] {
  const random = seededRandom(seed);
  const shapes: PointMm[][] = [];
  const count = 6 + Math.floor(random() * 9);
  while (shapes.length < count) {
    const last = shapes.at(-1);
    if (last !== undefined && random() < 0.2) {
      shapes.push(rounded(touching(random, last)));
      continue;
    }
    const rotationDeg = random() < 0.3 ? 90 * Math.floor(random() * 4) : between(random, 0, 360);
    const frame = { xMm: between(random, 0, AREA_MM), yMm: between(random, 0, AREA_MM), rotationDeg };
    shapes.push(rounded(shape(random).map((p) => fromFrame(frame, p))));
  }
  return shapes;
}

/** An upright prism in a frame of its own in the room. */
export interface RandomPrism {
  readonly ring: readonly PointMm[];
  readonly lowMm: number;
  readonly highMm: number;
  readonly frame: Frame3Mm;
}

/** Two prisms of any shape in frames that are turned about all axes, near enough to meet about every other time. */
export function randomPrisms(seed: number): readonly [RandomPrism, RandomPrism] {
  const random = seededRandom(seed);
  const prism = (): RandomPrism => {
    const lowMm = between(random, -20, 10);
    const turned = random() < 0.8;
    const degrees = (): number => (turned ? between(random, -180, 180) : 90 * Math.floor(random() * 4));
    return {
      ring: rounded(shape(random)),
      lowMm,
      highMm: lowMm + between(random, 1, 30),
      frame: {
        xMm: between(random, -10, 10),
        yMm: between(random, -10, 10),
        zMm: between(random, -10, 10),
        rxDeg: degrees(),
        ryDeg: degrees(),
        rzDeg: degrees(),
      },
    };
  };
  return [prism(), prism()];
}
