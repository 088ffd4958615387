import type { Affine } from "./affine.ts";

/** CSS: 96 px are one inch, 72 pt and 6 pc too. */
const PX_PER: Readonly<Record<string, number>> = {
  "": 1,
  px: 1,
  mm: 96 / 25.4,
  cm: 960 / 25.4,
  q: 24 / 25.4,
  in: 96,
  pt: 96 / 72,
  pc: 16,
};

/** A length in px (user units), or null when it is none or relative. */
export function parseLength(text: string): number | null {
  const parts = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([a-z]*)\s*$/i.exec(text);
  const px = parts === null ? undefined : PX_PER[(parts[2] ?? "").toLowerCase()];
  return parts === null || px === undefined ? null : Number(parts[1]) * px;
}

const MM_PER_PX = 25.4 / 96;

/** How the drawing lies on the outline's frame: millimetres, y up. Or why that cannot be told. */
export type Page = { readonly toMm: Affine } | string;

/**
 * The frame of an outline within its SVG. Sizes come from `width`, `height` and `viewBox`; with a `viewBox`
 * alone one unit is one millimetre. The origin is the drawing's own (0, 0), unless the `viewBox` starts there
 * (or is absent): then it is the lower left corner of the page, as one draws.
 */
export function page(attributes: Readonly<Record<string, string>>): Page {
  const width = attributes.width === undefined ? null : parseLength(attributes.width);
  const height = attributes.height === undefined ? null : parseLength(attributes.height);
  const box = attributes.viewBox
    ?.trim()
    .split(/[\s,]+/)
    .map(Number);
  if (box === undefined) {
    if (height === null) return "`width` and `height` with a unit, or a `viewBox`, so that its size is known";
    return { toMm: { a: MM_PER_PX, b: 0, c: 0, d: -MM_PER_PX, e: 0, f: height * MM_PER_PX } };
  }
  const [x = 0, y = 0, w = 0, h = 0] = box;
  if (box.length !== 4 || box.some((n) => !Number.isFinite(n)) || w <= 0 || h <= 0) {
    return "a `viewBox` of four numbers with a width and a height above 0";
  }
  const across = width === null ? null : (width * MM_PER_PX) / w;
  const up = height === null ? null : (height * MM_PER_PX) / h;
  if (across !== null && up !== null && Math.abs(across - up) > 1e-3 * Math.max(across, up)) {
    return `the same scale in both directions; \`width\` ÷ \`viewBox\` gives ${across} mm and \`height\` ÷ \`viewBox\` ${up} mm a unit`;
  }
  const mm = across ?? up ?? 1;
  if (!(mm > 0)) return "a `width` and `height` above 0";
  return { toMm: { a: mm, b: 0, c: 0, d: -mm, e: 0, f: x === 0 && y === 0 ? h * mm : 0 } };
}
