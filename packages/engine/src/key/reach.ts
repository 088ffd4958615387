import type { Place } from "../model/index.ts";
import { anchorOf, type Joint } from "./plugs.ts";

/** How far a plug reaches and how far it would have to. */
export interface Reach {
  readonly freeMm: number;
  readonly distanceMm: number;
}

/**
 * From where its bundle is held, a plug reaches as far as the free bundle with its service loop is long. It comes
 * to another joint's socket when that is no farther in a straight line; a socket that hangs on a bundle itself
 * comes towards it. Millimetres, in the pose that `distance` measures in.
 */
export function reachOf(from: Joint, to: Joint, distance: (a: Place, b: Place) => number): Reach | null {
  const anchor = anchorOf(from.plug, to.mate ?? to.plug);
  if (anchor === null) return null;
  if (to.mate === null) {
    return { freeMm: anchor.freeMm, distanceMm: distance(anchor.place, to.plug.landing.place) };
  }
  const other = anchorOf(to.mate, from.plug);
  if (other === null) return null;
  return { freeMm: anchor.freeMm + other.freeMm, distanceMm: distance(anchor.place, other.place) };
}

/** Whether two joints' housings can be put together the wrong way: alike, or the plug shorter and nothing to stop it. */
export function mates(from: Joint, to: Joint): "alike" | "shorter" | null {
  const [p, s] = [from.plug, to.plug];
  if (p.connector.family !== s.connector.family || p.connector.rows !== s.connector.rows) return null;
  const sameKind = (p.landing.half === null) === (s.landing.half === null);
  const sameHousing =
    p.connector.housing_part !== null && p.connector.housing_part === s.connector.housing_part;
  if (!sameKind && !sameHousing) return null;
  if (p.connector.ways === s.connector.ways) return "alike";
  // A latched housing has end walls that a longer header does not clear.
  return p.connector.ways < s.connector.ways && !p.family.latch ? "shorter" : null;
}
