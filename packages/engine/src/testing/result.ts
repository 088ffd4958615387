import { compareText } from "@pinwright/kernel";
import { bundleOf } from "../bundle/index.ts";
import { breakoutGroups, colourHarness } from "../colour/index.ts";
import { sizeBranches, sizeWires } from "../length/index.ts";
import type {
  Branch,
  HarnessResult,
  HarnessRoute,
  Landing,
  Machine,
  Place,
  TreeNode,
} from "../model/index.ts";
import { layPinboard, pinboardInput } from "../pinboard/index.ts";
import { wireHarness } from "../wire/index.ts";

const HUBS = [
  { id: "w.left", xMm: 100 },
  { id: "w.right", xMm: 400 },
] as const;
const LANE = "lane.mid";

/**
 * One harness worked out along a plain route: two waypoints joined by a lane, and a straight tail from each
 * landing to the nearer one.
 */
export function createHarnessResult(machine: Machine, harnessId: string): HarnessResult {
  const harness = machine.harnesses.get(harnessId);
  if (harness === undefined) throw new Error(`harness is ${harnessId}, expected one of the machine`);
  const wires = wireHarness(machine, harnessId);
  const landings = landingsOf(
    machine,
    wires.wires.flatMap((w) => [w.a, w.b]),
  );
  const route = plainRoute(machine, wires, landings);
  const branches = sizeBranches(machine, wires, route, (diameters) => bundleOf(diameters, machine.shop));
  const colours = colourHarness(machine, wires, breakoutGroups(route));
  return {
    harness,
    labels: { en: harness.label, zh: harness.label_zh || harness.label },
    wires: sizeWires(machine, wires, route, branches).map((wire) => ({
      ...wire,
      colour: colours.colours.get(wire.id) ?? "",
    })),
    splices: wires.splices,
    route,
    branches,
    landingIds: landings.map((l) => l.id),
    colours: colours.optimum,
    pinboard: layPinboard(pinboardInput(machine, harness, route, branches)),
  };
}

function landingsOf(machine: Machine, ends: readonly string[]): readonly Landing[] {
  const ids = new Set(ends.flatMap((end) => machine.points.get(end)?.landingId ?? []));
  return [...ids].sort(compareText).flatMap((id) => machine.landings.get(id) ?? []);
}

function plainRoute(
  machine: Machine,
  wires: ReturnType<typeof wireHarness>,
  landings: readonly Landing[],
): HarnessRoute {
  const place = (xMm: number): Place => ({
    panelId: "pf",
    side: "under",
    xMm,
    yMm: 500,
    rotationDeg: 0,
    zMm: 0,
  });
  const hubOf = (landing: Landing): string =>
    landing.place.xMm < (HUBS[0].xMm + HUBS[1].xMm) / 2 ? HUBS[0].id : HUBS[1].id;
  const hubX = (id: string): number => HUBS.find((hub) => hub.id === id)?.xMm ?? 0;
  const nodes: TreeNode[] = [
    ...HUBS.map((hub): TreeNode => ({ id: hub.id, kind: "waypoint", place: place(hub.xMm), breakout: true })),
    ...landings.map(
      (l): TreeNode => ({ id: `landing:${l.id}`, kind: "landing", place: l.place, breakout: false }),
    ),
  ];
  const branches: Branch[] = [
    { id: LANE, kind: "lane", a: HUBS[0].id, b: HUBS[1].id, routeMm: HUBS[1].xMm - HUBS[0].xMm },
    ...landings.map((l): Branch => {
      const hub = hubOf(l);
      const routeMm = Math.max(10, Math.hypot(l.place.xMm - hubX(hub), l.place.yMm - 500));
      return { id: `tail:${l.id}`, kind: "tail", a: hub, b: `landing:${l.id}`, routeMm };
    }),
  ];
  const hubAt = (end: string): string => {
    const landing = machine.landings.get(machine.points.get(end)?.landingId ?? "");
    return landing === undefined ? HUBS[0].id : hubOf(landing);
  };
  const tail = (end: string): readonly string[] => {
    const landingId = machine.points.get(end)?.landingId;
    return landingId === undefined ? [] : [`tail:${landingId}`];
  };
  const paths = new Map(
    wires.wires.map((w) => [
      w.id,
      [...tail(w.a), ...(hubAt(w.a) === hubAt(w.b) ? [] : [LANE]), ...tail(w.b)],
    ]),
  );
  return {
    harnessId: wires.harnessId,
    rootId: HUBS[0].id,
    nodes,
    branches,
    paths,
    spliceAt: new Map(wires.splices.map((s) => [s.id, HUBS[0].id])),
    unreached: [],
    work: {
      breakouts: HUBS.length,
      ties: 0,
      insertions: 0,
      splices: wires.splices.length,
      minutes: 0,
      metres: 0,
      total: { value: 0, lowerBound: 0, gap: 0 },
    },
  };
}
