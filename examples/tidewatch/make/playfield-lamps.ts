import { polar } from "@pinwright/kernel";
import { onPlayfield, rows, type Topic } from "./author.ts";
import { DROP_X } from "./playfield-plan.ts";

/** `towards` is the direction in degrees in which the bracket reaches from the bulb to its screw. */
type Placed = readonly [id: string, label: string, label_zh: string, x: number, y: number, towards: number];

const CENTRE = { x: 235, y: 395 };
const half = (value: number) => Math.round(value * 2) / 2;
const round = (radius: number, deg: number): readonly [number, number] => {
  const at = polar(deg, radius);
  return [half(CENTRE.x + at.xMm), half(CENTRE.y + at.yMm)];
};

const ring = Array.from({ length: 16 }, (_, i): Placed => {
  const deg = 90 - i * 22.5;
  return [`lp.compass-${i + 1}`, `Compass point ${i + 1}`, `罗盘 ${i + 1}`, ...round(72, deg), deg];
});
const word = [..."TIDEWATCH"].map((letter, i): Placed => {
  const deg = 158 - i * 17;
  return [`lp.word-${i + 1}`, `Letter ${letter}`, `字母 ${letter}`, ...round(104, deg), deg];
});
const bonus = Array.from({ length: 9 }, (_, i): Placed => {
  const near = i < 5;
  const [x, y] = near ? [187 + 24 * i, 284] : [199 + 24 * (i - 5), 240];
  return [`lp.bonus-${i + 1}`, `Bonus ${i + 1}`, `奖分 ${i + 1}`, x, y, 270];
});
const drops = DROP_X.map(
  (x, i): Placed => [`lp.drop-${i + 1}`, `Drop target ${i + 1}`, `${i + 1} 号落靶`, x, 623, 270],
);

/** Lamps under inserts: each has its insert's cutout above it. */
const INSERTS: readonly Placed[] = [
  ...ring,
  ...word,
  ...bonus,
  ["lp.multi-2", "Multiplier 2", "倍数二", 203, 395, 180],
  ["lp.multi-3", "Multiplier 3", "倍数三", 235, 423, 90],
  ["lp.multi-4", "Multiplier 4", "倍数四", 267, 395, 0],
  ["lp.multi-5", "Multiplier 5", "倍数五", 235, 367, 270],
  ["lp.jackpot", "Jackpot", "大奖", 229, 395, 0],
  ["lp.again", "Shoot again", "再来一球", 235, 205, 270],
  ["lp.outlane-left", "Left outlane", "左外道", 29, 325, 270],
  ["lp.inlane-left", "Left inlane", "左内道", 73, 290, 270],
  ["lp.inlane-right", "Right inlane", "右内道", 397, 290, 270],
  ["lp.outlane-right", "Right outlane", "右外道", 441, 325, 270],
  ["lp.top-lane-1", "Top lane 1", "顶部一号道", 200, 1010, 90],
  ["lp.top-lane-2", "Top lane 2", "顶部二号道", 240, 1010, 90],
  ["lp.top-lane-3", "Top lane 3", "顶部三号道", 280, 1010, 90],
  ["lp.fog-1", "FOG target F", "雾靶 F", 44, 458, 0],
  ["lp.fog-2", "FOG target O", "雾靶 O", 44, 490, 0],
  ["lp.fog-3", "FOG target G", "雾靶 G", 44, 522, 0],
  ...drops,
  ["lp.orbit-left-1", "Left orbit arrow 1", "左环道箭头一", 78, 478, 20],
  ["lp.orbit-left-2", "Left orbit arrow 2", "左环道箭头二", 75, 504, 10],
  ["lp.orbit-left-3", "Left orbit arrow 3", "左环道箭头三", 46, 554, 0],
  ["lp.ramp-left-1", "Left ramp arrow 1", "左坡道箭头一", 134, 522, 0],
  ["lp.ramp-left-2", "Left ramp arrow 2", "左坡道箭头二", 126, 546, 180],
  ["lp.ramp-left-3", "Left ramp arrow 3", "左坡道箭头三", 119, 572, 180],
  ["lp.magnet", "Whirlpool", "漩涡", 186, 600, 180],
  ["lp.cave-1", "Cave arrow 1", "海蚀洞箭头一", 292, 516, 0],
  ["lp.cave-2", "Cave arrow 2", "海蚀洞箭头二", 299, 545, 0],
  ["lp.cave-3", "Cave arrow 3", "海蚀洞箭头三", 305, 574, 0],
  ["lp.ramp-right-1", "Right ramp arrow 1", "右坡道箭头一", 349, 505, 0],
  ["lp.ramp-right-2", "Right ramp arrow 2", "右坡道箭头二", 354, 535, 0],
  ["lp.ramp-right-3", "Right ramp arrow 3", "右坡道箭头三", 359, 565, 0],
  ["lp.orbit-right-1", "Right orbit arrow 1", "右环道箭头一", 388, 490, 90],
  ["lp.orbit-right-2", "Right orbit arrow 2", "右环道箭头二", 394, 522, 90],
  ["lp.anchor-left", "Left anchor", "左锚", 80, 560, 270],
  ["lp.anchor-right", "Right anchor", "右锚", 394, 572, 270],
  ["lp.spinner", "Spinner", "旋转片", 33, 680, 90],
  ["lp.lock-1", "Harbour lock 1", "锁球一", 398, 780, 0],
  ["lp.lock-2", "Harbour lock 2", "锁球二", 404, 806, 0],
  ["lp.lock-3", "Harbour lock 3", "锁球三", 410, 832, 0],
  ["lp.wreck", "Wreck", "沉船", 92, 856, 90],
  ["lp.kickback", "Kickback", "回踢", 29, 285, 270],
  ["lp.cave-drop", "Cave target", "洞口落靶", 284, 590, 270],
];

/** High-power LEDs under domes, where no ball comes, and under large inserts. */
const FLASHERS: readonly (readonly [...Placed, type: string])[] = [
  ["lp.flash-left-sling", "Flasher, left of the drain", "闪光灯 左下", 178, 234, 270, "dt.flasher-insert"],
  ["lp.flash-right-sling", "Flasher, right of the drain", "闪光灯 右下", 292, 234, 270, "dt.flasher-insert"],
  ["lp.flash-ramp-left", "Flasher, left ramp", "闪光灯 左坡道", 83, 702, 90, "dt.flasher"],
  [
    "lp.flash-ramp-right",
    "Flasher, behind the storm wall",
    "闪光灯 风暴墙后",
    350,
    765,
    90,
    "dt.flasher-insert",
  ],
  [
    "lp.flash-lighthouse",
    "Flasher, before the lighthouse",
    "闪光灯 灯塔前",
    168,
    690,
    90,
    "dt.flasher-insert",
  ],
  ["lp.flash-ship", "Flasher, ship", "闪光灯 船", 92, 1018, 90, "dt.flasher"],
  ["lp.flash-bumpers", "Flasher, between the bumpers", "闪光灯 弹跳柱间", 240, 890, 90, "dt.flasher-insert"],
  ["lp.flash-corner", "Flasher, right rear corner", "闪光灯 右后角", 428, 1016, 90, "dt.flasher"],
];

/** General light that shines up through the playfield where no ball comes: corners, islands, wings. */
const GENERAL_UNDER: readonly (readonly [x: number, y: number, towards: number])[] = [
  [20, 932, 270],
  [16, 890, 270],
  [116, 1026, 270],
  [494, 932, 270],
  [498, 890, 270],
  [398, 1026, 270],
  [117, 712, 180],
  [282.5, 712, 90],
  [352, 697, 270],
  [78, 655, 0],
  [46, 955, 180],
  [468, 955, 0],
];

/** General light on plastics and on the rear rail; the wires go down beside the posts. */
const GENERAL_TOP: readonly (readonly [x: number, y: number, z: number])[] = [
  [104, 388, 34],
  [106, 345, 34],
  [110, 300, 34],
  [366, 388, 34],
  [364, 345, 34],
  [360, 300, 34],
  [57, 650, 34],
  [57, 720, 34],
  [418, 640, 34],
  [235, 40, 36],
  [400, 60, 36],
  [60, 130, 36],
  [150, 60, 36],
  [330, 60, 36],
  [84, 1058, 56],
  [116, 1058, 56],
  [148, 1058, 56],
  [180, 1058, 56],
  [212, 1058, 56],
  [244, 1058, 56],
  [276, 1058, 56],
  [308, 1058, 56],
  [340, 1058, 56],
  [372, 1058, 56],
  [404, 1058, 56],
  [436, 1058, 56],
  [468, 1058, 56],
];

const lamp = (type: string, [id, label, label_zh, x, y, towards]: Placed, number: number) => ({
  id,
  type,
  label,
  label_zh,
  ...onPlayfield("under", x, y, (towards + 270) % 360),
  number,
});

const general = (n: number) => ({
  id: `lp.gi-${n}`,
  label: `General light ${n}`,
  label_zh: `照明灯 ${n}`,
  number: INSERTS.length + FLASHERS.length + n,
});

export const playfieldLamps: Topic = {
  tables: {
    devices: rows("devices", [
      ...INSERTS.map((placed, i) => lamp("dt.lamp-insert", placed, i + 1)),
      ...FLASHERS.map(([id, label, label_zh, x, y, towards, type], i) =>
        lamp(type, [id, label, label_zh, x, y, towards], INSERTS.length + i + 1),
      ),
      ...GENERAL_UNDER.map(([x, y, towards], i) => ({
        ...general(i + 1),
        type: "dt.lamp-gi",
        ...onPlayfield("under", x, y, (towards + 270) % 360),
      })),
      ...GENERAL_TOP.map(([x, y, z], i) => ({
        ...general(GENERAL_UNDER.length + i + 1),
        type: "dt.lamp-spot",
        ...onPlayfield("top", x, y),
        z_mm: z,
      })),
    ]),
  },
};
