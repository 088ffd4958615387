import { distance, type PointMm, pointBetween, roundTo } from "@pinwright/kernel";

/** Coordinates are rounded to this: fine enough that a line of many bends keeps its length within 0.001 mm. */
const GRAIN_MM = 0.0001;
/** A joint this near to a bend stands on it. */
const AT_BEND_MM = 0.002;

/** A place on the board, as fine as it is told. */
export const grained = (p: PointMm): PointMm => ({
  xMm: roundTo(p.xMm, GRAIN_MM),
  yMm: roundTo(p.yMm, GRAIN_MM),
});

/** A line cut into parts of the given lengths, end to end; the last one takes what is left. */
export interface SplitLine {
  readonly parts: readonly (readonly PointMm[])[];
  /** Of each cut, where it is, and whether the line bends there. */
  readonly joints: readonly { readonly at: PointMm; readonly bends: boolean }[];
}

/** Cuts a line whose points are grained; so are the cuts. */
export function splitLine(line: readonly PointMm[], lengthsMm: readonly number[]): SplitLine {
  const parts: PointMm[][] = [];
  const joints: { at: PointMm; bends: boolean }[] = [];
  let part: PointMm[] = line.slice(0, 1);
  let next = 1;
  for (const lengthMm of lengthsMm.slice(0, -1)) {
    let left = lengthMm;
    for (let end = line[next]; end !== undefined && next < line.length - 1; end = line[next]) {
      const span = distance(part.at(-1) ?? end, end);
      if (span > left - AT_BEND_MM) break;
      part.push(end);
      left -= span;
      next++;
    }
    const from = part.at(-1);
    const to = line[next];
    if (from === undefined || to === undefined) break;
    const span = distance(from, to);
    const bends = Math.abs(span - left) <= AT_BEND_MM && next < line.length - 1;
    const at = bends ? to : grained(pointBetween(from, to, span > 0 ? left / span : 0));
    if (bends) next++;
    parts.push([...part, at]);
    joints.push({ at, bends });
    part = [at];
  }
  return { parts: [...parts, [...part, ...line.slice(next)]], joints };
}
