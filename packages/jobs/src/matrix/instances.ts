import type { AssignLine, AssignProblem } from "@pinwright/engine";
import { seededRandom } from "@pinwright/kernel";

/** How switches lie: anywhere, in clusters as banks of targets do, or in rows across the playfield. */
export const MATRIX_KINDS = ["scatter", "clusters", "rows"] as const;
export type MatrixKind = (typeof MATRIX_KINDS)[number];

export interface MatrixSize {
  readonly columns: number;
  readonly rows: number;
  readonly sites: number;
}

/** Between the housings of columns and rows on the board. */
const HOUSING_MM = 40;

const PLAYFIELD_MM = { width: 514, depth: 1067 };

interface At {
  readonly x: number;
  readonly y: number;
}

/**
 * An assignment problem of a given kind and size that depends on nothing but its arguments. The board is at the front,
 * left for even variants and in the middle for odd ones; the housing of the rows is beside that of the columns. Every third variant pins two sites,
 * every fourth has two harnesses, of which the second is plugged in at the rear.
 */
export function matrixInstance(kind: MatrixKind, size: MatrixSize, variant: number): AssignProblem {
  const random = seededRandom(
    MATRIX_KINDS.indexOf(kind) * 7919 + size.sites * 104729 + variant * 1299709 + 5,
  );
  const places = Array.from({ length: size.sites }, (_, i) => placeOf(kind, i, size, random));
  const apart = (a: At, b: At): number => Math.round(Math.hypot(a.x - b.x, a.y - b.y) * 10) / 10;
  const isRear = (p: At): boolean => variant % 4 === 3 && p.y > PLAYFIELD_MM.depth / 2;
  const mm = places.map((a) =>
    places.map((b) => (isRear(a) === isRear(b) ? apart(a, b) : Number.POSITIVE_INFINITY)),
  );
  const boardX = variant % 2 === 0 ? 60 : 257;
  const line = (offsetMm: number): AssignLine => ({
    feedMm: places.map((p) => apart(p, isRear(p) ? { x: 257, y: 1000 } : { x: boardX + offsetMm, y: 40 })),
  });
  const isPinned = (i: number): boolean => variant % 3 === 2 && i < 2;
  return {
    columns: Array.from({ length: size.columns }, () => line(0)),
    rows: Array.from({ length: size.rows }, () => line(HOUSING_MM)),
    sites: places.map((p, i) => ({
      columnGroup: isRear(p) ? 1 : 0,
      rowGroup: isRear(p) ? 1 : 0,
      column: isPinned(i) ? i % size.columns : null,
      row: isPinned(i) ? (i + 1) % size.rows : null,
    })),
    columnMm: mm,
    rowMm: mm,
  };
}

function placeOf(kind: MatrixKind, i: number, { sites }: MatrixSize, random: () => number): At {
  const { width, depth } = PLAYFIELD_MM;
  if (kind === "scatter") return { x: random() * width, y: 80 + random() * (depth - 80) };
  if (kind === "rows")
    return { x: 40 + 60 * (i % 8) + random() * 8, y: 200 + 110 * Math.floor(i / 8) + random() * 20 };
  const clusters = Math.max(2, Math.round(sites / 4));
  const k = i % clusters;
  // Clusters lie by the golden ratio, so that they keep apart whatever their number.
  const middle = { x: width * ((0.2 + k * 0.618) % 1), y: 120 + (depth - 200) * ((0.4 + k * 0.382) % 1) };
  return { x: middle.x + (random() - 0.5) * 90, y: middle.y + (random() - 0.5) * 90 };
}
