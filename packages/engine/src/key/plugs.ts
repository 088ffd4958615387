import type { BookRow } from "@pinwright/book";
import { compareText, SharedMemory } from "@pinwright/kernel";
import type { HarnessResult, Landing, Machine, Place } from "../model/index.ts";

/** What keying needs of a harness that is worked out. */
export type KeyedHarness = Pick<HarnessResult, "harness" | "route" | "branches" | "landingIds">;

/** A place where a plug's bundle may be held, and how much bundle is free from there to the plug. */
export interface Anchor {
  readonly nodeId: string;
  readonly place: Place;
  readonly freeMm: number;
}

/** Half of a mated pair that hangs on a harness. */
export interface Plug {
  readonly landing: Landing;
  readonly connector: BookRow<"connectors">;
  readonly family: BookRow<"connector_families">;
  readonly harnessId: string;
  /** From the plug towards the root of its harness: every node, the last being the root. */
  readonly anchors: readonly Anchor[];
  /** Nodes of those anchors. */
  readonly nodeIds: ReadonlySet<string>;
  /** How many of them lie before the first that is fixed to the machine, that one included. */
  readonly heldAt: number;
}

/** What a plug mates with: a board's or device's header at its place, or the other half of an in-line connector. */
export interface Joint {
  /** Landing id of a header; item id of an in-line connector. */
  readonly id: string;
  readonly plug: Plug;
  /** The other half, when it hangs on a harness too; null when the socket stands still at the plug's landing. */
  readonly mate: Plug | null;
}

const heldOf = new SharedMemory<readonly BookRow<"waypoints">[], ReadonlySet<string>>();

/** Waypoints at which a bundle is fixed to the machine. */
function heldWaypoints(machine: Machine): ReadonlySet<string> {
  const { waypoints } = machine.book.tables;
  return heldOf.ask(
    waypoints,
    [],
    () => new Set(waypoints.flatMap((w) => (w.hold === "none" ? [] : [w.id]))),
  );
}

/** Every housing of one harness as a plug. */
export function harnessPlugs(
  machine: Machine,
  { harness, route, branches, landingIds }: KeyedHarness,
): readonly Plug[] {
  const holds = heldWaypoints(machine);
  const up = new Map(branches.map((b) => [b.b, { to: b.a, mm: b.lengthMm }]));
  const places = new Map(route.nodes.map((n) => [n.id, n.place]));
  return landingIds.flatMap((landingId) => {
    const landing = machine.landings.get(landingId);
    const family = machine.points.get(landing?.pointIds[0] ?? "")?.family;
    if (landing === undefined || landing.connector === null || family === undefined) return [];
    const anchors: Anchor[] = [];
    let heldAt = 0;
    let freeMm = 0;
    for (let step = up.get(`landing:${landingId}`); step !== undefined; step = up.get(step.to)) {
      freeMm += step.mm;
      const place = places.get(step.to);
      if (place === undefined) break;
      anchors.push({ nodeId: step.to, place, freeMm });
      if (heldAt === 0 && holds.has(step.to)) heldAt = anchors.length;
    }
    if (anchors.length === 0) return [];
    return [
      {
        landing,
        connector: landing.connector,
        family,
        harnessId: harness.id,
        anchors,
        nodeIds: new Set(anchors.map((a) => a.nodeId)),
        heldAt: heldAt || anchors.length,
      },
    ];
  });
}

/** Every mated pair of the machine that has a plug on a harness, in code-point order. */
export function joints(machine: Machine, plugs: readonly Plug[]): readonly Joint[] {
  const all = new Map(plugs.map((plug) => [plug.landing.id, plug]));
  const mounting = new Map(machine.book.tables.inlines.map((row) => [row.id, row.mounting]));
  const found: Joint[] = [];
  for (const plug of all.values()) {
    const { half, itemId, id } = plug.landing;
    if (half === null) found.push({ id, plug, mate: null });
    else if (half === "a") {
      const fixed = mounting.get(itemId) === "panel";
      found.push({ id: itemId, plug, mate: fixed ? null : (all.get(`${itemId}:b`) ?? null) });
    }
  }
  return found.sort((a, b) => compareText(a.id, b.id));
}

/**
 * The anchor that counts when a plug is pulled towards something. A bundle lies in its lanes, so towards another
 * harness only the tail is free. Within one harness the branches may be laid in each other's place, so that it is
 * the last breakout that both share, or the first place before it that is fixed to the machine.
 */
export function anchorOf(plug: Plug, other: Plug): Anchor | null {
  if (plug.harnessId !== other.harnessId) return plug.anchors[0] ?? null;
  for (let i = 0; i < plug.heldAt; i++) {
    const anchor = plug.anchors[i];
    if (anchor !== undefined && other.nodeIds.has(anchor.nodeId)) return anchor;
  }
  return plug.anchors[plug.heldAt - 1] ?? null;
}
