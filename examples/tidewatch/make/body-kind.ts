import type { BookRow, Outline } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import { outlineAbout, type Shape } from "./shape.ts";

/**
 * A solid part of a type, in the type's frame. Heights count from the side that the type is fixed to; below zero is
 * in the panel and beyond it.
 */
export interface Body {
  /** What follows the type's name. */
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
  readonly at?: readonly [x: number, y: number];
  /** A disc of this diameter, a rectangle, or a drawing about the type's own origin. */
  readonly shape: number | readonly [width: number, depth: number] | Shape;
  readonly heights: readonly [from: number, to: number];
  readonly rotation?: number;
  readonly moves?: true;
}

export interface Bodied {
  /** A device type or a mechanism type. */
  readonly type: string;
  readonly bodies: readonly Body[];
}

/** The playfield's thickness: what goes through it begins this far below zero. */
export const WOOD_MM = 13;

type Part = readonly [id: string, label: string, label_zh: string];

/** A disc. */
export const round = (
  [id, label, label_zh]: Part,
  diameter: number,
  heights: Body["heights"],
  at: Body["at"] = [0, 0],
): Body => ({ id, label, label_zh, shape: diameter, heights, at });

/** A rectangle about a place. */
export const block = (
  [id, label, label_zh]: Part,
  size: readonly [number, number],
  heights: Body["heights"],
  at: Body["at"] = [0, 0],
  rotation = 0,
): Body => ({ id, label, label_zh, shape: size, heights, at, rotation });

/** All that something sweeps. */
export const moving = (body: Body): Body => ({ ...body, moves: true });

const isDrawn = (shape: Body["shape"]): shape is Shape =>
  typeof shape !== "number" && typeof shape[0] !== "number";

const idOf = (type: string, body: Body): string => `bo.${type.replace(".", "-")}-${body.id}`;
const fileOf = (type: string, body: Body): string => `body-${type.replace(".", "-")}-${body.id}.svg`;

function sizeOf({ shape }: Body): Partial<BookRow<"bodies">> {
  if (typeof shape === "number") return { width_mm: shape, round: true };
  const [width, depth] = shape;
  return typeof width === "number" && typeof depth === "number" ? { width_mm: width, depth_mm: depth } : {};
}

/** The table of bodies, and drawings of those that are neither round nor square. */
export const bodiesOf = (bodied: readonly Bodied[]): Topic => ({
  tables: {
    bodies: rows(
      "bodies",
      bodied.flatMap(({ type, bodies }) =>
        bodies.map((body) => ({
          id: idOf(type, body),
          ...(type.startsWith("mt.") ? { mechanism_type: type } : { device_type: type }),
          label: body.label,
          label_zh: body.label_zh,
          x_mm: body.at?.[0] ?? 0,
          y_mm: body.at?.[1] ?? 0,
          rotation_deg: body.rotation ?? 0,
          ...(isDrawn(body.shape) ? { outline: fileOf(type, body) } : sizeOf(body)),
          from_mm: body.heights[0],
          to_mm: body.heights[1],
          moves: body.moves ?? false,
        })),
      ),
    ),
  },
  outlines: new Map(
    bodied.flatMap(({ type, bodies }) =>
      bodies.flatMap((body): [string, Outline][] =>
        isDrawn(body.shape) ? [[fileOf(type, body), outlineAbout([0, 0], body.shape)]] : [],
      ),
    ),
  ),
});
