import type { BookRow, Ring } from "@pinwright/book";
import { rotatePoint } from "@pinwright/kernel";
import type { PanelPoint, Place, Side } from "./machine.ts";

/** Where a point of an own frame comes to lie on the panel. */
export function placed(place: Place, xMm: number, yMm: number): PanelPoint {
  const turned = rotatePoint({ xMm, yMm }, place.rotationDeg);
  return { xMm: place.xMm + turned.xMm, yMm: place.yMm + turned.yMm };
}

/**
 * The own frame of a board or device is seen from its face. On an underside the face looks down, so seen from
 * `top` it is turned over about its own middle: its rectangle stays where it is, left and right change places.
 * @param middleMm x of that middle in the own frame
 */
export function faceX(side: Side, xMm: number, middleMm: number): number {
  return side === "top" ? xMm : 2 * middleMm - xMm;
}

/** A rectangle about its own origin, as a ring in the own frame. */
export function centredRectangle(widthMm: number, depthMm: number): Ring {
  const w = widthMm / 2;
  const d = depthMm / 2;
  return [
    { xMm: -w, yMm: -d },
    { xMm: w, yMm: -d },
    { xMm: w, yMm: d },
    { xMm: -w, yMm: d },
  ];
}

/** A rectangle from its own origin to the upper right, as a ring in the own frame. */
export function cornerRectangle(widthMm: number, depthMm: number): Ring {
  return [
    { xMm: 0, yMm: 0 },
    { xMm: widthMm, yMm: 0 },
    { xMm: widthMm, yMm: depthMm },
    { xMm: 0, yMm: depthMm },
  ];
}

/** Columns that every placed row has. */
type PlacedRow = Pick<BookRow<"inlines">, "panel" | "side" | "x_mm" | "y_mm" | "rotation_deg">;

/** The place that a row's own columns give. */
export function placeOf(row: PlacedRow, zMm: number): Place {
  return {
    panelId: row.panel,
    side: row.side,
    xMm: row.x_mm,
    yMm: row.y_mm,
    rotationDeg: row.rotation_deg,
    zMm,
  };
}
