import type { Book, BookRow } from "@pinwright/book";
import { centredRing, slotRing, turned } from "./rings.ts";
import { view } from "./view.ts";

/** A cutout as it is drawn. */
export interface LayoutCutout {
  readonly id: string;
  /** The side that the cut starts from. */
  readonly side: "top" | "under";
  readonly purpose: BookRow<"cutouts">["purpose"];
  readonly shape: BookRow<"cutouts">["shape"];
  readonly xMm: number;
  readonly yMm: number;
  readonly rotationDeg: number;
  readonly widthMm: number | null;
  readonly heightMm: number | null;
  /** Null: right through, so that it is seen from both sides. */
  readonly depthMm: number | null;
  readonly serves: string;
  /** About its own place; x and y by turns, holes after what they are in. */
  readonly rings: readonly (readonly number[])[];
}

function ringsOf(book: Book, row: BookRow<"cutouts">): LayoutCutout["rings"] {
  const width = row.width_mm ?? 1;
  const height = row.height_mm ?? width;
  switch (row.shape) {
    case "circle":
      return [slotRing(0, 0, 0, width, width)];
    case "slot":
      return [slotRing(0, 0, row.rotation_deg, width, height)];
    case "rect":
      return [centredRing(0, 0, row.rotation_deg, width, height)];
    case "outline": {
      const outline = row.outline === null ? undefined : book.outlines.get(row.outline);
      if (outline === undefined) return [centredRing(0, 0, row.rotation_deg, width, height)];
      return outline.rings.map((ring) =>
        turned(
          0,
          0,
          row.rotation_deg,
          ring.flatMap(({ xMm, yMm }) => [xMm, yMm]),
        ),
      );
    }
  }
}

export const layoutCutouts = view<{ readonly panelId: string }, LayoutCutout>({
  early: true,
  uses: ({ book }) => [book.tables.cutouts, book.outlines],
  entries: ({ book }, { panelId }) =>
    new Map(
      book.tables.cutouts
        .filter((row) => row.panel === panelId)
        .map((row) => [
          row.id,
          {
            id: row.id,
            side: row.side,
            purpose: row.purpose,
            shape: row.shape,
            xMm: row.x_mm,
            yMm: row.y_mm,
            rotationDeg: row.rotation_deg,
            widthMm: row.width_mm,
            heightMm: row.height_mm,
            depthMm: row.depth_mm,
            serves: row.serves,
            rings: ringsOf(book, row),
          },
        ]),
    ),
  restsInPreview: true,
});
