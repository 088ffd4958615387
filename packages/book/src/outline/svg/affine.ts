import type { OutlinePoint } from "../outline.ts";

/** x' = a·x + c·y + e, y' = b·x + d·y + f, as SVG writes `matrix(a b c d e f)`. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

const IDENTITY: Affine = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

/** First `inner`, then `outer`. */
export const compose = (outer: Affine, inner: Affine): Affine => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
});

/** A point of the drawing. */
export const movePoint = (m: Affine, x: number, y: number): OutlinePoint => ({
  xMm: m.a * x + m.c * y + m.e,
  yMm: m.b * x + m.d * y + m.f,
});

/** A direction of the drawing: the same without the shift. */
export const moveVector = (m: Affine, x: number, y: number): OutlinePoint => ({
  xMm: m.a * x + m.c * y,
  yMm: m.b * x + m.d * y,
});

const RAD = Math.PI / 180;

function rotation(degrees: number, x: number, y: number): Affine {
  const [cos, sin] = [Math.cos(degrees * RAD), Math.sin(degrees * RAD)];
  return { a: cos, b: sin, c: -sin, d: cos, e: x - cos * x + sin * y, f: y - sin * x - cos * y };
}

/** One transform function of SVG 2, section 8.5; null when it has the wrong number of arguments. */
function one(name: string, n: readonly number[]): Affine | null {
  const [p = 0, q, r, s = 0, t = 0, u = 0] = n;
  if (name === "matrix" && n.length === 6) return { a: p, b: q ?? 0, c: r ?? 0, d: s, e: t, f: u };
  if (name === "translate" && (n.length === 1 || n.length === 2)) return { ...IDENTITY, e: p, f: q ?? 0 };
  if (name === "scale" && (n.length === 1 || n.length === 2)) return { ...IDENTITY, a: p, d: q ?? p };
  if (name === "rotate" && n.length === 1) return rotation(p, 0, 0);
  if (name === "rotate" && n.length === 3) return rotation(p, q ?? 0, r ?? 0);
  if (name === "skewX" && n.length === 1) return { ...IDENTITY, c: Math.tan(p * RAD) };
  if (name === "skewY" && n.length === 1) return { ...IDENTITY, b: Math.tan(p * RAD) };
  return null;
}

/** Reads a `transform` attribute, or null when it is not one. */
export function parseTransform(text: string): Affine | null {
  let rest = text.trim();
  let result = IDENTITY;
  while (rest !== "") {
    const call = /^([a-zA-Z]+)\s*\(([^)]*)\)[\s,]*/.exec(rest);
    if (call === null) return null;
    const numbers = (call[2] ?? "").split(/[\s,]+/).filter((word) => word !== "");
    const step = one(call[1] ?? "", numbers.map(Number));
    if (step === null || numbers.some((word) => !Number.isFinite(Number(word)))) return null;
    result = compose(result, step);
    rest = rest.slice(call[0].length);
  }
  return result;
}
