import type { ContactRating, ElectricSolution, Machine, Point } from "../../model/index.ts";
import { contactShare, loadedContacts } from "../physics/contact-limit.ts";
import { shareOf } from "./wires.ts";

/**
 * Current limit of every contact that carries current: its family's for one by itself, less by how many of its
 * housing carry current too, against its rms at the worst corner.
 */
export function rateContacts(
  machine: Machine,
  solution: Pick<ElectricSolution, "contacts">,
): ReadonlyMap<string, ContactRating> {
  const rated = new Map<string, ContactRating>();
  const byLanding = new Map<string, { readonly point: Point; readonly rmsA: number }[]>();
  for (const [pointId, { rmsA }] of solution.contacts) {
    const point = machine.points.get(pointId);
    if (point === undefined || rmsA.most === 0) continue;
    const list = byLanding.get(point.landingId);
    if (list === undefined) byLanding.set(point.landingId, [{ point, rmsA: rmsA.most }]);
    else list.push({ point, rmsA: rmsA.most });
  }
  for (const [landingId, carrying] of byLanding) {
    const landing = machine.landings.get(landingId);
    const loaded = loadedContacts(carrying.map(({ rmsA }) => rmsA));
    const isHousing = landing?.connector != null;
    for (const { point, rmsA } of carrying) {
      const { rated_a: ratedA, shared } = point.family;
      const ways = landing?.pointIds.length ?? 1;
      const share = isHousing ? contactShare(shared, loaded, ways) : 1;
      rated.set(point.id, {
        pointId: point.id,
        ratedA,
        loaded: isHousing ? loaded : 1,
        ways,
        contactShare: share,
        limitA: ratedA * share,
        rmsA,
        share: shareOf(rmsA, ratedA * share),
      });
    }
  }
  return rated;
}
