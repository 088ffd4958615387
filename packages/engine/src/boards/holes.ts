import type { BookRow } from "@pinwright/book";
import type { PointMm } from "@pinwright/kernel";

/** Middles of the fixing holes of a board, in its own frame; the book writes them as `x,y` pairs. What is no pair is passed over. */
export const fixingHoles = ({ holes }: Pick<BookRow<"board_types">, "holes">): readonly PointMm[] =>
  holes
    .split(/\s+/u)
    .filter((pair) => pair !== "")
    .flatMap((pair) => {
      const [xMm = Number.NaN, yMm = Number.NaN] = pair.split(",").map(Number);
      return Number.isFinite(xMm) && Number.isFinite(yMm) ? [{ xMm, yMm }] : [];
    });
