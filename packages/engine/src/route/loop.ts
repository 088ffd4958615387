/** The loop that a bundle makes between two ties that are closer than it is long. */
export interface Loop {
  /** Depth of the loop if it is an arc of a circle, mm. */
  readonly depthMm: number;
  /** Radius of that arc, mm; infinite when the bundle is straight. */
  readonly radiusMm: number;
  /** No loop of this length reaches deeper, whatever its shape, mm. */
  readonly deepestMm: number;
}

/** Halvings of the angle: far below a micrometre for any loop in a machine. */
const HALVINGS = 60;

/**
 * The arc of a circle of length L over a chord c: with the half angle a, L = 2 r a and c = 2 r sin a, so sin a ÷ a =
 * c ÷ L, found by halving; depth = r (1 − cos a). The deepest any loop can reach is ½ √(L² − c²): its points lie in
 * the ellipse with the ties as foci and L as the sum of distances. Elementary geometry.
 * @param lengthMm length of the bundle between the ties
 * @param chordMm distance of the ties; longer than the bundle: straight
 */
export function loopOver(lengthMm: number, chordMm: number): Loop {
  if (chordMm >= lengthMm) return { depthMm: 0, radiusMm: Number.POSITIVE_INFINITY, deepestMm: 0 };
  const ratio = chordMm / lengthMm;
  let low = 0;
  let high = Math.PI;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (Math.sin(middle) / middle > ratio) low = middle;
    else high = middle;
  }
  const halfAngle = (low + high) / 2;
  const radiusMm = lengthMm / (2 * halfAngle);
  return {
    depthMm: radiusMm * (1 - Math.cos(halfAngle)),
    radiusMm,
    deepestMm: Math.sqrt(lengthMm ** 2 - chordMm ** 2) / 2,
  };
}
