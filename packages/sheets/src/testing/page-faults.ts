import type { SheetDocument } from "../compose/document.ts";
import { leafBox, leavesOf } from "../compose/leaves.ts";
import { overlaps } from "../compose/overlaps.ts";
import { frameOf } from "../compose/paper.ts";

/** Texts of a sheet that overlap, a line for each pair. */
export function overlapLines(document: SheetDocument): readonly string[] {
  return document.pages.flatMap((page, i) =>
    overlaps(page).map(([a, b]) => `${document.id} page ${i + 1}: ${a.text} | ${b.text}`),
  );
}

/** Marks of a sheet that leave the frame of their page, a line for each. */
export function strayLines(document: SheetDocument): readonly string[] {
  return document.pages.flatMap((page, i) => {
    const frame = frameOf(page);
    return leavesOf(page.marks).flatMap(({ leaf, clip }) => {
      const b = clip ?? leafBox(leaf);
      const outMm = Math.max(
        frame.xMm - b.xMm,
        frame.yMm - b.yMm,
        b.xMm + b.widthMm - frame.xMm - frame.widthMm,
        b.yMm + b.heightMm - frame.yMm - frame.heightMm,
      );
      if (outMm < 0.01) return [];
      const what = leaf.kind === "text" ? `“${leaf.text}”` : leaf.kind;
      return [`${document.id} page ${i + 1}: ${what} by ${outMm.toFixed(2)} mm`];
    });
  });
}
