import type { BookRow } from "@pinwright/book";
import { fromFrame } from "@pinwright/kernel";
import { rows, type Topic } from "./author.ts";
import { mechanisms } from "./mechanisms.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import { DRAIN, TROUGH_EXIT } from "./playfield-plan.ts";
import { playfieldSwitches } from "./playfield-switches.ts";

type Cut = Partial<BookRow<"cutouts">>;

/** A cut in the frame of what it serves. */
interface Own {
  readonly purpose: BookRow<"cutouts">["purpose"];
  readonly shape: "circle" | "rect" | "slot";
  readonly at?: readonly [x: number, y: number];
  readonly width: number;
  readonly height?: number;
  readonly rotation?: number;
  readonly depth?: number;
}

const hole = (width: number, purpose: Own["purpose"] = "mechanism", at?: Own["at"]): Own => ({
  purpose,
  shape: "circle",
  width,
  ...(at === undefined ? {} : { at }),
});

/** A slot along the own y of what it serves. */
const slotAlong = (length: number, width: number, purpose: Own["purpose"], at?: Own["at"]): Own => ({
  purpose,
  shape: "slot",
  width: length,
  height: width,
  rotation: 90,
  ...(at === undefined ? {} : { at }),
});

const rect = (width: number, height: number, at?: Own["at"]): Own => ({
  purpose: "mechanism",
  shape: "rect",
  width,
  height,
  ...(at === undefined ? {} : { at }),
});

/** Cuts that every device of a type needs, seen from `top` in its frame. */
const FOR_DEVICES: Readonly<Record<string, readonly Own[]>> = {
  "dt.rollover": [slotAlong(38, 5, "slot")],
  "dt.star-rollover": [hole(16, "slot")],
  "dt.standup": [rect(24, 5)],
  "dt.rebound-leaf": [slotAlong(14, 6, "slot")],
  "dt.sling-leaf": [slotAlong(16, 6, "slot")],
  "dt.captive-leaf": [slotAlong(15, 5, "slot")],
  "dt.opto-tx-post": [hole(5, "other")],
  "dt.opto-rx-post": [hole(5, "other")],
  "dt.lamp-insert": [hole(16, "insert")],
  "dt.lamp-gi": [hole(13, "other")],
  "dt.flasher": [hole(16, "other")],
  "dt.flasher-insert": [hole(22, "insert")],
};

/** Large inserts: arrows before the shots and the lamps of the drain. */
const LARGE_MM = 17;
const isLarge = (id: string): boolean => /^lp\.(orbit|ramp|cave-[123]|again|jackpot|kickback)/.test(id);

const shaft = (x: number, y: number): Own => hole(14, "mechanism", [x, y]);

/** Cuts that every mechanism of a type needs, in its frame. */
const FOR_MECHANISMS: Readonly<Record<string, readonly Own[]>> = {
  "mt.flipper-left": [shaft(32, 0)],
  "mt.flipper-right": [shaft(-32, 0)],
  "mt.flipper-upper": [shaft(-32, 0)],
  "mt.slingshot-left": [slotAlong(26, 9, "mechanism", [23, 22])],
  "mt.slingshot-right": [slotAlong(26, 9, "mechanism", [23, -22])],
  "mt.bumper": [hole(26), hole(8, "mechanism", [0, 22]), hole(8, "mechanism", [0, -22])],
  "mt.drop-bank": [rect(94, 9, [0, -17.5])],
  "mt.drop-single": [rect(24, 9, [0, 16.5])],
  "mt.saucer": [hole(36, "ball-path", [0, -9])],
  "mt.up-kicker": [hole(36, "ball-path")],
  "mt.plunger": [slotAlong(70, 14, "mechanism", [0, -14])],
  "mt.magnet": [hole(26)],
  "mt.up-post": [hole(13)],
  "mt.kickback": [slotAlong(46, 12, "mechanism", [0, 32])],
  "mt.diverter": [hole(12, "mechanism", [0, 26])],
  "mt.lock": [hole(12, "mechanism", [8, 14])],
  "mt.gate": [hole(8, "mechanism", [-14, 0])],
  "mt.lifter": [slotAlong(24, 9, "mechanism", [0, 20])],
  "mt.beacon": [hole(30)],
  "mt.ship": [slotAlong(30, 12, "mechanism", [0, 14])],
};

const tenth = (value: number): number => Math.round(value * 10) / 10;

interface Placed {
  readonly id: string;
  readonly type: string;
  readonly side: string;
  readonly x_mm: number;
  readonly y_mm: number;
  readonly rotation_deg: number;
}

const cuts = (placed: Placed, own: readonly Own[]): readonly Cut[] =>
  own.map((cut, i): Cut => {
    const frame = { xMm: placed.x_mm, yMm: placed.y_mm, rotationDeg: placed.rotation_deg };
    const at = fromFrame(frame, { xMm: cut.at?.[0] ?? 0, yMm: cut.at?.[1] ?? 0 });
    const turned = cut.shape === "circle" ? 0 : (placed.rotation_deg + (cut.rotation ?? 0)) % 360;
    return {
      id: `cut.${placed.id.replace(".", "-")}${own.length === 1 ? "" : `-${i + 1}`}`,
      panel: "playfield",
      side: "top",
      purpose: cut.purpose,
      shape: cut.shape,
      x_mm: tenth(at.xMm),
      y_mm: tenth(at.yMm),
      rotation_deg: tenth(turned),
      width_mm: cut.width,
      height_mm: cut.height ?? null,
      depth_mm: cut.depth ?? null,
      serves: placed.id,
    };
  });

const devices = [...(playfieldLamps.tables.devices ?? []), ...(playfieldSwitches.tables.devices ?? [])];

export const playfieldCutouts: Topic = {
  tables: {
    cutouts: rows("cutouts", [
      ...devices.flatMap((device) =>
        cuts(device, isLarge(device.id) ? [hole(LARGE_MM, "insert")] : (FOR_DEVICES[device.type] ?? [])),
      ),
      ...(mechanisms.tables.mechanisms ?? []).flatMap((placed) =>
        cuts(placed, FOR_MECHANISMS[placed.type] ?? []),
      ),
      {
        id: "cut.drain",
        panel: "playfield",
        side: "top",
        purpose: "ball-path",
        shape: "rect",
        x_mm: DRAIN[0],
        y_mm: DRAIN[1],
        width_mm: 62,
        height_mm: 42,
        serves: "mech.trough",
      },
      {
        id: "cut.trough-exit",
        panel: "playfield",
        side: "top",
        purpose: "ball-path",
        shape: "circle",
        x_mm: TROUGH_EXIT[0],
        y_mm: TROUGH_EXIT[1],
        width_mm: 34,
        serves: "mech.trough",
      },
    ]),
  },
};
