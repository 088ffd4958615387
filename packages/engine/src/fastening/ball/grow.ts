import { addPoints, cosSinDeg, type PointMm, polar, type RingMm } from "@pinwright/kernel";

/** Arcs are drawn with a corner for every so many degrees: within 0.1 mm of the true one up to a radius of 18 mm. */
const ARC_STEP_DEG = 12;

/** Shorter sides are parts of arcs themselves. */
const LONG_SIDE_MM = 2;

/** Whether a ring that runs anticlockwise turns left, or goes straight on, at every corner. */
export function isConvex(ring: RingMm): boolean {
  let a = ring.at(-2);
  let b = ring.at(-1);
  for (const c of ring) {
    if (a === undefined || b === undefined) return false;
    const turn = (b.xMm - a.xMm) * (c.yMm - b.yMm) - (b.yMm - a.yMm) * (c.xMm - b.xMm);
    if (turn < -1e-9) return false;
    a = b;
    b = c;
  }
  return true;
}

/**
 * A ring that runs anticlockwise, grown by a distance, corners rounded: to be filled by the non-zero rule. A convex one
 * is walked round by the direction of its outward normal, with no more corners than an arc needs. The other kind is
 * walked along its sides, back along an arc where it turns right (the convolution of the ring with a circle), so that
 * it may cross itself; what it goes round at least once lies within the distance, and nothing else does
 * (L. Guibas, L. Ramshaw, J. Stolfi, A kinetic framework for computational geometry, FOCS 1983, from memory).
 */
export const growRing = (ring: RingMm, byMm: number): RingMm =>
  isConvex(ring) ? growConvex(ring, byMm) : convolve(ring, byMm);

/** Turns up to this are drawn as one corner, a little outside the arc: 0.1 mm at most for a ball. */
const MITRE_DEG = 14;

function convolve(ring: RingMm, byMm: number): RingMm {
  const corners = withoutTwins(ring);
  const grown: PointMm[] = [];
  const n = corners.length;
  for (let i = 0; i < n; i++) {
    const [a, b, c] = [corners[(i + n - 1) % n], corners[i], corners[(i + 1) % n]];
    if (a === undefined || b === undefined || c === undefined) continue;
    const fromDeg = normalDeg(a, b);
    const turnDeg = normaliseTurn(normalDeg(b, c) - fromDeg);
    if (Math.abs(turnDeg) <= MITRE_DEG) {
      const { cos } = cosSinDeg(turnDeg / 2);
      grown.push(addPoints(b, polar(fromDeg + turnDeg / 2, byMm / cos)));
      continue;
    }
    const steps = Math.ceil(Math.abs(turnDeg) / ARC_STEP_DEG);
    for (let k = 0; k <= steps; k++) grown.push(addPoints(b, polar(fromDeg + (turnDeg * k) / steps, byMm)));
  }
  return grown;
}

/** Direction of the outward normal of a side of a ring that runs anticlockwise. */
const normalDeg = (a: PointMm, b: PointMm): number =>
  (Math.atan2(a.xMm - b.xMm, b.yMm - a.yMm) * 180) / Math.PI;

/** The same turn between −180 and 180 degrees. */
const normaliseTurn = (deg: number): number => (deg > 180 ? deg - 360 : deg < -180 ? deg + 360 : deg);

const withoutTwins = (ring: RingMm): RingMm =>
  ring.filter((p, i) => {
    const before = ring.at(i - 1);
    return before === undefined || p.xMm !== before.xMm || p.yMm !== before.yMm;
  });

interface Normal {
  readonly deg: number;
  readonly from: PointMm;
  readonly to: PointMm;
}

function growConvex(ring: RingMm, byMm: number): RingMm {
  const faces = longFaces(ring);
  const grown: PointMm[] = [];
  const add = (p: PointMm, deg: number): void => {
    const { cos, sin } = cosSinDeg(deg);
    grown.push({ xMm: p.xMm + byMm * cos, yMm: p.yMm + byMm * sin });
  };
  const first = faces[0];
  const begin = first?.deg ?? 0;
  if (first === undefined) {
    for (let deg = 0; deg < 360; deg += ARC_STEP_DEG) add(extreme(ring, deg), deg);
    return grown;
  }
  faces.forEach((face, i) => {
    const nextDeg = faces[i + 1]?.deg ?? begin + 360;
    add(face.from, face.deg);
    add(face.to, face.deg);
    const steps = Math.ceil((nextDeg - face.deg) / ARC_STEP_DEG);
    for (let k = 1; k < steps; k++) {
      const deg = face.deg + ((nextDeg - face.deg) * k) / steps;
      add(extreme(ring, deg), deg);
    }
  });
  return grown;
}

/** The long sides of a ring by the direction of their outward normal, ascending. */
function longFaces(ring: RingMm): readonly Normal[] {
  const faces: Normal[] = [];
  let from = ring.at(-1);
  for (const to of ring) {
    if (from !== undefined) {
      const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
      if (dx * dx + dy * dy >= LONG_SIDE_MM ** 2) faces.push({ deg: normalDeg(from, to), from, to });
    }
    from = to;
  }
  return faces.sort((a, b) => a.deg - b.deg);
}

/** The corner that lies farthest in a direction. */
function extreme(ring: RingMm, deg: number): PointMm {
  const { cos, sin } = cosSinDeg(deg);
  let best: PointMm = { xMm: 0, yMm: 0 };
  let most = Number.NEGATIVE_INFINITY;
  for (const p of ring) {
    const along = p.xMm * cos + p.yMm * sin;
    if (along > most) {
      most = along;
      best = p;
    }
  }
  return best;
}
