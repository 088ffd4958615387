import {
  boxOf,
  convexPieces,
  differenceRings,
  growBox,
  intersectionRings,
  offsetRings,
  type RingMm,
  ringDistance,
  SharedMemory,
  signedArea,
} from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import { type CutoutShape, cutoutDistance } from "../cutouts/cutout-shape.ts";
import { cutoutRings } from "../solids/openings.ts";
import type { PanelArea } from "./panel-area.ts";
import type { Rigid } from "./rigid.ts";
import { shadowBetween } from "./shadow.ts";

/** Something upright in its panel's frame, as convex pieces. */
export interface Upright {
  readonly pieces: readonly RingMm[];
  readonly lowMm: number;
  readonly highMm: number;
}

/** How near two things come; a shared area means that they pass through each other. */
export interface Nearness {
  readonly gapMm: number;
  readonly overlapMm2: number;
}

/** What of a solid says which room it takes in its panel's frame. */
type Prismatic = Pick<Solid, "ring" | "lowMm" | "highMm">;

/** Areas below this are rounding, mm². */
const SLIVER_MM2 = 0.1;
/** Steps in which the room between two things is found. */
const HALVINGS = 8;

const pieces = new SharedMemory<RingMm, readonly RingMm[]>();

/** A solid as convex pieces; found once for each ring. */
export const uprightOf = ({ ring, lowMm, highMm }: Prismatic): Upright => ({
  pieces: pieces.ask(ring, [], () => convexPieces(ring)),
  lowMm,
  highMm,
});

/**
 * How near a solid of one frame comes to a thing of another, null when there is `wantedMm` between them: beside each
 * other in the solid's frame, or over each other along its z.
 */
export function nearSolid(solid: Prismatic, thing: Upright, rigid: Rigid, wantedMm: number): Nearness | null {
  const meets = (withinMm: number): boolean =>
    shadows(thing, rigid, solid.lowMm - withinMm, solid.highMm + withinMm).some(
      (shadow) => ringDistance(shadow, solid.ring, withinMm) < withinMm,
    );
  return nearness(meets, wantedMm, () => {
    const shared = shadows(thing, rigid, solid.lowMm, solid.highMm).flatMap((shadow) =>
      intersectionRings([shadow], [solid.ring]),
    );
    return shared.reduce((sum, ring) => sum + signedArea(ring), 0);
  });
}

/** The same with the panel itself: what passes through its openings with that much room is no matter. */
export function nearPanel(panel: PanelArea, thing: Upright, rigid: Rigid, wantedMm: number): Nearness | null {
  const under = (withinMm: number): readonly RingMm[] =>
    shadows(thing, rigid, -panel.thicknessMm - withinMm, withinMm);
  return nearness(
    (withinMm) => under(withinMm).some((shadow) => meetsWood(panel, shadow, withinMm)),
    wantedMm,
    () => under(0).reduce((sum, shadow) => sum + woodUnder(panel, shadow, 0), 0),
  );
}

/** Area over which a thing of another frame is more than `touchMm` deep in a panel, mm². */
export const deepIn = (panel: PanelArea, thing: Upright, rigid: Rigid, touchMm: number): number =>
  shadows(thing, rigid, touchMm - panel.thicknessMm, -touchMm).reduce(
    (sum, shadow) => sum + woodUnder(panel, shadow, -touchMm),
    0,
  );

function nearness(
  meets: (withinMm: number) => boolean,
  wantedMm: number,
  sharedMm2: () => number,
): Nearness | null {
  if (!meets(wantedMm)) return null;
  const overlapMm2 = sharedMm2();
  if (overlapMm2 > SLIVER_MM2) return { gapMm: 0, overlapMm2 };
  let clear = 0;
  let near = wantedMm;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (clear + near) / 2;
    if (meets(middle)) near = middle;
    else clear = middle;
  }
  return { gapMm: clear, overlapMm2: 0 };
}

function shadows(
  { pieces, lowMm, highMm }: Upright,
  rigid: Rigid,
  fromMm: number,
  toMm: number,
): readonly RingMm[] {
  if (fromMm >= toMm) return [];
  const between = { lowMm: fromMm, highMm: toMm };
  return pieces
    .map((piece) => shadowBetween(piece, { lowMm, highMm }, rigid, between))
    .filter((shadow) => shadow !== null);
}

/** Whether a shadow comes within `withinMm` of wood. */
function meetsWood(panel: PanelArea, shadow: RingMm, withinMm: number): boolean {
  if (ringDistance(shadow, panel.ring, withinMm) >= withinMm) return false;
  // Where nothing is cut away nearby there is wood, and no area need be computed.
  return (
    openingsNear(panel, shadow, withinMm).length === 0 || woodUnder(panel, shadow, withinMm) > SLIVER_MM2
  );
}

/** Area of wood under a shadow that is grown by `withinMm`, mm². */
function woodUnder(panel: PanelArea, shadow: RingMm, withinMm: number): number {
  const open = openingsNear(panel, shadow, withinMm);
  const within = open.some(
    (shape) => shape.form.kind !== "outline" && shadow.every((p) => cutoutDistance(shape, p) <= -withinMm),
  );
  if (within) return 0;
  const grown = withinMm === 0 ? [shadow] : offsetRings([shadow], withinMm);
  const wood = differenceRings(
    intersectionRings(grown, [panel.ring]),
    open.flatMap(({ form }) => cutoutRings(form)),
  );
  return wood.reduce((sum, part) => sum + signedArea(part), 0);
}

/** Openings right through a panel that may come within `withinMm` of a shadow. */
function openingsNear(
  { thicknessMm, cutouts }: PanelArea,
  shadow: RingMm,
  withinMm: number,
): readonly CutoutShape[] {
  const box = boxOf(shadow);
  if (box === null || cutouts === undefined) return [];
  return cutouts.index
    .near(growBox(box, Math.max(withinMm, 0)))
    .filter(({ depthMm }) => depthMm === null || depthMm >= thicknessMm);
}
