import { at, LINE, line, stroke } from "../compose/draw.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";

/** A peg: its hole with a centre cross that reaches beyond it. */
export function pegMarks(p: PagePoint, holeMm: number): Mark[] {
  const reach = holeMm * 0.9;
  const pen = stroke("ink", LINE.thin);
  return [
    {
      kind: "circle",
      at: p,
      radiusMm: holeMm / 2,
      stroke: stroke("ink", LINE.strong),
      fill: "paper",
      layer: "HOLES",
    },
    line(at(p.xMm - reach, p.yMm), at(p.xMm + reach, p.yMm), pen, "PEGS"),
    line(at(p.xMm, p.yMm - reach), at(p.xMm, p.yMm + reach), pen, "PEGS"),
  ];
}
