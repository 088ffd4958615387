import { flattenEllipse } from "../flatten.ts";
import type { DrawnPath } from "../rings.ts";
import { type Affine, movePoint, moveVector } from "./affine.ts";
import { parseLength } from "./lengths.ts";
import { flattenPath } from "./path.ts";

/** Attributes of one element. */
export type Attributes = Readonly<Record<string, string>>;

/** Paths of one element, or why it gives none. */
export type SvgShape = readonly DrawnPath[] | string;

/** A length attribute in user units; 0 when it is absent, NaN when it is not a length. */
function length(attributes: Attributes, name: string): number {
  const text = attributes[name];
  return text === undefined ? 0 : (parseLength(text) ?? Number.NaN);
}

function ellipse(cx: number, cy: number, rx: number, ry: number, toMm: Affine): SvgShape {
  if (!(rx > 0 && ry > 0)) return "has no radius in px, mm, cm, in, pt or pc";
  if (!Number.isFinite(cx + cy)) return "has no centre in px, mm, cm, in, pt or pc";
  const points = flattenEllipse(
    movePoint(toMm, cx, cy),
    moveVector(toMm, rx, 0),
    moveVector(toMm, 0, ry),
    0,
    2 * Math.PI,
  );
  return [{ points: points.slice(0, -1), closed: true }];
}

function rect(attributes: Attributes, toMm: Affine): SvgShape {
  const [x, y] = [length(attributes, "x"), length(attributes, "y")];
  const [w, h] = [length(attributes, "width"), length(attributes, "height")];
  if (!(w > 0 && h > 0) || !Number.isFinite(x + y)) return "has no size in px, mm, cm, in, pt or pc";
  const given = [attributes.rx, attributes.ry].map((r) =>
    r === undefined || r === "auto" ? null : (parseLength(r) ?? 0),
  );
  const rx = Math.min(w / 2, Math.max(0, given[0] ?? given[1] ?? 0));
  const ry = Math.min(h / 2, Math.max(0, given[1] ?? given[0] ?? 0));
  if (rx === 0 || ry === 0) return flattenPath(`M${x} ${y}h${w}v${h}h${-w}z`, toMm);
  const corner = (dx: number, dy: number) => `a${rx} ${ry} 0 0 1 ${dx} ${dy}`;
  return flattenPath(
    `M${x + rx} ${y}h${w - 2 * rx}${corner(rx, ry)}v${h - 2 * ry}${corner(-rx, ry)}h${2 * rx - w}${corner(-rx, -ry)}v${2 * ry - h}${corner(rx, -ry)}z`,
    toMm,
  );
}

function polygon(attributes: Attributes, closed: boolean, toMm: Affine): SvgShape {
  const numbers = (attributes.points ?? "").trim().split(/[\s,]+/);
  const values = numbers.map(Number);
  if (
    values.length < 4 ||
    values.length % 2 !== 0 ||
    numbers.includes("") ||
    !values.every(Number.isFinite)
  ) {
    return "has `points` that are not pairs of numbers";
  }
  const points = Array.from({ length: values.length / 2 }, (_, i) =>
    movePoint(toMm, values[2 * i] ?? 0, values[2 * i + 1] ?? 0),
  );
  return [{ points, closed }];
}

function path(attributes: Attributes, toMm: Affine): SvgShape {
  try {
    return flattenPath(attributes.d ?? "", toMm);
  } catch (error) {
    return `has malformed data (${error instanceof Error ? error.message.slice(0, 80) : "unknown"})`;
  }
}

/** Elements that draw, by name. */
export const SVG_SHAPES: Readonly<Record<string, (attributes: Attributes, toMm: Affine) => SvgShape>> = {
  path,
  rect,
  circle: (a, toMm) => ellipse(length(a, "cx"), length(a, "cy"), length(a, "r"), length(a, "r"), toMm),
  ellipse: (a, toMm) => ellipse(length(a, "cx"), length(a, "cy"), length(a, "rx"), length(a, "ry"), toMm),
  polygon: (a, toMm) => polygon(a, true, toMm),
  polyline: (a, toMm) => polygon(a, false, toMm),
  line: (a, toMm) => [
    {
      points: [
        movePoint(toMm, length(a, "x1"), length(a, "y1")),
        movePoint(toMm, length(a, "x2"), length(a, "y2")),
      ],
      closed: false,
    },
  ],
};
