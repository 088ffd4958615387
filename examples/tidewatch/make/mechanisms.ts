import { onPlayfield, rows, type Topic } from "./author.ts";

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
  ["mech.flip-left", "mt.flipper-left", "Left flipper", "左拨板", 151, 185],
  ["mech.flip-right", "mt.flipper-right", "Right flipper", "右拨板", 319, 185],
  ["mech.flip-upper", "mt.flipper-upper", "Upper right flipper", "右上拨板", 436, 480, 90],
  ["mech.sling-left", "mt.slingshot", "Left slingshot", "左弹弓", 112, 312],
  ["mech.sling-right", "mt.slingshot", "Right slingshot", "右弹弓", 358, 312],
  ["mech.bumper-left", "mt.bumper", "Left pop bumper", "左弹跳柱", 170, 905],
  ["mech.bumper-right", "mt.bumper", "Right pop bumper", "右弹跳柱", 310, 905],
  ["mech.bumper-low", "mt.bumper", "Lower pop bumper", "下弹跳柱", 240, 822],
  ["mech.drops", "mt.drop-bank", "Breakwater drop targets", "防波堤落靶", 240, 664],
  ["mech.drop-cave", "mt.drop-single", "Cave drop target", "海蚀洞落靶", 316, 628],
  ["mech.saucer", "mt.saucer", "Sea cave saucer", "海蚀洞球碗", 316, 690],
  ["mech.wreck", "mt.up-kicker", "Wreck up-kicker", "沉船上踢", 92, 805],
  ["mech.trough", "mt.trough", "Ball trough", "收球槽", 325, 80],
  ["mech.plunger", "mt.plunger", "Auto-plunger", "自动发球器", 486, 60],
  ["mech.diverter", "mt.diverter", "Ramp diverter", "坡道分道器", 372, 850],
  ["mech.magnet", "mt.magnet", "Whirlpool magnet", "漩涡磁铁", 235, 572],
  ["mech.lock", "mt.lock", "Harbour lock", "港湾锁球", 250, 1030, 0, "top"],
  ["mech.gate-left", "mt.gate", "Left orbit gate", "左环道闸门", 60, 880],
  ["mech.gate-right", "mt.gate", "Right orbit gate", "右环道闸门", 440, 830],
  ["mech.up-post", "mt.up-post", "Drain up-post", "落球口升降柱", 235, 140],
  ["mech.kickback", "mt.kickback", "Left kickback", "左回踢器", 31, 160],
  ["mech.lifter", "mt.lifter", "Right ramp flap lifter", "右坡道翻板", 372, 640],
  ["mech.beacon", "mt.beacon", "Lighthouse beacon", "灯塔", 240, 735],
  ["mech.ship", "mt.ship", "Ship in the storm", "风暴之船", 48, 1020],
  ["mech.spinner", "mt.spinner", "Wind spinner", "风向旋转片", 31, 640, 0, "top"],
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
