import {
  addPoints,
  differenceRings,
  intersectionRings,
  offsetRings,
  type PointMm,
  pointSegmentDistance,
  polar,
  type RingMm,
  ringSides,
  unionRings,
} from "@pinwright/kernel";
import type { ScrewSymbol, SymbolShade, SymbolShape } from "../../model/index.ts";
import { DESIGN_MM, LEAST_MM, roundOff, shapeRings } from "./shapes.ts";

/** In this order: what prints best comes first. */
export const SHADES = ["solid", "open", "striped", "dotted"] as const satisfies readonly SymbolShade[];

/** Width of the outline at the design size; a little over the least, so that rounding never goes below it. */
const STROKE_MM = 0.34;
/** Width of a stripe, and of the gap beside it. */
const STRIPE_MM = 0.4;
/** Radius of a white dot where there is room. */
const DOT_MM = 1;

/** Where the dots stand: where the shape is widest. */
const DOTS: Readonly<Record<SymbolShape, readonly PointMm[]>> = {
  circle: [{ xMm: 0, yMm: 0 }],
  cross: [{ xMm: 0, yMm: 0 }],
  triangle: [{ xMm: 0, yMm: -0.5 }],
  square: [{ xMm: 0, yMm: 0 }],
  bar: [
    { xMm: -0.9, yMm: 0 },
    { xMm: 0.9, yMm: 0 },
  ],
  star: [{ xMm: 0, yMm: -0.15 }],
  diamond: [{ xMm: 0, yMm: 0 }],
  moon: [{ xMm: -0.7, yMm: 0 }],
  arrow: [{ xMm: 0, yMm: 0.55 }],
  hourglass: [
    { xMm: 0, yMm: -1.05 },
    { xMm: 0, yMm: 1.05 },
  ],
  drop: [{ xMm: 0, yMm: -0.6 }],
  half: [{ xMm: 0, yMm: 0.03 }],
};

/** Stripes that rise to the right at 45 degrees. */
const stripes = (): RingMm[] =>
  [-7, -6, -5, -4, -3, -2, -1, 0, 1, 2, 3, 4, 5, 6, 7].map((i) => {
    const middle = polar(135, 2 * i * STRIPE_MM);
    return [
      [-45, -4],
      [135, -4],
      [135, 4],
      [-45, 4],
    ].map(([deg = 0, along = 0]) =>
      addPoints(middle, addPoints(polar(deg, STRIPE_MM / 2), polar(45, along))),
    );
  });

/** Dots as large as they can be with ink all round; none where it is too small for one. */
const dots = (shape: SymbolShape, whole: readonly RingMm[]): RingMm[] =>
  DOTS[shape].flatMap((middle) => {
    const room = Math.min(...whole.flatMap(ringSides).map((side) => pointSegmentDistance(middle, side)));
    const radius = Math.min(DOT_MM, room - STROKE_MM);
    if (radius < LEAST_MM / 2) return [];
    return [Array.from({ length: 32 }, (_, i) => addPoints(middle, polar(i * 11.25, radius)))];
  });

function draw(shape: SymbolShape, shade: SymbolShade): readonly RingMm[] {
  const whole = shapeRings(shape);
  if (shade === "solid") return whole;
  if (shade === "dotted") return roundOff(differenceRings(whole, dots(shape, whole)), LEAST_MM);
  const inner = offsetRings(whole, -STROKE_MM);
  const frame = differenceRings(whole, inner);
  const ink = shade === "open" ? frame : unionRings(frame, intersectionRings(inner, stripes()));
  return roundOff(ink, LEAST_MM);
}

const drawn = new Map<string, readonly RingMm[]>();

/** Ink of a symbol at the design size; drawn once for each shape and shade, whatever the machine. */
export function designRings(shape: SymbolShape, shade: SymbolShade): readonly RingMm[] {
  const key = `${shape} ${shade}`;
  const known = drawn.get(key) ?? draw(shape, shade);
  drawn.set(key, known);
  return known;
}

/**
 * The drawing of a symbol, `sizeMm` high and wide about the origin, y up: rings to be filled with ink, outer ones
 * anticlockwise and holes clockwise, so that even-odd and non-zero filling agree; no strokes. Sheets, trays and the
 * app draw this and nothing else; the letter stands beside it. At 4 mm and above no ink and no gap is narrower than
 * 0.3 mm.
 */
export function symbolOutline(
  symbol: Pick<ScrewSymbol, "shape" | "shade">,
  sizeMm: number,
): readonly RingMm[] {
  const scale = sizeMm / DESIGN_MM;
  return designRings(symbol.shape, symbol.shade).map((ring) =>
    ring.map((p): PointMm => ({ xMm: p.xMm * scale, yMm: p.yMm * scale })),
  );
}
