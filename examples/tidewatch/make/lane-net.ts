import { groupRows, type Item, type PanelPoint } from "@pinwright/engine";
import { pointInRing, pointSegmentDistance, ringSides, segmentDistance, UnionFind } from "@pinwright/kernel";

type Ring = readonly PanelPoint[];

/** A place where lanes meet, before it has a row. */
export interface Spot {
  readonly id: string;
  readonly at: PanelPoint;
}

export interface LaneNet {
  readonly spots: readonly Spot[];
  readonly lanes: readonly (readonly [from: Spot, to: Spot])[];
}

export interface LaneNetWanted {
  /** What ids of spots begin with: `wp.pf`. */
  readonly prefix: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Distance of neighbouring spots, and how far all of them stay from the edge. */
  readonly pitchMm: number;
  readonly edgeMm: number;
  /** What a bundle can't lie on, and the room between it and the middle of a bundle. */
  readonly obstacles: readonly Ring[];
  readonly clearMm: number;
  /** Spots that must be there: ends of crossings. */
  readonly fixed: readonly Spot[];
}

const distanceTo = (p: PanelPoint, ring: Ring): number =>
  pointInRing(p, ring) === "outside"
    ? Math.min(...ringSides(ring).map((side) => pointSegmentDistance(p, side)))
    : 0;

/** Whether a straight lane keeps its distance from everything. */
function isClear(a: PanelPoint, b: PanelPoint, obstacles: readonly Ring[], clearMm: number): boolean {
  return obstacles.every(
    (ring) =>
      pointInRing(a, ring) === "outside" &&
      ringSides(ring).every((side) => segmentDistance({ a, b }, side) >= clearMm),
  );
}

/** Rows and columns, so that lanes run straight along both, and across between them. */
function* places({ widthMm, heightMm, pitchMm, edgeMm }: LaneNetWanted): Generator<PanelPoint> {
  const stepFor = (extentMm: number): number => {
    const steps = Math.max(1, Math.round((extentMm - 2 * edgeMm) / pitchMm));
    return (extentMm - 2 * edgeMm) / steps;
  };
  const [stepX, stepY] = [stepFor(widthMm), stepFor(heightMm)];
  for (let yMm = edgeMm; yMm <= heightMm - edgeMm + 0.1; yMm += stepY)
    for (let xMm = edgeMm; xMm <= widthMm - edgeMm + 0.1; xMm += stepX)
      yield { xMm: Math.round(xMm), yMm: Math.round(yMm) };
}

/** A spot in each free place; where the place itself is taken, a little beside it. */
function freeSpots(wanted: LaneNetWanted): Spot[] {
  const spots: Spot[] = [...wanted.fixed];
  const isFree = (p: PanelPoint): boolean =>
    p.xMm >= wanted.edgeMm / 2 &&
    p.yMm >= wanted.edgeMm / 2 &&
    p.xMm <= wanted.widthMm - wanted.edgeMm / 2 &&
    p.yMm <= wanted.heightMm - wanted.edgeMm / 2 &&
    wanted.obstacles.every((ring) => distanceTo(p, ring) >= wanted.clearMm) &&
    spots.every((s) => Math.hypot(s.at.xMm - p.xMm, s.at.yMm - p.yMm) >= wanted.pitchMm * 0.6);
  const aside = [0, 6, -6, 12, -12];
  for (const p of places(wanted)) {
    const moved = aside.flatMap((dy) => aside.map((dx) => ({ xMm: p.xMm + dx, yMm: p.yMm + dy })));
    const at = moved
      .toSorted((a, b) => Math.hypot(a.xMm - p.xMm, a.yMm - p.yMm) - Math.hypot(b.xMm - p.xMm, b.yMm - p.yMm))
      .find(isFree);
    if (at !== undefined) spots.push({ id: `${wanted.prefix}-${at.xMm}-${at.yMm}`, at });
  }
  return spots;
}

/** The spots of the largest part that lanes join. */
function largestPart(spots: readonly Spot[], lanes: readonly (readonly [Spot, Spot])[]): ReadonlySet<Spot> {
  const number = new Map(spots.map((spot, i) => [spot, i]));
  const parts = new UnionFind(spots.length);
  for (const [a, b] of lanes) parts.join(number.get(a) ?? 0, number.get(b) ?? 0);
  const members = groupRows(spots, (spot) => String(parts.find(number.get(spot) ?? 0)));
  const [largest = []] = [...members.values()].toSorted((a, b) => b.length - a.length);
  return new Set(largest);
}

/** A bundle squeezes through here if need be. */
const SQUEEZE_MM = 1.5;

/** Lanes that join what the wide lanes leave apart: the shortest ones through narrower or longer gaps. */
function bridges(
  wanted: LaneNetWanted,
  spots: readonly Spot[],
  lanes: readonly (readonly [Spot, Spot])[],
): [Spot, Spot][] {
  const number = new Map(spots.map((spot, i) => [spot, i]));
  const parts = new UnionFind(spots.length);
  const join = (a: Spot, b: Spot): boolean => parts.join(number.get(a) ?? 0, number.get(b) ?? 0);
  for (const [a, b] of lanes) join(a, b);
  const pairs = spots.flatMap((a, i) =>
    spots.slice(i + 1).map((b) => ({ a, b, mm: Math.hypot(a.at.xMm - b.at.xMm, a.at.yMm - b.at.yMm) })),
  );
  return pairs
    .filter(({ mm }) => mm <= wanted.pitchMm * 4)
    .toSorted((p, q) => p.mm - q.mm)
    .flatMap(({ a, b }): [Spot, Spot][] =>
      parts.find(number.get(a) ?? 0) !== parts.find(number.get(b) ?? 0) &&
      isClear(a.at, b.at, wanted.obstacles, SQUEEZE_MM) &&
      join(a, b)
        ? [[a, b]]
        : [],
    );
}

/**
 * The ways that a bundle can take on one side of a panel: spots in the free places and a straight lane between
 * neighbours wherever nothing is in the way. Spots that hang apart are left out unless they were asked for.
 */
export function laneNet(wanted: LaneNetWanted): LaneNet {
  const spots = freeSpots(wanted);
  const lanes: [Spot, Spot][] = [];
  spots.forEach((from, i) => {
    for (const to of spots.slice(i + 1)) {
      const lengthMm = Math.hypot(from.at.xMm - to.at.xMm, from.at.yMm - to.at.yMm);
      if (lengthMm <= wanted.pitchMm * 1.55 && isClear(from.at, to.at, wanted.obstacles, wanted.clearMm))
        lanes.push([from, to]);
    }
  });
  lanes.push(...bridges(wanted, spots, lanes));
  const part = largestPart(spots, lanes);
  const kept = new Set(spots.filter((spot) => part.has(spot) || wanted.fixed.includes(spot)));
  return { spots: [...kept], lanes: lanes.filter(([from, to]) => kept.has(from) && kept.has(to)) };
}

/** What stands this far off the panel leaves room for a bundle below it. */
const UNDER_IT_MM = 20;

/** Footprints of what stands on one side of a panel and is too high to lie over. */
export function standingOn(
  items: Iterable<Item>,
  panelId: string,
  side: "top" | "under",
  overMm: number,
): readonly Ring[] {
  const rings: Ring[] = [];
  for (const item of items) {
    if (item.place.panelId !== panelId || item.kind === "fastener" || item.kind === "inline") continue;
    if (item.parentId !== null || item.place.zMm >= UNDER_IT_MM) continue;
    const heightMm =
      item.place.side === side ? item.type.height_mm : item.kind === "board" ? 0 : item.type.reach_mm - 13;
    if (heightMm > overMm) rings.push(item.footprint);
  }
  return rings;
}
