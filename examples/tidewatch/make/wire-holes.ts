import type { BookRow } from "@pinwright/book";
import type { Landing, Machine, PanelPoint } from "@pinwright/engine";
import { pointInRing, pointSegmentDistance, polar, ringSides } from "@pinwright/kernel";
import { cutoutShape } from "../check/cutout-shape.ts";
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
const SHARED_MM = 45;
const FARTHEST_MM = 140;

type Ring = readonly PanelPoint[];

const distance = (a: PanelPoint, b: PanelPoint): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);

const clearanceMm = (p: PanelPoint, ring: Ring): number =>
  pointInRing(p, ring) === "outside"
    ? Math.min(...ringSides(ring).map((s) => pointSegmentDistance(p, s)))
    : 0;

/** Landings on the upper side of the playfield, and whether their harness stays up there. */
function topLandings(
  machine: Machine,
): readonly { readonly landing: Landing; readonly harness: string; readonly staysUp: boolean }[] {
  const byHarness = new Map<string, Set<Landing>>();
  for (const end of machine.ends) {
    const landing = machine.landings.get(machine.points.get(end.point)?.landingId ?? "");
    if (landing === undefined) continue;
    byHarness.set(end.harness, (byHarness.get(end.harness) ?? new Set()).add(landing));
  }
  const isTop = ({ place }: Landing): boolean => place.panelId === "playfield" && place.side === "top";
  return [...byHarness].flatMap(([harness, landings]) =>
    [...landings].filter(isTop).map((landing) => ({ landing, harness, staysUp: [...landings].every(isTop) })),
  );
}

/** The nearest place to `at` where a hole has wood all round on both sides. */
function holePlace(at: PanelPoint, taken: readonly Ring[]): PanelPoint {
  for (let radiusMm = 0; radiusMm <= FARTHEST_MM; radiusMm += 3) {
    for (let deg = 0; deg < 360; deg += 15) {
      const step = polar(deg, radiusMm);
      const p = { xMm: Math.round(at.xMm + step.xMm), yMm: Math.round(at.yMm + step.yMm) };
      const insideMm = Math.min(p.xMm, p.yMm, 514 - p.xMm, 1067 - p.yMm);
      if (insideMm < HOLE_MM / 2 + WOOD_MM) continue;
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
    .filter((item) => item.place.zMm < (item.place.side === "under" ? 2 * HOLE_MM : HOLE_MM))
    .map((item) => item.footprint);
  const taken: readonly Ring[] = [...cutouts, ...standing, ...standingOn(items, "playfield", "under", 0)];
  const holes: PanelPoint[] = [];
  const upper = new Map<string, Spot[]>();
  const at = ({ place }: Landing): PanelPoint => ({ xMm: Math.round(place.xMm), yMm: Math.round(place.yMm) });
  for (const { landing, harness, staysUp } of topLandings(machine)) {
    if (staysUp) {
      const spots = upper.get(harness) ?? [];
      upper.set(harness, spots);
      const id = `wp.pt-${at(landing).xMm}-${at(landing).yMm}`;
      if (!spots.some((spot) => spot.id === id)) spots.push({ id, at: at(landing) });
    } else if (!holes.some((hole) => distance(hole, landing.place) <= SHARED_MM)) {
      const ring = (p: PanelPoint): Ring =>
        Array.from({ length: 12 }, (_, i) => {
          const edge = polar(i * 30, HOLE_MM / 2);
          return { xMm: p.xMm + edge.xMm, yMm: p.yMm + edge.yMm };
        });
      holes.push(holePlace(at(landing), [...taken, ...holes.map(ring)]));
    }
  }
  const named =
    (kind: string) =>
    (p: PanelPoint): Spot => ({ id: `wp.${kind}-${p.xMm}-${p.yMm}`, at: p });
  const top = holes.map(named("hole-top"));
  return {
    top: [...top, ...[...upper.values()].flat()],
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
