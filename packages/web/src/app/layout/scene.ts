import { type BoxMm, boxOf, type PointMm } from "@pinwright/kernel";
import type { Entries } from "../book/desk-client.ts";
import { HitIndex, type Pointable } from "./geometry/hit.ts";
import type { Layer, Layers } from "./layers.ts";

export type Side = "top" | "under";

/** Tables whose rows can be moved on the drawing. */
export type MovableTable =
  | "devices"
  | "boards"
  | "mechanisms"
  | "inlines"
  | "fasteners"
  | "waypoints"
  | "cutouts";

/** Something on the side of a panel that can be pointed at, selected and perhaps moved. */
export interface Target extends Pointable, PointMm {
  readonly layer: Layer;
  readonly side: Side;
  readonly rotationDeg: number;
  readonly label: string;
  readonly labelZh: string;
  /** Table and row that it is moved by: a child of a mechanism goes with its mechanism. Null: it cannot be moved. */
  readonly moves: { readonly table: MovableTable; readonly id: string } | null;
  /** Table and row to delete or copy; a child of a mechanism belongs to its type and cannot be. */
  readonly row: { readonly table: MovableTable | "lanes"; readonly id: string } | null;
  /** Waypoints at its ends, of a lane. */
  readonly ends: readonly [string, string] | null;
}

/** What one side of a panel shows. */
export interface Scene {
  readonly targets: ReadonlyMap<string, Target>;
  readonly hits: HitIndex<Target>;
}

/** Everything that is told of one panel. */
export interface PanelEntries {
  readonly items: Entries<"layoutItems">;
  readonly cutouts: Entries<"layoutCutouts">;
  readonly waypoints: Entries<"layoutWaypoints">;
  readonly lanes: Entries<"layoutLanes">;
}

const TABLES = {
  device: "devices",
  board: "boards",
  mechanism: "mechanisms",
  inline: "inlines",
  fastener: "fasteners",
} as const;

const LAYERS = {
  device: "devices",
  board: "boards",
  mechanism: "mechanisms",
  inline: "inlines",
  fastener: "fasteners",
} as const satisfies Record<keyof typeof TABLES, Layer>;

/** What is hit first: small things that lie on large ones. */
const DEPTHS: Readonly<Partial<Record<Layer, number>>> = {
  waypoints: 0,
  fasteners: 1,
  devices: 2,
  inlines: 2,
  boards: 3,
  mechanisms: 4,
  lanes: 5,
  cutouts: 6,
};

/** Pairs of numbers as corners, moved to a place. */
export function cornersAt(ring: readonly number[], xMm: number, yMm: number): readonly PointMm[] {
  const corners: PointMm[] = [];
  for (let i = 0; i + 1 < ring.length; i += 2)
    corners.push({ xMm: xMm + (ring[i] ?? 0), yMm: yMm + (ring[i + 1] ?? 0) });
  return corners;
}

const spot = (xMm: number, yMm: number): BoxMm => ({ minXMm: xMm, maxXMm: xMm, minYMm: yMm, maxYMm: yMm });

type ItemEntry = PanelEntries["items"] extends ReadonlyMap<string, infer E> ? E : never;

function itemTarget(item: ItemEntry): Target {
  const ring = cornersAt(item.ring, item.xMm, item.yMm);
  const table = TABLES[item.kind];
  const layer = LAYERS[item.kind];
  return {
    id: item.id,
    layer,
    depth: DEPTHS[layer] ?? 9,
    side: item.side,
    xMm: item.xMm,
    yMm: item.yMm,
    rotationDeg: item.rotationDeg,
    label: item.label,
    labelZh: item.labelZh,
    ring,
    line: null,
    box: boxOf(ring) ?? spot(item.xMm, item.yMm),
    moves: item.parentId === null ? { table, id: item.id } : { table: "mechanisms", id: item.parentId },
    row: item.parentId === null ? { table, id: item.id } : null,
    ends: null,
  };
}

const BARE = { label: "", labelZh: "", rotationDeg: 0, ring: null, line: null, ends: null } as const;

function* targetsOf({ items, cutouts, waypoints, lanes }: PanelEntries, side: Side): Generator<Target> {
  for (const item of items.values()) if (item.side === side) yield itemTarget(item);
  for (const cutout of cutouts.values()) {
    if (cutout.side !== side && cutout.depthMm !== null) continue;
    const ring = cornersAt(cutout.rings[0] ?? [], cutout.xMm, cutout.yMm);
    const own = { table: "cutouts", id: cutout.id } as const;
    yield {
      ...BARE,
      id: cutout.id,
      layer: "cutouts",
      depth: DEPTHS.cutouts ?? 9,
      side,
      xMm: cutout.xMm,
      yMm: cutout.yMm,
      rotationDeg: cutout.rotationDeg,
      ring,
      box: boxOf(ring) ?? spot(cutout.xMm, cutout.yMm),
      moves: own,
      row: own,
    };
  }
  for (const waypoint of waypoints.values()) {
    if (waypoint.side !== side) continue;
    const own = { table: "waypoints", id: waypoint.id } as const;
    const { xMm, yMm } = waypoint;
    yield {
      ...BARE,
      id: waypoint.id,
      layer: "waypoints",
      depth: DEPTHS.waypoints ?? 9,
      side,
      xMm,
      yMm,
      box: spot(xMm, yMm),
      moves: own,
      row: own,
    };
  }
  for (const lane of lanes.values()) {
    const from = waypoints.get(lane.from);
    const to = waypoints.get(lane.to);
    if (lane.side !== side || from === undefined || to === undefined) continue;
    yield {
      ...BARE,
      id: lane.id,
      layer: "lanes",
      depth: DEPTHS.lanes ?? 9,
      side,
      xMm: (from.xMm + to.xMm) / 2,
      yMm: (from.yMm + to.yMm) / 2,
      line: [from, to],
      box: boxOf([from, to]) ?? spot(from.xMm, from.yMm),
      moves: null,
      row: { table: "lanes", id: lane.id },
      ends: [lane.from, lane.to],
    };
  }
}

/** The things on one side of a panel, as far as their layers are shown. */
export function sceneOf(entries: PanelEntries, side: Side, layers: Layers): Scene {
  const targets = new Map<string, Target>();
  for (const target of targetsOf(entries, side)) targets.set(target.id, target);
  const shown = [...targets.values()].filter((target) => layers[target.layer]);
  return { targets, hits: new HitIndex(shown) };
}
