import type { Book, BookRow } from "@pinwright/book";
import { fromFrame, type PointMm, polar, thickenLine } from "@pinwright/kernel";

/** The shape of a cutout in its panel's frame, mm. */
export function cutoutShape(book: Book, row: BookRow<"cutouts">): readonly PointMm[] {
  const frame = { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg };
  const width = row.width_mm ?? 0;
  const height = row.height_mm ?? width;
  const place = (ring: readonly PointMm[]) => ring.map((p) => fromFrame(frame, p));
  switch (row.shape) {
    case "circle":
      return place(Array.from({ length: 48 }, (_, i) => polar(i * 7.5, width / 2)));
    case "rect":
      return place([
        { xMm: -width / 2, yMm: -height / 2 },
        { xMm: width / 2, yMm: -height / 2 },
        { xMm: width / 2, yMm: height / 2 },
        { xMm: -width / 2, yMm: height / 2 },
      ]);
    case "slot": {
      const half = (width - height) / 2;
      const ends = [
        { xMm: -half, yMm: 0 },
        { xMm: half, yMm: 0 },
      ];
      return place(thickenLine(ends, height)[0] ?? []);
    }
    case "outline":
      return place(book.outlines.get(row.outline ?? "")?.rings[0] ?? []);
  }
}
