import { onPlayfield, rows, type Topic } from "./author.ts";

type Placed = readonly [id: string, label: string, label_zh: string, x: number, y: number];

const CENTRE = { x: 235, y: 395 };
const round = (value: number) => Math.round(value * 2) / 2;
const polar = (radius: number, degrees: number) =>
  [
    round(CENTRE.x + radius * Math.cos((degrees * Math.PI) / 180)),
    round(CENTRE.y + radius * Math.sin((degrees * Math.PI) / 180)),
  ] as const;

const ring = Array.from({ length: 16 }, (_, i): Placed => {
  const [x, y] = polar(72, 90 - i * 22.5);
  return [`lp.compass-${i + 1}`, `Compass point ${i + 1}`, `罗盘 ${i + 1}`, x, y];
});
const word = [..."tidewatch"].map((letter, i): Placed => {
  const [x, y] = polar(106, 150 - i * 15);
  return [`lp.word-${i + 1}`, `Letter ${letter.toUpperCase()}`, `字母 ${letter.toUpperCase()}`, x, y];
});
const bonus = Array.from({ length: 9 }, (_, i): Placed => {
  const [x, y] = i < 5 ? [187 + 24 * i, 290] : [199 + 24 * (i - 5), 262];
  return [`lp.bonus-${i + 1}`, `Bonus ${i + 1}`, `奖分 ${i + 1}`, x, y];
});

/** Lamps under inserts: each has its insert's cutout above it. */
export const INSERTS: readonly Placed[] = [
  ...ring,
  ...word,
  ...bonus,
  ["lp.multi-2", "Multiplier 2", "倍数二", 207, 395],
  ["lp.multi-3", "Multiplier 3", "倍数三", 235, 423],
  ["lp.multi-4", "Multiplier 4", "倍数四", 263, 395],
  ["lp.multi-5", "Multiplier 5", "倍数五", 235, 367],
  ["lp.jackpot", "Jackpot", "大奖", 235, 395],
  ["lp.again", "Shoot again", "再来一球", 235, 225],
  ["lp.outlane-left", "Left outlane", "左外道", 31, 375],
  ["lp.inlane-left", "Left inlane", "左内道", 73, 375],
  ["lp.inlane-right", "Right inlane", "右内道", 397, 375],
  ["lp.outlane-right", "Right outlane", "右外道", 439, 375],
  ["lp.top-lane-1", "Top lane 1", "顶部一号道", 200, 1005],
  ["lp.top-lane-2", "Top lane 2", "顶部二号道", 240, 1005],
  ["lp.top-lane-3", "Top lane 3", "顶部三号道", 280, 1005],
  ["lp.fog-1", "FOG target F", "雾靶 F", 44, 450],
  ["lp.fog-2", "FOG target O", "雾靶 O", 44, 485],
  ["lp.fog-3", "FOG target G", "雾靶 G", 44, 520],
  ["lp.drop-1", "Drop target 1", "一号落靶", 205.5, 618],
  ["lp.drop-2", "Drop target 2", "二号落靶", 228.5, 618],
  ["lp.drop-3", "Drop target 3", "三号落靶", 251.5, 618],
  ["lp.drop-4", "Drop target 4", "四号落靶", 274.5, 618],
  ["lp.orbit-left-1", "Left orbit arrow 1", "左环道箭头一", 66, 470],
  ["lp.orbit-left-2", "Left orbit arrow 2", "左环道箭头二", 58, 500],
  ["lp.orbit-left-3", "Left orbit arrow 3", "左环道箭头三", 50, 550],
  ["lp.ramp-left-1", "Left ramp arrow 1", "左坡道箭头一", 130, 500],
  ["lp.ramp-left-2", "Left ramp arrow 2", "左坡道箭头二", 124, 530],
  ["lp.ramp-left-3", "Left ramp arrow 3", "左坡道箭头三", 118, 560],
  ["lp.magnet", "Whirlpool", "漩涡", 190, 572],
  ["lp.cave-1", "Cave arrow 1", "海蚀洞箭头一", 290, 530],
  ["lp.cave-2", "Cave arrow 2", "海蚀洞箭头二", 298, 560],
  ["lp.cave-3", "Cave arrow 3", "海蚀洞箭头三", 306, 590],
  ["lp.ramp-right-1", "Right ramp arrow 1", "右坡道箭头一", 345, 505],
  ["lp.ramp-right-2", "Right ramp arrow 2", "右坡道箭头二", 354, 535],
  ["lp.ramp-right-3", "Right ramp arrow 3", "右坡道箭头三", 363, 565],
  ["lp.orbit-right-1", "Right orbit arrow 1", "右环道箭头一", 385, 520],
  ["lp.orbit-right-2", "Right orbit arrow 2", "右环道箭头二", 395, 550],
  ["lp.anchor-left", "Left anchor", "左锚", 78, 565],
  ["lp.anchor-right", "Right anchor", "右锚", 395, 580],
  ["lp.spinner", "Spinner", "旋转片", 31, 590],
  ["lp.lock-1", "Harbour lock 1", "锁球一", 100, 520],
  ["lp.lock-2", "Harbour lock 2", "锁球二", 92, 545],
  ["lp.lock-3", "Harbour lock 3", "锁球三", 160, 570],
  ["lp.wreck", "Wreck", "沉船", 60, 860],
  ["lp.kickback", "Kickback", "回踢", 31, 270],
  ["lp.cave-drop", "Cave target", "洞口落靶", 330, 600],
];

/** High-power LEDs. */
const FLASHERS: readonly Placed[] = [
  ["lp.flash-left-sling", "Flasher, left slingshot", "闪光灯 左弹弓", 116, 330],
  ["lp.flash-right-sling", "Flasher, right slingshot", "闪光灯 右弹弓", 354, 330],
  ["lp.flash-ramp-left", "Flasher, left ramp", "闪光灯 左坡道", 72, 700],
  ["lp.flash-ramp-right", "Flasher, right ramp", "闪光灯 右坡道", 340, 720],
  ["lp.flash-lighthouse", "Flasher, lighthouse", "闪光灯 灯塔", 200, 700],
  ["lp.flash-ship", "Flasher, ship", "闪光灯 船", 90, 1030],
  ["lp.flash-bumpers", "Flasher, bumpers", "闪光灯 弹跳柱", 240, 900],
  ["lp.flash-corner", "Flasher, right rear corner", "闪光灯 右后角", 470, 1030],
];

/** General light, seen through plastics and along the walls. */
const GENERAL: readonly (readonly [x: number, y: number])[] = Array.from({ length: 39 }, (_, i) => [
  40 + (i % 8) * 56,
  110 + Math.floor(i / 8) * 200,
]);

const general = GENERAL.map(
  ([x, y], i): Placed => [`lp.gi-${i + 1}`, `General light ${i + 1}`, `照明灯 ${i + 1}`, x, y],
);

const place = (type: string, list: readonly Placed[], first: number) =>
  list.map(([id, label, label_zh, x, y], i) => ({
    id,
    type,
    label,
    label_zh,
    ...onPlayfield("under", x, y),
    number: first + i,
  }));

export const playfieldLamps: Topic = {
  tables: {
    devices: rows("devices", [
      ...place("dt.lamp-insert", INSERTS, 1),
      ...place("dt.flasher", FLASHERS, 1 + INSERTS.length),
      ...place("dt.lamp-gi", general, 1 + INSERTS.length + FLASHERS.length),
    ]),
  },
};
