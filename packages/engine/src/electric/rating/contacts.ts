import type { ContactRating, ElectricSolution, Machine } from "../../model/index.ts";
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
  for (const landing of machine.landings.values()) {
    const carrying = landing.pointIds.flatMap((pointId) => {
      const [point, rmsA] = [machine.points.get(pointId), solution.contacts.get(pointId)?.rmsA.most ?? 0];
      return point === undefined || rmsA === 0 ? [] : [{ point, rmsA }];
    });
    const loaded = loadedContacts(carrying.map(({ rmsA }) => rmsA));
    const isHousing = landing.connector !== null;
    for (const { point, rmsA } of carrying) {
      const { rated_a: ratedA, shared } = point.family;
      const ways = landing.pointIds.length;
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
