import type { XY } from "./page.ts";

/** What is cut, and what is only marked: a bend. */
export interface FlatShape {
  readonly rings: readonly (readonly XY[])[];
  readonly circles: readonly { readonly at: XY; readonly diameter: number }[];
  readonly bends?: readonly (readonly [XY, XY])[];
}

const pair = (code: number, value: string | number): string => `${code}\n${value}\n`;
const point = ([x, y]: XY, first = 10): string => pair(first, x) + pair(first + 10, y) + pair(first + 20, 0);

/**
 * A flat shape as DXF of release 12, in mm: rings as closed polylines and holes as circles on the layer CUT, bends as
 * lines on the layer BEND.
 */
export function flatDxf({ rings, circles, bends = [] }: FlatShape): string {
  const layer = (name: string, colour: number): string =>
    pair(0, "LAYER") + pair(2, name) + pair(70, 0) + pair(62, colour) + pair(6, "CONTINUOUS");
  const polyline = (ring: readonly XY[]): string =>
    pair(0, "POLYLINE") +
    pair(8, "CUT") +
    pair(66, 1) +
    point([0, 0]) +
    pair(70, 1) +
    ring.map((p) => pair(0, "VERTEX") + pair(8, "CUT") + point(p)).join("") +
    pair(0, "SEQEND") +
    pair(8, "CUT");
  return [
    pair(0, "SECTION") + pair(2, "HEADER"),
    pair(9, "$ACADVER") + pair(1, "AC1009"),
    pair(9, "$INSUNITS") + pair(70, 4),
    pair(0, "ENDSEC"),
    pair(0, "SECTION") + pair(2, "TABLES"),
    pair(0, "TABLE") + pair(2, "LTYPE") + pair(70, 1),
    pair(0, "LTYPE") + pair(2, "CONTINUOUS") + pair(70, 0) + pair(3, "Solid line") + pair(72, 65),
    pair(73, 0) + pair(40, 0) + pair(0, "ENDTAB"),
    pair(0, "TABLE") +
      pair(2, "LAYER") +
      pair(70, 2) +
      layer("CUT", 7) +
      layer("BEND", 5) +
      pair(0, "ENDTAB"),
    pair(0, "ENDSEC"),
    pair(0, "SECTION") + pair(2, "ENTITIES"),
    ...rings.map(polyline),
    ...circles.map(
      ({ at, diameter }) => pair(0, "CIRCLE") + pair(8, "CUT") + point(at) + pair(40, diameter / 2),
    ),
    ...bends.map(([a, b]) => pair(0, "LINE") + pair(8, "BEND") + point(a) + point(b, 11)),
    pair(0, "ENDSEC"),
    pair(0, "EOF"),
  ].join("");
}
