import type { BoxMm, PointMm } from "@pinwright/kernel";

/** Something that what is dragged may line up with. */
export interface SnapTarget {
  readonly id: string;
  readonly box: BoxMm;
  readonly xMm: number;
  readonly yMm: number;
}

/** What is dragged: its box and the origin that lies on the grid, before the drag. */
export interface SnapMover {
  readonly box: BoxMm;
  readonly origin: PointMm;
}

/** A line that is shown while two things line up. `gapMm` is the free distance between them along the line. */
export interface Guide {
  readonly axis: "x" | "y";
  readonly atMm: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly gapMm: number;
  readonly targetId: string;
}

export interface Snapped {
  readonly dxMm: number;
  readonly dyMm: number;
  readonly guides: readonly Guide[];
}

interface Line {
  readonly valueMm: number;
  /** Middles line up with middles, edges with edges. */
  readonly kind: "middle" | "edge";
}

const linesX = (box: BoxMm, middle: number): readonly Line[] => [
  { valueMm: middle, kind: "middle" },
  { valueMm: box.minXMm, kind: "edge" },
  { valueMm: box.maxXMm, kind: "edge" },
];
const linesY = (box: BoxMm, middle: number): readonly Line[] => [
  { valueMm: middle, kind: "middle" },
  { valueMm: box.minYMm, kind: "edge" },
  { valueMm: box.maxYMm, kind: "edge" },
];

interface Best {
  readonly correctionMm: number;
  readonly atMm: number;
  readonly target: SnapTarget;
  /** How far off the other thing is along the line: of several that fit equally well, the nearest. */
  readonly awayMm: number;
}

function bestOf(
  movers: readonly Line[],
  targets: readonly SnapTarget[],
  linesOf: (target: SnapTarget) => readonly Line[],
  away: (target: SnapTarget) => number,
  toleranceMm: number,
): Best | null {
  let best: Best | null = null;
  for (const target of targets)
    for (const line of linesOf(target))
      for (const mover of movers) {
        if (mover.kind !== line.kind) continue;
        const correctionMm = line.valueMm - mover.valueMm;
        const size = Math.abs(correctionMm);
        if (size > toleranceMm) continue;
        const awayMm = away(target);
        const before = best === null ? Number.POSITIVE_INFINITY : Math.abs(best.correctionMm);
        if (size < before - 1e-6 || (best !== null && size <= before + 1e-6 && awayMm < best.awayMm))
          best = { correctionMm, atMm: line.valueMm, target, awayMm };
      }
  return best;
}

const gap = (aMin: number, aMax: number, bMin: number, bMax: number): number =>
  Math.max(0, aMin - bMax, bMin - aMax);

const toGrid = (value: number, stepMm: number): number =>
  stepMm > 0 ? Math.round(value / stepMm) * stepMm - value : 0;

/**
 * Where a drag by (dx, dy) comes to rest: lined up with another thing's middle or edge when one is near enough,
 * else with its origin on the grid. Each axis by itself.
 * @param gridMm 0: no grid
 */
export function snapped(
  mover: SnapMover,
  dxMm: number,
  dyMm: number,
  targets: readonly SnapTarget[],
  gridMm: number,
  toleranceMm: number,
): Snapped {
  const box: BoxMm = {
    minXMm: mover.box.minXMm + dxMm,
    maxXMm: mover.box.maxXMm + dxMm,
    minYMm: mover.box.minYMm + dyMm,
    maxYMm: mover.box.maxYMm + dyMm,
  };
  const x = mover.origin.xMm + dxMm;
  const y = mover.origin.yMm + dyMm;
  const bestX = bestOf(
    linesX(box, x),
    targets,
    (t) => linesX(t.box, t.xMm),
    (t) => gap(box.minYMm, box.maxYMm, t.box.minYMm, t.box.maxYMm),
    toleranceMm,
  );
  const bestY = bestOf(
    linesY(box, y),
    targets,
    (t) => linesY(t.box, t.yMm),
    (t) => gap(box.minXMm, box.maxXMm, t.box.minXMm, t.box.maxXMm),
    toleranceMm,
  );
  const guides: Guide[] = [];
  if (bestX !== null) {
    const { target, atMm, awayMm } = bestX;
    const ys = [box.minYMm, box.maxYMm, target.box.minYMm, target.box.maxYMm];
    guides.push({
      axis: "x",
      atMm,
      fromMm: Math.min(...ys),
      toMm: Math.max(...ys),
      gapMm: awayMm,
      targetId: target.id,
    });
  }
  if (bestY !== null) {
    const { target, atMm, awayMm } = bestY;
    const xs = [box.minXMm, box.maxXMm, target.box.minXMm, target.box.maxXMm];
    guides.push({
      axis: "y",
      atMm,
      fromMm: Math.min(...xs),
      toMm: Math.max(...xs),
      gapMm: awayMm,
      targetId: target.id,
    });
  }
  return {
    dxMm: dxMm + (bestX?.correctionMm ?? toGrid(x, gridMm)),
    dyMm: dyMm + (bestY?.correctionMm ?? toGrid(y, gridMm)),
    guides,
  };
}
