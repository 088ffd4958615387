/**
 * Matrices of G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A physiologically-based model for simulation of
 * color vision deficiency", IEEE Trans. Visualization and Computer Graphics 15 (2009) 1291–1298, severity 1.0, for
 * linear RGB. From memory; each row adds up to 1, so that greys stay grey, which the test checks.
 */
export const DEFICIENCIES = {
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
} as const;

/** Three numbers of a colour. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** Linear light of `#rrggbb`, 0 to 1 (IEC 61966-2-1). */
export function linearOf(hex: string): Rgb {
  const channel = (at: number): number => {
    const v = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
  };
  return [channel(1), channel(3), channel(5)];
}

const clamp = (v: number): number => Math.min(1, Math.max(0, v));

/** What someone with a deficiency sees of a colour, as linear light. */
export function seenBy(rows: readonly (readonly number[])[], [r, g, b]: Rgb): Rgb {
  const row = (i: number): number => {
    const [x = 0, y = 0, z = 0] = rows[i] ?? [];
    return clamp(x * r + y * g + z * b);
  };
  return [row(0), row(1), row(2)];
}

/** Relative luminance, 0 to 1. */
export const luminance = ([r, g, b]: Rgb): number => 0.2126 * r + 0.7152 * g + 0.0722 * b;

/** The same brightness without colour: a photocopy. */
export const greyOf = (rgb: Rgb): Rgb => [luminance(rgb), luminance(rgb), luminance(rgb)];

/** CIE L*a*b* of linear light, white D65 (CIE 15). */
export function labOf([r, g, b]: Rgb): Rgb {
  const f = (t: number): number => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
  const y = f(0.2126729 * r + 0.7151522 * g + 0.072175 * b);
  const z = f((0.0193339 * r + 0.119192 * g + 0.9503041 * b) / 1.08883);
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)];
}

/** Colour difference ΔE*ab (CIE 1976) of two colours in L*a*b*. */
export const labDifference = (p: Rgb, q: Rgb): number => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
