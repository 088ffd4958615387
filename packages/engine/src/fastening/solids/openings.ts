import type { Book, BookRow } from "@pinwright/book";
import {
  anticlockwise,
  type BoxMm,
  boxesOverlap,
  boxOf,
  fromFrame,
  intersectionRings,
  NestedQuery,
  type RingMm,
  thickenLine,
} from "@pinwright/kernel";
import { appliesTo, groupRows, type Machine } from "../../model/index.ts";
import { discRing } from "./rings.ts";

/** A cutout with its shape in the panel's frame. */
export interface Opening {
  readonly row: BookRow<"cutouts">;
  readonly ring: RingMm;
  readonly box: BoxMm;
}

/** The outer ring of a cutout in its panel's frame, mm; null when its row does not say its size. */
export function cutoutRing(book: Book, row: BookRow<"cutouts">): RingMm | null {
  const own = ownRing(book, row);
  if (own === null || own.length < 3) return null;
  const frame = { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg };
  return own.map((p) => fromFrame(frame, p));
}

function ownRing(book: Book, row: BookRow<"cutouts">): RingMm | null {
  if (row.shape === "outline") return book.outlines.get(row.outline ?? "")?.rings[0] ?? null;
  const widthMm = row.width_mm;
  if (widthMm === null) return null;
  if (row.shape === "circle") return discRing(widthMm);
  const heightMm = row.height_mm ?? widthMm;
  const x = widthMm / 2;
  const y = heightMm / 2;
  if (row.shape === "slot" && x > y)
    return (
      thickenLine(
        [
          { xMm: y - x, yMm: 0 },
          { xMm: x - y, yMm: 0 },
        ],
        heightMm,
      )[0] ?? null
    );
  if (row.shape === "slot") return discRing(heightMm);
  return [
    { xMm: -x, yMm: -y },
    { xMm: x, yMm: -y },
    { xMm: x, yMm: y },
    { xMm: -x, yMm: y },
  ];
}

/** The openings of each panel that go right through it, with a memory. */
export class Openings {
  readonly #all = new NestedQuery<ReadonlyMap<string, readonly Opening[]>, readonly Opening[]>(
    Object.is,
    Object.is,
  );

  /** By panel; a panel without any has no entry. A cut as deep as the panel is thick goes through too. */
  of({ book, options, panels }: Machine): ReadonlyMap<string, readonly Opening[]> {
    const { cutouts } = book.tables;
    const { outlines } = book;
    return this.#all.ask("all", [cutouts, panels, outlines, ...options], (parts) => {
      const through = cutouts.filter(
        (row) =>
          appliesTo(row, options) &&
          (row.depth_mm === null || row.depth_mm >= (panels.get(row.panel)?.thickness_mm ?? 0)),
      );
      const byPanel = groupRows(through, (row) => row.panel);
      return new Map(
        [...byPanel].map(([id, rows]) => [
          id,
          parts.ask(id, [outlines, ...rows], () => rows.flatMap((row) => openingOf(book, row) ?? [])),
        ]),
      );
    });
  }

  sweep(): void {
    this.#all.sweep();
  }
}

function openingOf(book: Book, row: BookRow<"cutouts">): Opening | null {
  const ring = cutoutRing(book, row);
  const box = ring === null ? null : boxOf(ring);
  return ring === null || box === null ? null : { row, ring: anticlockwise(ring), box };
}

/**
 * The part of an area that lies over openings of its panel: over those that serve its item, when there are any, else
 * over those that serve nothing by name.
 */
export function throughOpenings(
  area: readonly RingMm[],
  openings: readonly Opening[],
  itemId: string,
): readonly RingMm[] {
  const own = openings.filter(({ row }) => row.serves === itemId);
  const free = own.length > 0 ? own : openings.filter(({ row }) => row.serves === null);
  const box = boxOf(area.flat());
  if (box === null) return [];
  const near = free.filter((opening) => boxesOverlap(opening.box, box)).map(({ ring }) => ring);
  return near.length === 0 ? [] : intersectionRings(area, near);
}
