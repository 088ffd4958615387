/** A corner of an outline, in mm, in the frame of what it outlines. */
export interface OutlinePoint {
  readonly xMm: number;
  readonly yMm: number;
}

/** A closed ring; the last corner joins the first. */
export type Ring = readonly OutlinePoint[];

/**
 * A flat shape: outer rings anticlockwise, the largest first, then holes, clockwise. Arcs and splines are flattened to within 0.05 mm
 * when they are read.
 */
export interface Outline {
  readonly rings: readonly Ring[];
  /** Text of the DXF or SVG file that it was read from, so that writing the book gives the same file. */
  readonly source?: string;
}
