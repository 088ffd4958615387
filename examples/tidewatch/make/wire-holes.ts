import type { BookRow } from "@pinwright/book";
import type { Landing, Machine, PanelPoint } from "@pinwright/engine";
import { pointInRing, pointSegmentDistance, polar, ringSides } from "@pinwright/kernel";
import { ballGrid, flood, isSwept } from "../check/ball-grid.ts";
import { cutoutShape } from "../check/cutout-shape.ts";
import { BALL_MM, obstacles } from "../check/playfield.ts";
import { HELD_HOLES } from "./held-places.ts";
import { type Spot, standingOn } from "./lane-net.ts";

/** Holes through which wires of the upper side reach the underside, and the ways on the upper side between them. */
export interface WireHoles {
  readonly top: readonly Spot[];
  readonly under: readonly Spot[];
  readonly lanes: readonly (readonly [Spot, Spot])[];
  readonly cutouts: readonly Partial<BookRow<"cutouts">>[];
  readonly crossings: readonly Partial<BookRow<"crossings">>[];
}

const HOLE_MM = 9;
/** Wood that stays between a hole and whatever is near it. */
const WOOD_MM = 4;
/** A hole this near serves a device, too. */
const SHARED_MM = 110;
const FARTHEST_MM = 140;
/** From an in-line connector a harness may run this far below before it comes up. */
const FAR_BELOW_MM = 450;

/** Rubber rings and the apron stand on their edges: there is room for wires within them. */
const HOLLOW = /^tp\.(rubber|apron)-/;

type Ring = readonly PanelPoint[];

const distance = (a: PanelPoint, b: PanelPoint): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);

const clearanceMm = (p: PanelPoint, ring: Ring): number =>
  pointInRing(p, ring) === "outside"
    ? Math.min(...ringSides(ring).map((s) => pointSegmentDistance(p, s)))
    : 0;

interface TopLanding {
  readonly landing: Landing;
  readonly harness: string;
  /** Its harness stays up there, but for an in-line connector that it may hang on. */
  readonly staysUp: boolean;
  /** That in-line connector's half, on the underside. */
  readonly below: Landing | null;
}

/** Landings on the upper side of the playfield, and how their harness gets there. */
function topLandings(machine: Machine): readonly TopLanding[] {
  const byHarness = new Map<string, Set<Landing>>();
  for (const end of machine.ends) {
    const landing = machine.landings.get(machine.points.get(end.point)?.landingId ?? "");
    if (landing === undefined) continue;
    byHarness.set(end.harness, (byHarness.get(end.harness) ?? new Set()).add(landing));
  }
  const isTop = ({ place }: Landing): boolean => place.panelId === "playfield" && place.side === "top";
  return [...byHarness].flatMap(([harness, landings]) => {
    const others = [...landings].filter((landing) => !isTop(landing));
    const [first = null] = others;
    const below = others.length === 1 && first?.half === "b" ? first : null;
    const staysUp = others.length === 0 || below !== null;
    return [...landings].filter(isTop).map((landing) => ({ landing, harness, staysUp, below }));
  });
}

/** Where a ball comes over the wood: no wire may stand there. */
function ballRoom(machine: Machine): (p: PanelPoint) => boolean {
  const rings = obstacles(machine).map((body) => body.ring);
  const grid = ballGrid(rings, BALL_MM / 2, 514, 1067);
  const lane = flood(grid, { xMm: 486, yMm: 300 });
  const reached = flood(grid, { xMm: 235, yMm: 300 }).map((seen, cell) => seen | (lane[cell] ?? 0));
  return (p) => isSwept(grid, reached, p, (BALL_MM + HOLE_MM) / 2);
}

const named =
  (kind: string) =>
  (p: PanelPoint): Spot => ({ id: `wp.${kind}-${p.xMm}-${p.yMm}`, at: p });

const holeRing = (p: PanelPoint): Ring =>
  Array.from({ length: 12 }, (_, i) => {
    const edge = polar(i * 30, HOLE_MM / 2);
    return { xMm: p.xMm + edge.xMm, yMm: p.yMm + edge.yMm };
  });

/** The nearest place to `at` where a hole has wood all round on both sides and no ball comes over it. */
function holePlace(
  at: PanelPoint,
  taken: readonly Ring[],
  isRolledOver: (p: PanelPoint) => boolean,
  farthestMm: number,
): PanelPoint {
  for (let radiusMm = 0; radiusMm <= farthestMm; radiusMm += 3) {
    for (let deg = 0; deg < 360; deg += 5) {
      const step = polar(deg, radiusMm);
      const p = { xMm: Math.round(at.xMm + step.xMm), yMm: Math.round(at.yMm + step.yMm) };
      const insideMm = Math.min(p.xMm, p.yMm, 514 - p.xMm, 1067 - p.yMm);
      if (insideMm < HOLE_MM / 2 + WOOD_MM) continue;
      if (isRolledOver(p)) continue;
      if (taken.every((ring) => clearanceMm(p, ring) >= HOLE_MM / 2 + WOOD_MM)) return p;
    }
  }
  throw new Error(`No room for a wire hole near ${at.xMm}, ${at.yMm}.`);
}

/** Lanes that join spots at least length: each spot to the nearest one before it. */
function joined(spots: readonly Spot[]): readonly (readonly [Spot, Spot])[] {
  return spots.slice(1).flatMap((spot, i) => {
    const nearest = spots
      .slice(0, i + 1)
      .toSorted((a, b) => distance(a.at, spot.at) - distance(b.at, spot.at))[0];
    return nearest === undefined ? [] : [[nearest, spot] as const];
  });
}

/** Finds a hole for every device on the upper side, shared by neighbours, and ways for harnesses that stay there. */
export function wireHoles(machine: Machine): WireHoles {
  const cutouts = machine.book.tables.cutouts
    .filter((row) => row.panel === "playfield")
    .map((row) => cutoutShape(machine.book, row));
  const items = [...machine.items.values()].filter(
    (item) => item.place.panelId === "playfield" && item.parentId === null && item.kind !== "inline",
  );
  const standing = items
    .filter((item) => !HOLLOW.test(item.id))
    .filter((item) => item.place.zMm < (item.place.side === "under" ? 2 * HOLE_MM : HOLE_MM))
    .map((item) => item.footprint);
  const taken: readonly Ring[] = [...cutouts, ...standing, ...standingOn(items, "playfield", "under", 0)];
  const isRolledOver = ballRoom(machine);
  const holes: PanelPoint[] = [];
  const upper = new Map<string, Spot[]>();
  const at = ({ place }: Landing): PanelPoint => ({ xMm: Math.round(place.xMm), yMm: Math.round(place.yMm) });
  const holeNear = (landing: Landing, farthestMm = FARTHEST_MM): PanelPoint => {
    const near = holes.find((hole) => distance(hole, landing.place) <= SHARED_MM);
    if (near !== undefined) return near;
    const made =
      HELD_HOLES[landing.id] ??
      holePlace(at(landing), [...taken, ...holes.map(holeRing)], isRolledOver, farthestMm);
    holes.push(made);
    return made;
  };
  for (const { landing, harness, staysUp, below } of topLandings(machine)) {
    if (staysUp) {
      const spots =
        upper.get(harness) ?? (below === null ? [] : [named("hole-top")(holeNear(below, FAR_BELOW_MM))]);
      upper.set(harness, spots);
      const id = `wp.pt-${at(landing).xMm}-${at(landing).yMm}`;
      if (!spots.some((spot) => spot.id === id)) spots.push({ id, at: at(landing) });
    } else holeNear(landing);
  }
  const top = holes.map(named("hole-top"));
  return {
    top: [...new Map([...top, ...[...upper.values()].flat()].map((spot) => [spot.id, spot])).values()],
    under: holes.map(named("hole-under")),
    lanes: [...upper.values()].flatMap(joined),
    cutouts: holes.map((p) => ({
      id: `cut.wire-${p.xMm}-${p.yMm}`,
      panel: "playfield",
      side: "top",
      purpose: "wire-hole",
      shape: "circle",
      x_mm: p.xMm,
      y_mm: p.yMm,
      width_mm: HOLE_MM,
    })),
    crossings: holes.map((p) => ({
      id: `cx.hole-${p.xMm}-${p.yMm}`,
      from: named("hole-top")(p).id,
      to: named("hole-under")(p).id,
      kind: "hole",
      max_diameter_mm: HOLE_MM - 1,
    })),
  };
}
