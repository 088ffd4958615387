import { at, LINE, line, stroke } from "../compose/draw.ts";
import type { Mark } from "../compose/mark.ts";

/** A ruler of 100 mm that proves the scale of a print. */
export function rulerMarks(vertical: boolean): Mark[] {
  const p = (alongMm: number, acrossMm: number) => (vertical ? at(acrossMm, alongMm) : at(alongMm, acrossMm));
  const pen = stroke("ink", LINE.medium);
  const ticks: Mark[] = [];
  for (let i = 0; i <= 20; i++) {
    ticks.push(line(p(i * 5, 0), p(i * 5, i % 10 === 0 ? 3 : i % 2 === 0 ? 2 : 1.2), pen, "BORDER"));
  }
  return [line(p(0, 0), p(100, 0), pen, "BORDER"), ...ticks];
}
