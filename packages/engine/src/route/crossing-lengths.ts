import type { BookRow } from "@pinwright/book";
import { compareText, distance3, roundTo, roundUpTo } from "@pinwright/kernel";
import { appliesTo, type Machine, type Place, roomPlaces } from "../model/index.ts";

/** Distance between the two ties of a crossing in one pose. */
export interface PoseDistance {
  readonly poseId: string;
  readonly distanceMm: number;
}

/** A crossing with the length that a bundle gets over it. */
export interface CrossingLength {
  readonly crossing: BookRow<"crossings">;
  /** For each pose that places both panels, in the order of pose ids; of a hole the one distance, in no pose. */
  readonly distances: readonly PoseDistance[];
  /** The longest and the shortest of them; null when no pose tells. */
  readonly pull: PoseDistance | null;
  readonly shut: PoseDistance | null;
  /** Length between the ties: as given, or found; rounded up to the shop's step. Null when nothing tells it. */
  readonly lengthMm: number | null;
}

/** The place of a waypoint. */
export const waypointPlace = (row: BookRow<"waypoints">): Place => ({
  panelId: row.panel,
  side: row.side,
  xMm: row.x_mm,
  yMm: row.y_mm,
  rotationDeg: 0,
  zMm: 0,
});

/**
 * Length of every crossing that applies, by id. Over a hinge or a gap: the longest distance of the two ties in any
 * pose, plus `hinge_slack_pct` of it, so that the bundle does not pull at full travel (the percentage is common
 * practice, no source). Through a hole: the distance of the two ties through the panel. A given length goes before
 * either. All are rounded up to `length_step_mm`.
 */
export function crossingLengths(machine: Machine): ReadonlyMap<string, CrossingLength> {
  const { poses, crossings, waypoints } = machine.book.tables;
  const places = new Map(
    waypoints.filter((w) => appliesTo(w, machine.options)).map((w) => [w.id, waypointPlace(w)]),
  );
  const rooms = poses
    .map((pose) => ({ poseId: pose.id, room: roomPlaces(machine, pose.id) }))
    .sort((a, b) => compareText(a.poseId, b.poseId));
  const found = new Map<string, CrossingLength>();
  const rows = crossings.filter((c) => appliesTo(c, machine.options));
  for (const crossing of rows.sort((a, b) => compareText(a.id, b.id))) {
    const from = places.get(crossing.from);
    const to = places.get(crossing.to);
    if (from === undefined || to === undefined) continue;
    const distances =
      from.panelId === to.panelId
        ? [{ poseId: "", distanceMm: throughPanelMm(machine, from, to) }]
        : rooms.flatMap(({ poseId, room }) => {
            const p = room(from);
            const q = room(to);
            return p === null || q === null ? [] : [{ poseId, distanceMm: roundTo(distance3(p, q), 0.001) }];
          });
    found.set(crossing.id, crossingLength(machine, crossing, distances));
  }
  return found;
}

function crossingLength(
  machine: Machine,
  crossing: BookRow<"crossings">,
  distances: readonly PoseDistance[],
): CrossingLength {
  const { hinge_slack_pct, length_step_mm } = machine.shop.numbers;
  let pull: PoseDistance | null = null;
  let shut: PoseDistance | null = null;
  for (const d of distances) {
    if (pull === null || d.distanceMm > pull.distanceMm) pull = d;
    if (shut === null || d.distanceMm < shut.distanceMm) shut = d;
  }
  const slack = crossing.kind === "hole" ? 1 : 1 + hinge_slack_pct / 100;
  const wanted = crossing.length_mm ?? (pull === null ? null : pull.distanceMm * slack);
  const lengthMm = wanted === null ? null : roundUpTo(wanted, length_step_mm);
  return { crossing, distances, pull, shut, lengthMm };
}

/** Distance of two places on one panel, through its thickness when they are on different sides. */
function throughPanelMm(machine: Machine, a: Place, b: Place): number {
  const thickness = a.side === b.side ? 0 : (machine.panels.get(a.panelId)?.thickness_mm ?? 0);
  return roundTo(Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm, thickness), 0.001);
}
