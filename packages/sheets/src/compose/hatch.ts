import type { PagePoint } from "./mark.ts";

/**
 * Hatch lines at 45° inside a polygon, `spacingMm` apart, by the even-odd rule: in coordinates along and across
 * the hatch, each line is cut at its crossings with the outline and drawn between every other pair.
 */
export function hatchLines(
  points: readonly PagePoint[],
  spacingMm: number,
): readonly (readonly [PagePoint, PagePoint])[] {
  const half = Math.SQRT1_2;
  const across = points.map((p) => (p.xMm + p.yMm) * half);
  const along = points.map((p) => (p.xMm - p.yMm) * half);
  const lines: (readonly [PagePoint, PagePoint])[] = [];
  const back = (u: number, v: number): PagePoint => ({ xMm: (v + u) * half, yMm: (v - u) * half });
  const first = Math.ceil(Math.min(...across) / spacingMm);
  const last = Math.floor(Math.max(...across) / spacingMm);
  for (let n = first; n <= last; n++) {
    const v = n * spacingMm;
    const cuts: number[] = [];
    across.forEach((a, i) => {
      const next = (i + 1) % points.length;
      const b = across[next] ?? a;
      if (a <= v === b <= v) return;
      const from = along[i] ?? 0;
      cuts.push(from + (((along[next] ?? 0) - from) * (v - a)) / (b - a));
    });
    cuts.sort((p, q) => p - q);
    for (let i = 0; i + 1 < cuts.length; i += 2) {
      lines.push([back(cuts[i] ?? 0, v), back(cuts[i + 1] ?? 0, v)]);
    }
  }
  return lines;
}
