import type { PointMm, RingMm } from "@pinwright/kernel";

/**
 * A ring with as few of its corners as keep every corner that is left out within `tolerance` of its sides, going round
 * from the first one: what is grown has many more than it takes to tell where a ball lies.
 */
export function simplifyRing(ring: RingMm, toleranceMm: number): RingMm {
  const first = ring[0];
  if (first === undefined || ring.length < 6) return ring;
  const kept: PointMm[] = [first];
  let from = 0;
  while (from < ring.length - 1) {
    let to = from + 1;
    while (to + 1 <= ring.length && isNear(ring, from, to + 1, toleranceMm)) to++;
    if (to >= ring.length) break;
    const next = ring[to];
    if (next !== undefined) kept.push(next);
    from = to;
  }
  return kept.length < 3 ? ring : kept;
}

/** Whether all corners between two of a ring lie within a distance of the line between those; the last is the first. */
function isNear(ring: RingMm, from: number, to: number, toleranceMm: number): boolean {
  const a = ring[from];
  const b = ring[to % ring.length];
  if (a === undefined || b === undefined) return false;
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  const length = Math.sqrt(dx * dx + dy * dy);
  if (length === 0) return false;
  for (let i = from + 1; i < to; i++) {
    const p = ring[i];
    if (p === undefined) continue;
    const off = Math.abs((p.xMm - a.xMm) * dy - (p.yMm - a.yMm) * dx) / length;
    if (off > toleranceMm || (p.xMm - a.xMm) * dx + (p.yMm - a.yMm) * dy < 0) return false;
  }
  return true;
}
