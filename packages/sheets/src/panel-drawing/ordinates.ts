import { at, LINE, line, polyline, stroke, TEXT, write } from "../compose/draw.ts";
import type { Mark } from "../compose/mark.ts";
import { shortNumber } from "../compose/number.ts";

/** Texts of dimensions stand this far apart. */
const APART_MM = 3.4;
/** A leader's stretch along the edge, its slanting part, and the white before the text. */
const LEAD_MM = { straight: 2, slant: 4, gap: 0.8 } as const;

/** Room that dimensions take beside the edge that they are written at. */
export const ORDINATE_MM = LEAD_MM.straight + LEAD_MM.slant + LEAD_MM.gap + 13;

/**
 * Dimensions from one corner along one edge (ISO 129-1, superimposed running dimensions): a tick on the edge and the
 * distance beside it, pushed apart where they would touch.
 * @param edge where the corner lies, and whether the edge runs to the right (`x`) or up (`y`)
 */
export function ordinates(
  values: readonly number[],
  scale: number,
  edge: { readonly xMm: number; readonly yMm: number; readonly runs: "x" | "y" },
): readonly Mark[] {
  const own = [...new Set(values.map((value) => Math.round(value * 10) / 10))].sort((a, b) => a - b);
  const at0 = own.map((value) => value * scale);
  const places = apart(at0);
  const x = edge.runs === "x";
  const point = (along: number, out: number) =>
    x ? at(edge.xMm + along, edge.yMm + out) : at(edge.xMm - out, edge.yMm - along);
  return own.flatMap((value, i): Mark[] => {
    const from = at0[i] ?? 0;
    const to = places[i] ?? from;
    const out = LEAD_MM.straight + LEAD_MM.slant;
    const end = point(to, out + LEAD_MM.gap);
    const text = shortNumber(value, 1);
    return [
      polyline(
        [point(from, 0.4), point(from, LEAD_MM.straight), point(to, out)],
        stroke("ink", LINE.hair),
        "DIMENSIONS",
      ),
      x
        ? write(text, at(end.xMm + TEXT.small / 2, end.yMm), {
            heightMm: TEXT.small,
            turnDeg: 90,
            anchor: "end",
            layer: "DIMENSIONS",
          })
        : write(text, at(end.xMm, end.yMm + TEXT.small / 2), {
            heightMm: TEXT.small,
            anchor: "end",
            layer: "DIMENSIONS",
          }),
    ];
  });
}

/** Places at least so far apart, in the same order, each as near its own as that lets it. */
function apart(wanted: readonly number[]): readonly number[] {
  // Neighbours that touch move together: pools of places, each about the mean of what it wants.
  const pools: { sum: number; count: number }[] = [];
  const start = ({ sum, count }: { sum: number; count: number }): number => sum / count;
  for (const [i, place] of wanted.entries()) {
    pools.push({ sum: place - i * APART_MM, count: 1 });
    for (let last = pools.at(-1), before = pools.at(-2); last && before && start(before) > start(last); ) {
      pools.splice(-2, 2, { sum: before.sum + last.sum, count: before.count + last.count });
      last = pools.at(-1);
      before = pools.at(-2);
    }
  }
  return pools
    .flatMap((pool) => new Array<number>(pool.count).fill(start(pool)))
    .map((s, i) => s + i * APART_MM);
}

/** A whole length along an edge, with arrows. */
export function wholeLength(
  lengthMm: number,
  scale: number,
  edge: { readonly xMm: number; readonly yMm: number; readonly runs: "x" | "y" },
): readonly Mark[] {
  const x = edge.runs === "x";
  const end = lengthMm * scale;
  const point = (along: number, out: number) =>
    x ? at(edge.xMm + along, edge.yMm - out) : at(edge.xMm + out, edge.yMm - along);
  const pen = stroke("ink", LINE.hair);
  const tick = (along: number): Mark => line(point(along, 1), point(along, 5), pen, "DIMENSIONS");
  const middle = point(end / 2, x ? 4.4 : 4.4);
  return [
    tick(0),
    tick(end),
    line(point(0, 3.4), point(end, 3.4), pen, "DIMENSIONS"),
    write(
      shortNumber(lengthMm, 1),
      x ? at(middle.xMm, middle.yMm) : at(middle.xMm + TEXT.normal, middle.yMm),
      {
        anchor: "middle",
        weight: "bold",
        turnDeg: x ? 0 : 90,
        layer: "DIMENSIONS",
      },
    ),
  ];
}
