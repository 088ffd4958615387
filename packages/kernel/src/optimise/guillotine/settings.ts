import type { Box } from "./boxes.ts";
import type { Size } from "./problem.ts";

/** Lengths of rips are even, those of cross cuts odd numbers, so that one set holds both. */
const rip = (length: number): number => 2 * length;
const cross = (length: number): number => 2 * length + 1;

/** How many different settings of the fence sheets need, as the cutting tree is made from their boxes. */
export const settingsIn = (
  filled: readonly { readonly sheet: number; readonly root: Box }[],
  sheets: readonly Size[],
): number => {
  const found = new Set<number>();
  for (const { sheet, root } of filled) {
    const size = sheets[sheet];
    if (size !== undefined) collect(root, size.w, size.h, found);
  }
  return found.size;
};

const collect = (box: Box, placeW: number, placeH: number, found: Set<number>): void => {
  if (box.piece >= 0) {
    if (box.w !== placeW) found.add(cross(box.w));
    if (box.h !== placeH) found.add(rip(box.h));
    return;
  }
  const beside = box.direction === 0;
  let over = beside ? placeW : placeH;
  for (const child of box.children) {
    const taken = beside ? child.w : child.h;
    if (taken !== over) found.add(beside ? cross(taken) : rip(taken));
    over -= taken;
    collect(child, beside ? taken : placeW, beside ? placeH : taken, found);
  }
};
