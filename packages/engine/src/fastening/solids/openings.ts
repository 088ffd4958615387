import type { Book, BookRow } from "@pinwright/book";
import {
  type BoxMm,
  boxesOverlap,
  boxOf,
  intersectionRings,
  NestedQuery,
  pointInRing,
  type RingMm,
  rectangleCorners,
  ringSides,
  segmentsMeet,
  thickenLine,
} from "@pinwright/kernel";
import { appliesTo, groupRows, type Machine } from "../../model/index.ts";
import { type CutoutForm, cutoutShape } from "../cutouts/cutout-shape.ts";
import { discRing, movedRing, withoutHoles } from "./rings.ts";

/** A cutout with its shape in the panel's frame. */
export interface Opening {
  readonly row: BookRow<"cutouts">;
  readonly rings: readonly RingMm[];
  readonly box: BoxMm;
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
  const shape = cutoutShape(book, row);
  return shape === null ? null : { row, rings: cutoutRings(shape.form), box: shape.box };
}

/** A cutout as rings in the panel's frame. */
export function cutoutRings(form: CutoutForm): readonly RingMm[] {
  if (form.kind === "outline") return form.rings;
  if (form.kind === "rect") return [rectangleCorners(form.rectangle)];
  const { a, b, radiusMm } = form;
  if (a.xMm !== b.xMm || a.yMm !== b.yMm) return thickenLine([a, b], 2 * radiusMm);
  return [movedRing(discRing(2 * radiusMm), a, 0)];
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
  const free = own.length > 0 ? own : openings.filter(({ row }) => row.serves === "");
  const box = boxOf(area.flat());
  if (box === null) return [];
  const near = free.filter((opening) => boxesOverlap(opening.box, box));
  return near.flatMap(({ rings }) => {
    // Most openings lie wholly under their item; cutting those to it would only cost time.
    const within = rings.every((ring) => area.some((outer) => ringWithin(ring, outer)));
    return within && rings.length === 1 ? rings : withoutHoles(intersectionRings(area, rings));
  });
}

/** Whether a ring lies within another: all its corners do, and no sides meet. */
function ringWithin(ring: RingMm, outer: RingMm): boolean {
  if (!ring.every((p) => pointInRing(p, outer) === "inside")) return false;
  const sides = ringSides(outer);
  return ringSides(ring).every((side) => !sides.some((other) => segmentsMeet(side, other)));
}
