import { NET_CLASSES } from "@pinwright/book";
import { BACKBOX, CABINET } from "./cabinet-panels.ts";
import type { Spot } from "./lane-net.ts";

export interface PanelSide {
  readonly panel: string;
  readonly side: "top" | "under";
}

type FixedSpot = Spot & PanelSide;

const spot = (
  id: string,
  panel: string,
  xMm: number,
  yMm: number,
  side: "top" | "under" = "top",
): FixedSpot => ({
  id: `wp.${id}`,
  panel,
  side,
  at: { xMm, yMm },
});

/** How far from a corner a bundle is tied on both panels, so that it bends as widely as it is thick. */
const CORNER_MM = 32;
const THICK_CORNER_MM = 58;
const HEAD_CORNER_MM = 44;

/** Places along the cabinet's rear edge where bundles go up its back. */
const REAR_AT = [120, 520] as const;

/** Places across the cabinet where bundles go over to the playfield, clamped in the gaps between its rear lamps. */
const FIELD_AT = [165, 195, 355, 385] as const;

/** Where the bundles over a hinge are held a second time, at the rows of in-line connectors. */
export const ROW_SPOTS: readonly FixedSpot[] = [
  ...[180, 450, 570].map((x) => spot(`bo-row-${x}`, "bb.bottom", x, 92)),
  ...[122, 222, 340, 420].map((x) => spot(`pf-row-${x}`, "playfield", x, 1050, "under")),
];

/** Ends of crossings, and where they are held again. The sides' own x runs from the front at the left, from the rear at the right. */
export const SPOTS: readonly FixedSpot[] = [
  ...ROW_SPOTS,
  ...[260, 720, 1180].flatMap((y) => [
    spot(`cb-left-${y}`, "cab.bottom", CORNER_MM, y),
    spot(`cl-foot-${y}`, "cab.left", y, CORNER_MM),
    spot(`cb-right-${y}`, "cab.bottom", CABINET.widthMm - CORNER_MM, y),
    spot(`cr-foot-${y}`, "cab.right", CABINET.depthMm - y, CORNER_MM),
  ]),
  ...[60, 400].flatMap((x) => [
    spot(`cb-front-${x}`, "cab.bottom", x, CORNER_MM),
    spot(`cf-foot-${x}`, "cab.front", CABINET.widthMm - x, CORNER_MM),
  ]),
  ...REAR_AT.flatMap((x) => [
    spot(`cb-rear-${x}`, "cab.bottom", x, CABINET.depthMm - THICK_CORNER_MM),
    spot(`ck-foot-${x}`, "cab.back", x, THICK_CORNER_MM),
  ]),
  spot("cf-door", "cab.front", 420, 130),
  spot("cd-hinge", "cab.door", 244, 130),
  spot("cl-rear", "cab.left", CABINET.depthMm - CORNER_MM, 330),
  spot("ck-left", "cab.back", CORNER_MM, 330),
  ...FIELD_AT.flatMap((x) => [
    spot(`ck-field-${x}`, "cab.back", x, 400),
    spot(`pf-rear-${x}`, "playfield", x - 23, 1018, "under"),
  ]),
  ...[110, 420].flatMap((x) => [
    spot(`ck-head-${x}`, "cab.back", x, 535),
    spot(`bo-neck-${x}`, "bb.bottom", x + 70, 60),
  ]),
  ...[100, 350, 600].flatMap((x) => [
    spot(`bo-rear-${x}`, "bb.bottom", x, BACKBOX.depthMm - 12 - HEAD_CORNER_MM),
    spot(`bk-foot-${x}`, "bb.back", x, HEAD_CORNER_MM),
  ]),
  spot("bo-left", "bb.bottom", 30, 150),
  spot("bs-foot", "bb.left", 150, 16),
  spot("bo-right", "bb.bottom", 670, 150),
  spot("br-foot", "bb.right", 80, 16),
  spot("bk-head", "bb.back", 350, BACKBOX.heightMm - BACKBOX.plyMm - CORNER_MM),
  spot("bt-rear", "bb.top", 350, 12 + CORNER_MM),
  spot("bo-lamp-left", "bb.bottom", 60, 115),
  spot("bl-foot-left", "bb.lamp", 40, 34, "under"),
  spot("bo-lamp-right", "bb.bottom", 640, 115),
  spot("bl-foot-right", "bb.lamp", 620, 34, "under"),
];

export interface CrossingWritten {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly kind: "hinge" | "gap";
  readonly maxDiameterMm: number;
  readonly lengthMm?: number;
  readonly roomMm?: number;
  readonly classes?: readonly string[];
}

const without = (...barred: readonly string[]): readonly string[] =>
  NET_CLASSES.filter((name) => !barred.includes(name));

/** What a way for signals lets in: nothing that pulses. */
export const SIGNALS = without("mains", "coil", "motor");
/** What a way for power lets in: nothing that a pulse disturbs. */
const POWER = without("mains", "audio", "sensor");

const gap = (id: string, from: string, to: string, maxDiameterMm = 30): CrossingWritten => ({
  id: `cx.${id}`,
  from: `wp.${from}`,
  to: `wp.${to}`,
  kind: "gap",
  maxDiameterMm,
});

const hinge = (
  id: string,
  from: string,
  to: string,
  maxDiameterMm: number,
  roomMm: number,
): CrossingWritten => ({
  ...gap(id, from, to, maxDiameterMm),
  kind: "hinge",
  roomMm,
});

export const CROSSINGS: readonly CrossingWritten[] = [
  ...[260, 720, 1180].flatMap((y) => [
    gap(`left-${y}`, `cb-left-${y}`, `cl-foot-${y}`, 28),
    gap(`right-${y}`, `cb-right-${y}`, `cr-foot-${y}`, 28),
  ]),
  ...[60, 400].map((x) => gap(`front-${x}`, `cb-front-${x}`, `cf-foot-${x}`, 20)),
  ...REAR_AT.map((x) => ({ ...gap(`rear-${x}`, `cb-rear-${x}`, `ck-foot-${x}`, 34), classes: POWER })),
  { ...gap("corner-left", "cl-rear", "ck-left", 20), classes: SIGNALS },
  hinge("door", "cf-door", "cd-hinge", 14, 90),
  ...FIELD_AT.map((x) => ({
    ...hinge(`field-${x}`, `ck-field-${x}`, `pf-rear-${x}`, 24, 110),
    // Long enough to stand the playfield up for work outside, beyond the pose in which it is lifted.
    lengthMm: 215,
  })),
  hinge("head-110", "ck-head-110", "bo-neck-110", 24, 190),
  hinge("head-420", "ck-head-420", "bo-neck-420", 30, 190),
  ...[100, 350, 600].map((x) => gap(`head-back-${x}`, `bo-rear-${x}`, `bk-foot-${x}`, 26)),
  gap("head-left", "bo-left", "bs-foot", 14),
  gap("head-right", "bo-right", "br-foot", 14),
  gap("head-top", "bk-head", "bt-rear", 14),
  gap("lamp-left", "bo-lamp-left", "bl-foot-left", 20),
  gap("lamp-right", "bo-lamp-right", "bl-foot-right", 20),
  { ...gap("mains", "mains-foot", "mains-back", 20), classes: ["mains", "earth"] },
];

/** The way of the mains, which nothing else may use: up the cabinet's back, and in the duct between the supplies. */
export const MAINS_SPOTS: readonly FixedSpot[] = [
  spot("mains-inlet", "cab.back", 215, 60),
  spot("mains-back", "cab.back", 215, 16),
  spot("mains-foot", "cab.bottom", 215, 1284),
  spot("mains-rear", "cab.bottom", 300, 1256),
  spot("mains-lamp", "cab.bottom", 300, 1180),
  spot("mains-middle", "cab.bottom", 300, 1100),
  spot("mains-logic", "cab.bottom", 300, 1020),
  spot("mains-board", "cab.bottom", 300, 924),
];

const mains = (id: string): FixedSpot => {
  const found = MAINS_SPOTS.find((s) => s.id === `wp.mains-${id}`);
  if (found === undefined) throw new Error(`There is no mains spot ${id}.`);
  return found;
};

export const MAINS_LANES: readonly (readonly [Spot, Spot])[] = [
  [mains("inlet"), mains("back")],
  [mains("foot"), mains("rear")],
  [mains("rear"), mains("lamp")],
  [mains("lamp"), mains("middle")],
  [mains("middle"), mains("logic")],
  [mains("logic"), mains("board")],
];
