import type { HarnessRoute, PanelPoint, SizedBranch } from "../model/index.ts";
import type { Turn } from "./bend.ts";

/**
 * Where bundles of a harness turn: every pair of lanes that share a wire and meet at a waypoint on one side of one
 * panel. Tails are loose and find their own bend; crossings leave the panel's plane and are checked in the poses. The bundle that turns is not thicker than
 * the thinner branch; that is what it is taken for.
 */
export const turnsOf = (route: HarnessRoute, branches: readonly SizedBranch[]): readonly Turn[] => {
  const nodes = new Map(route.nodes.map((n) => [n.id, n]));
  const meeting = new Map<string, { readonly branch: SizedBranch; readonly away: PanelPoint }[]>();
  for (const branch of branches) {
    const a = nodes.get(branch.a);
    const b = nodes.get(branch.b);
    if (branch.kind !== "lane" || a === undefined || b === undefined) continue;
    if (a.place.panelId !== b.place.panelId || a.place.side !== b.place.side) continue;
    const dx = b.place.xMm - a.place.xMm;
    const dy = b.place.yMm - a.place.yMm;
    if (dx === 0 && dy === 0) continue;
    for (const [end, sign] of [
      [a, 1],
      [b, -1],
    ] as const) {
      if (end.kind !== "waypoint") continue;
      const list = meeting.get(end.id) ?? [];
      list.push({ branch, away: { xMm: sign * dx, yMm: sign * dy } });
      meeting.set(end.id, list);
    }
  }
  const turns: Turn[] = [];
  for (const node of route.nodes) {
    const list = meeting.get(node.id) ?? [];
    list.forEach((p, index) => {
      const wires = new Set(p.branch.wireIds);
      for (const q of list.slice(index + 1)) {
        if (!q.branch.wireIds.some((id) => wires.has(id))) continue;
        turns.push({
          harnessId: route.harnessId,
          waypointId: node.id,
          turnDeg: 180 - angleDeg(p.away, q.away),
          diameterMm: Math.min(p.branch.bundle.laidMm, q.branch.bundle.laidMm),
          branches: [
            { id: p.branch.id, lengthMm: p.branch.lengthMm },
            { id: q.branch.id, lengthMm: q.branch.lengthMm },
          ],
        });
      }
    });
  }
  return turns;
};

/** Angle between two directions, 0 to 180. */
const angleDeg = (a: PanelPoint, b: PanelPoint): number => {
  const cross = a.xMm * b.yMm - a.yMm * b.xMm;
  const dot = a.xMm * b.xMm + a.yMm * b.yMm;
  return (Math.abs(Math.atan2(cross, dot)) * 180) / Math.PI;
};
