import type { Box, Direction } from "./boxes.ts";
import type { Layout } from "./layout.ts";
import type { CutPart, SheetPlan } from "./plan.ts";
import { type CutKind, millimetres, type Size, type Units } from "./problem.ts";

const WASTE: CutPart = { kind: "waste" };

/** Cuts of the direction that divides a box. */
const KIND: Readonly<Record<Direction, CutKind>> = { 0: "cross", 1: "rip" };

/** The cuts that take a layout's pieces from its sheets. */
export const plansOf = ({ filled }: Layout, units: Units): SheetPlan[] =>
  filled.flatMap(({ sheet, root }) => {
    const size = units.sheets[sheet];
    return size === undefined ? [] : [{ sheet, part: partOf(root, size, units) }];
  });

/** Cuts a box out of a place at least as large. */
export const partOf = (box: Box, place: Size, units: Units): CutPart => {
  if (box.piece < 0) return rowOf(box, 0, place, units);
  const piece: CutPart = { kind: "piece", piece: box.piece, turned: box.turned };
  // A piece is flush in the direction that its box was cut in; in the other it may still stand in waste.
  const upright = trimmed("rip", box.h, place.h, piece, units);
  return trimmed("cross", box.w, place.w, upright, units);
};

const trimmed = (cut: CutKind, length: number, place: number, part: CutPart, units: Units): CutPart =>
  length === place ? part : { kind: "cut", cut, atMm: lengthMm(length, units), first: part, rest: WASTE };

const rowOf = (box: Box, from: number, place: Size, units: Units): CutPart => {
  const child = box.children[from];
  if (child === undefined) return WASTE;
  const beside = box.direction === 0;
  const taken = beside ? child.w : child.h;
  const total = beside ? place.w : place.h;
  const own: Size = beside ? { w: taken, h: place.h } : { w: place.w, h: taken };
  const first = partOf(child, own, units);
  if (taken === total) return first;
  const remaining: Size = beside ? { w: total - taken, h: place.h } : { w: place.w, h: total - taken };
  const rest = rowOf(box, from + 1, remaining, units);
  return { kind: "cut", cut: KIND[box.direction], atMm: lengthMm(taken, units), first, rest };
};

/** The true length of so many units, kerf taken off. */
const lengthMm = (length: number, units: Units): number =>
  millimetres((length - units.kerf) * units.micrometres);
