import { fromFrame, polar } from "@pinwright/kernel";
import { onPlayfield, rows, type Topic } from "./author.ts";
import { FLIPPER_PIVOT_MM, SLING_OFFSET_MM } from "./mechanism-types-play.ts";
import {
  BUMPERS,
  FLIPPER_LEFT,
  FLIPPER_RIGHT,
  FLIPPER_UPPER,
  LIGHTHOUSE,
  SLING_MIDDLE,
  SLING_NORMAL_DEG,
  WRECK_HOLE,
} from "./playfield-plan.ts";
import { mirroredXy, type Xy } from "./shape.ts";

/** Where a flipper's plate is, for its pivot and the direction in which its coil lies. */
const coilBeyond = ([x, y]: Xy, deg: number): Xy => {
  const at = polar(deg, FLIPPER_PIVOT_MM);
  return [x + at.xMm, y + at.yMm];
};

const slingAt = fromFrame(
  { xMm: SLING_MIDDLE[0], yMm: SLING_MIDDLE[1], rotationDeg: SLING_NORMAL_DEG },
  { xMm: -SLING_OFFSET_MM.throw, yMm: -SLING_OFFSET_MM.along },
);
const slingPlate: Xy = [Math.round(slingAt.xMm * 10) / 10, Math.round(slingAt.yMm * 10) / 10];

/**
 * Every mechanism on the playfield. The knocker, fog bell, storm shaker and tide clock have their types in
 * `mechanism-types.ts`; they stand in the cabinet and the backbox and are placed there.
 */
const PLACED: readonly (readonly [
  id: string,
  type: string,
  label: string,
  label_zh: string,
  x: number,
  y: number,
  rotation?: number,
  side?: "top",
])[] = [
  ["mech.flip-left", "mt.flipper-left", "Left flipper", "左拨板", ...coilBeyond(FLIPPER_LEFT, 180)],
  ["mech.flip-right", "mt.flipper-right", "Right flipper", "右拨板", ...coilBeyond(FLIPPER_RIGHT, 0)],
  [
    "mech.flip-upper",
    "mt.flipper-upper",
    "Upper right flipper",
    "右上拨板",
    ...coilBeyond(FLIPPER_UPPER, 90),
    90,
  ],
  ["mech.sling-left", "mt.slingshot-left", "Left slingshot", "左弹弓", ...slingPlate, SLING_NORMAL_DEG],
  [
    "mech.sling-right",
    "mt.slingshot-right",
    "Right slingshot",
    "右弹弓",
    ...mirroredXy(slingPlate),
    180 - SLING_NORMAL_DEG,
  ],
  ["mech.bumper-left", "mt.bumper", "Left pop bumper", "左弹跳柱", ...BUMPERS[0]],
  ["mech.bumper-right", "mt.bumper", "Right pop bumper", "右弹跳柱", ...BUMPERS[1]],
  ["mech.bumper-low", "mt.bumper", "Lower pop bumper", "下弹跳柱", ...BUMPERS[2]],
  ["mech.drops", "mt.drop-bank", "Breakwater drop targets", "防波堤落靶", 240, 660],
  ["mech.drop-cave", "mt.drop-single", "Cave drop target", "海蚀洞落靶", 314, 614],
  ["mech.saucer", "mt.saucer", "Sea cave saucer", "海蚀洞球碗", 314, 683],
  ["mech.wreck", "mt.up-kicker", "Wreck up-kicker", "沉船上踢", ...WRECK_HOLE],
  ["mech.trough", "mt.trough", "Ball trough", "收球槽", 325, 80],
  ["mech.plunger", "mt.plunger", "Auto-plunger", "自动发球器", 486, 58],
  ["mech.diverter", "mt.diverter", "Ramp diverter", "坡道分道器", 366, 830],
  ["mech.magnet", "mt.magnet", "Whirlpool magnet", "漩涡磁铁", 235, 566],
  ["mech.lock", "mt.lock", "Harbour lock", "港湾锁球", 470, 1012],
  ["mech.gate-left", "mt.gate", "Left orbit gate", "左环道闸门", 74, 745],
  ["mech.gate-right", "mt.gate", "Right orbit gate", "右环道闸门", 402, 656, 180],
  ["mech.up-post", "mt.up-post", "Drain up-post", "落球口升降柱", 235, 140],
  ["mech.kickback", "mt.kickback", "Left kickback", "左回踢器", 31, 160],
  ["mech.lifter", "mt.lifter", "Right ramp flap lifter", "右坡道翻板", 363, 638],
  ["mech.beacon", "mt.beacon", "Lighthouse beacon", "灯塔", ...LIGHTHOUSE],
  ["mech.ship", "mt.ship", "Ship in the storm", "风暴之船", 46, 1020],
  ["mech.spinner", "mt.spinner", "Wind spinner", "风向旋转片", 66, 672, 0, "top"],
];

export const mechanisms: Topic = {
  tables: {
    mechanisms: rows(
      "mechanisms",
      PLACED.map(([id, type, label, label_zh, x, y, rotation, side]) => ({
        id,
        type,
        label,
        label_zh,
        ...onPlayfield(side ?? "under", x, y, rotation),
      })),
    ),
  },
};
