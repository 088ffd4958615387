import type { SheetDocument } from "../compose/document.ts";
import { leafBox, leavesOf } from "../compose/leaves.ts";
import type { Box } from "../compose/mark.ts";
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

/** Signs of screws on a sheet that something stands on: another sign, or a text; a line for each pair. */
export function hiddenSigns(document: SheetDocument): readonly string[] {
  return document.pages.flatMap((page, i) => {
    const leaves = leavesOf(page.marks).filter(({ clip }) => clip === null);
    const signs = leaves.flatMap(({ leaf }) => (leaf.kind === "area" ? [leafBox(leaf)] : []));
    const texts = leaves.flatMap(({ leaf }) =>
      leaf.kind === "text" && leaf.turnDeg === 0 ? [{ text: leaf.text, at: leafBox(leaf) }] : [],
    );
    const meets = (a: Box, b: Box): boolean =>
      a.xMm + 0.05 < b.xMm + b.widthMm &&
      b.xMm + 0.05 < a.xMm + a.widthMm &&
      a.yMm + 0.05 < b.yMm + b.heightMm &&
      b.yMm + 0.05 < a.yMm + a.heightMm;
    return signs.flatMap((sign, n) => [
      ...signs
        .slice(n + 1)
        .filter((other) => meets(sign, other))
        .map(() => `${document.id} page ${i + 1}: a sign on a sign`),
      ...texts
        .filter(({ at }) => meets(sign, at))
        .map(({ text }) => `${document.id} page ${i + 1}: “${text}” on a sign`),
    ]);
  });
}

/** Least extent of the signs of screws on a sheet, mm; infinite when it has none. */
export function leastSignMm(document: SheetDocument): number {
  const sizes = document.pages.flatMap((page) =>
    leavesOf(page.marks).flatMap(({ leaf }) =>
      leaf.kind === "area" ? [Math.max(leafBox(leaf).widthMm, leafBox(leaf).heightMm)] : [],
    ),
  );
  return Math.min(Number.POSITIVE_INFINITY, ...sizes);
}
