import type { Book, Shop } from "@pinwright/book";
import { type Machine, type PanelPoint, resolveMachine } from "@pinwright/engine";
import { rows, type Topic } from "./author.ts";
import {
  CROSSINGS,
  MAINS_LANES,
  MAINS_SPOTS,
  type PanelSide,
  ROW_SPOTS,
  SIGNALS,
  SPOTS,
} from "./crossings.ts";
import { type LaneNet, laneNet, type Spot, standingOn } from "./lane-net.ts";
import { wireHoles } from "./wire-holes.ts";

interface Side {
  readonly panel: string;
  readonly side: "top" | "under";
  readonly prefix: string;
  readonly pitchMm: number;
  readonly edgeMm: number;
  /** What is lower than this can lie under a bundle. */
  readonly overMm: number;
  readonly clearMm: number;
  readonly maxDiameterMm: number;
  /** Net classes that may use the ways; left out: all but mains. */
  readonly classes?: readonly string[];
}

/** Sides of panels on which bundles lie, with how near to each other the places are where wires may leave. */
const SIDES: readonly Side[] = [
  {
    panel: "playfield",
    side: "under",
    prefix: "wp.pf",
    pitchMm: 40,
    edgeMm: 14,
    overMm: 14,
    clearMm: 7,
    maxDiameterMm: 22,
  },
  {
    panel: "cab.bottom",
    side: "top",
    prefix: "wp.cb",
    pitchMm: 86,
    edgeMm: 22,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 34,
  },
  {
    panel: "cab.front",
    side: "top",
    prefix: "wp.cf",
    pitchMm: 90,
    edgeMm: 20,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 20,
  },
  {
    panel: "cab.left",
    side: "top",
    prefix: "wp.cl",
    pitchMm: 150,
    edgeMm: 20,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 28,
    classes: SIGNALS,
  },
  {
    panel: "cab.right",
    side: "top",
    prefix: "wp.cr",
    pitchMm: 150,
    edgeMm: 20,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 28,
  },
  {
    panel: "cab.back",
    side: "top",
    prefix: "wp.ck",
    pitchMm: 100,
    edgeMm: 20,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 34,
  },
  {
    panel: "cab.door",
    side: "top",
    prefix: "wp.cd",
    pitchMm: 64,
    edgeMm: 16,
    overMm: 8,
    clearMm: 6,
    maxDiameterMm: 14,
  },
  {
    panel: "bb.bottom",
    side: "top",
    prefix: "wp.bo",
    pitchMm: 80,
    edgeMm: 16,
    overMm: 8,
    clearMm: 7,
    maxDiameterMm: 30,
  },
  {
    panel: "bb.back",
    side: "top",
    prefix: "wp.bk",
    pitchMm: 80,
    edgeMm: 20,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 26,
  },
  {
    panel: "bb.lamp",
    side: "under",
    prefix: "wp.bl",
    pitchMm: 80,
    edgeMm: 18,
    overMm: 24,
    clearMm: 6,
    maxDiameterMm: 20,
  },
  {
    panel: "bb.left",
    side: "top",
    prefix: "wp.bs",
    pitchMm: 110,
    edgeMm: 18,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 14,
  },
  {
    panel: "bb.right",
    side: "top",
    prefix: "wp.br",
    pitchMm: 110,
    edgeMm: 18,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 14,
  },
  {
    panel: "bb.top",
    side: "top",
    prefix: "wp.bt",
    pitchMm: 170,
    edgeMm: 20,
    overMm: 8,
    clearMm: 8,
    maxDiameterMm: 14,
  },
];

const round = (at: PanelPoint): { readonly x_mm: number; readonly y_mm: number } => ({
  x_mm: Math.round(at.xMm * 10) / 10,
  y_mm: Math.round(at.yMm * 10) / 10,
});

const tail = (id: string): string => id.replace(/^wp\./, "");

const waypointRows = (on: PanelSide, spots: readonly Spot[], holds: ReadonlySet<string>) =>
  spots.map(({ id, at }) => ({
    id,
    panel: on.panel,
    side: on.side,
    ...round(at),
    ...(holds.has(id) ? { hold: "clamp" as const, hold_part: "hw.clamp-strap" } : {}),
  }));

const laneRows = (net: Pick<LaneNet, "lanes">, max_diameter_mm: number, classes: readonly string[] = []) =>
  net.lanes.map(([from, to]) => ({
    id: `ln.${tail(from.id)}.${tail(to.id)}`,
    from: from.id,
    to: to.id,
    max_diameter_mm,
    classes,
  }));

/** Waypoints, lanes and crossings, drawn over the machine as the other topics have placed it. */
export function lanes(book: Book, shop: Shop): Topic {
  const machine: Machine = resolveMachine(book, shop);
  const clamped = new Set([
    ...CROSSINGS.filter((c) => c.kind === "hinge").flatMap((c) => [c.from, c.to]),
    ...ROW_SPOTS.map(({ id }) => id),
  ]);
  const holes = wireHoles(machine);
  const nets = SIDES.map((side) => {
    const panel = machine.panels.get(side.panel);
    if (panel === undefined) throw new Error(`There is no panel ${side.panel}.`);
    const own = side.panel === "playfield" ? holes.under : [];
    const net = laneNet({
      ...side,
      widthMm: panel.width_mm,
      heightMm: panel.height_mm,
      obstacles: standingOn(machine.items.values(), side.panel, side.side, side.overMm),
      fixed: [...SPOTS.filter((s) => s.panel === side.panel && s.side === side.side), ...own],
    });
    return { side, net };
  });
  return {
    tables: {
      cutouts: rows("cutouts", holes.cutouts),
      waypoints: rows("waypoints", [
        ...nets.flatMap(({ side, net }) => waypointRows(side, net.spots, clamped)),
        ...waypointRows({ panel: "playfield", side: "top" }, holes.top, clamped),
        ...MAINS_SPOTS.flatMap((spot) => waypointRows(spot, [spot], clamped)),
      ]),
      lanes: rows("lanes", [
        ...nets.flatMap(({ side, net }) => laneRows(net, side.maxDiameterMm, side.classes)),
        ...laneRows({ lanes: holes.lanes }, 8),
        ...laneRows({ lanes: MAINS_LANES }, 20, ["mains", "earth"]),
      ]),
      crossings: rows("crossings", [
        ...CROSSINGS.map(({ id, from, to, kind, maxDiameterMm, lengthMm, roomMm, classes }) => ({
          id,
          from,
          to,
          kind,
          max_diameter_mm: maxDiameterMm,
          ...(lengthMm === undefined ? {} : { length_mm: lengthMm }),
          ...(roomMm === undefined ? {} : { room_mm: roomMm }),
          ...(classes === undefined ? {} : { classes }),
        })),
        ...holes.crossings,
      ]),
    },
  };
}
