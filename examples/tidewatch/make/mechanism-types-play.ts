import { type Child, corners, type MechanismKind } from "./mechanism-kind.ts";

/** Panel thickness: what stands on the playing surface has this much and its own height, negated, as its z. */
const WOOD_MM = 13;
const above = (heightMm: number) => -(WOOD_MM + heightMm);

/** From the middle of a flipper's plate to its pivot; the coil lies beyond, on the side of `away`. */
export const FLIPPER_PIVOT_MM = 32;
const flipperPlate = [-60, -30, 60, 30] as const;

/** `bat` is where the bat points at rest, in the mechanism's frame, measured from its y. */
const flipper = (id: string, label: string, label_zh: string, away: 1 | -1, bat: number): MechanismKind => ({
  id,
  label,
  label_zh,
  size: [120, 60, 62, 27],
  children: [
    ["coil", "dt.coil-flipper", "coil", "线圈", away * 24, 0, 8, away * 90],
    ["eos", "dt.eos", "end-of-stroke switch", "行程末端开关", away * -30, 22, 10, 90],
    ["bat", "dt.bat", "bat", "拨板", away * -FLIPPER_PIVOT_MM, 0, above(3), bat],
  ],
  screws: corners(flipperPlate, 6),
  cycle_test: "500 strokes; end-of-stroke gap 2 mm at rest, closes in the last 3 mm; bat free, no rub.",
  cycle_test_zh: "循环 500 次；静止时行程末端间隙 2 mm，末 3 mm 内闭合；拨板自由无擦碰。",
});

/** From the middle of a slingshot's plate to the middle of its rubber: along its throw, and along the rubber. */
export const SLING_OFFSET_MM = { throw: 30, along: 22 } as const;
const slingPlate = [-18, -36, 18, 36] as const;

/** Slingshots are handed: the coil lies towards the player. In the frame, x is the way that it throws. */
const slingshot = (id: string, label: string, label_zh: string, near: 1 | -1): MechanismKind => ({
  id,
  label,
  label_zh,
  size: [36, 72, 52, 26],
  children: [["coil", "dt.coil-sling", "coil", "线圈", 0, near * 8, 8]],
  // The screw beside the arm's slot keeps wood around it.
  screws: corners(slingPlate).map(([x, y]) => (x > 0 && y * near < 0 ? [12.4, y] : [x, y])),
  cycle_test: "200 strokes; arm returns by itself and does not touch the slot.",
  cycle_test_zh: "循环 200 次；臂自行复位，不碰槽边。",
});

const dropSwitch = (n: number, x: number): Child => [
  `t${n}`,
  "dt.drop-switch",
  `target ${n} switch`,
  `${n} 号靶开关`,
  x,
  2,
  84,
];
const dropFace = (n: number, x: number): Child => [
  `face-${n}`,
  "dt.drop-face",
  `target ${n}`,
  `${n} 号靶片`,
  x,
  -17.5,
  above(0),
];
const BANK_X: readonly number[] = [-34.5, -11.5, 11.5, 34.5];

/** Mechanisms that the ball meets. */
export const PLAY_MECHANISMS: readonly MechanismKind[] = [
  flipper("mt.flipper-left", "Flipper, left hand", "左拨板机构", -1, 238),
  flipper("mt.flipper-right", "Flipper, right hand", "右拨板机构", 1, 122),
  flipper("mt.flipper-upper", "Flipper, upper right", "右上拨板机构", 1, 32),
  slingshot("mt.slingshot-left", "Slingshot kicker, left", "左弹弓机构", -1),
  slingshot("mt.slingshot-right", "Slingshot kicker, right", "右弹弓机构", 1),
  {
    id: "mt.bumper",
    label: "Pop bumper",
    label_zh: "弹跳柱",
    size: [64, 64, 88, 64],
    children: [
      ["coil", "dt.coil-bumper", "coil", "线圈", 0, 0, 26],
      ["spoon", "dt.spoon", "spoon switch", "勺形开关", 25, 0, 2],
      ["body", "dt.bumper-body", "body", "柱身", 0, 0, above(0)],
      ["lamp", "dt.lamp-bumper", "lamp", "灯", 0, 0, above(50)],
      ["cap", "dt.bumper-cap", "cap", "顶盖", 0, 0, above(58)],
    ],
    screws: [
      [-26, -26],
      [26, -26],
      [26, 26],
      [-26, 26],
    ],
    cycle_test: "200 strokes; skirt tilts the spoon from all sides; ring clears the playfield by 1 mm.",
    cycle_test_zh: "循环 200 次；裙座从各方向触动勺形开关；环离台面 1 mm。",
  },
  {
    id: "mt.drop-bank",
    label: "Drop target bank, four targets",
    label_zh: "四联落靶",
    size: [100, 50, 112, 38],
    children: [
      ["reset", "dt.coil-reset", "reset coil", "复位线圈", -12, 4, 20, 90],
      ["trip", "dt.coil-trip", "trip coil", "释放线圈", 36, 6, 20],
      ...BANK_X.map((x, i) => dropSwitch(i + 1, x)),
      ["home", "dt.micro", "reset bar home switch", "复位杆原位开关", -38, -12, 62],
      ...BANK_X.map((x, i) => dropFace(i + 1, x)),
    ],
    screws: [
      [-46, 20],
      [-16, 20],
      [16, 20],
      [46, 20],
      [-46, 0],
      [46, -6],
    ],
    cycle_test: "200 resets; each target drops alone when hit, all stand after reset.",
    cycle_test_zh: "复位 200 次；各靶单独击落，复位后全部立起。",
  },
  {
    id: "mt.drop-single",
    label: "Drop target, single, with trip",
    label_zh: "单落靶",
    size: [44, 44, 108, 38],
    children: [
      ["reset", "dt.coil-reset-small", "reset coil", "复位线圈", 0, -4, 54],
      ["trip", "dt.coil-trip", "trip coil", "释放线圈", 6, -6, 20],
      ["down", "dt.drop-switch", "target down switch", "落靶开关", -14, 8, 30],
      ["face", "dt.drop-face", "target", "靶片", 0, 16.5, above(0)],
    ],
    screws: [
      [-18, -10],
      [17, -17],
      [18, 4],
    ],
    cycle_test: "200 resets and 200 trips.",
    cycle_test_zh: "复位 200 次并释放 200 次。",
  },
  {
    id: "mt.saucer",
    label: "Kick-out saucer",
    label_zh: "踢出球碗",
    size: [40, 62, 66, 0],
    children: [
      ["coil", "dt.coil-kick", "coil", "线圈", 0, 3, 28],
      ["ball", "dt.micro", "ball in saucer switch", "球到位开关", 9, -24, 12],
    ],
    screws: [
      [-17, 12],
      [17, 12],
      [17, 28],
      [-17, 28],
    ],
    cycle_test: "50 balls kicked out to the same mark.",
    cycle_test_zh: "踢出 50 球，均落在同一标记。",
  },
  {
    id: "mt.up-kicker",
    label: "Vertical up-kicker",
    label_zh: "垂直上踢机构",
    size: [56, 66, 118, 0],
    children: [
      ["coil", "dt.coil-vuk", "coil", "线圈", 0, 0, 50],
      ["ball", "dt.micro", "ball ready switch", "球到位开关", 16, 26, 34],
    ],
    screws: [
      [-23, -28],
      [23, -28],
      [23, 11],
      [-23, 28],
    ],
    cycle_test: "50 balls lifted, none falls back.",
    cycle_test_zh: "顶起 50 球，无一回落。",
  },
  {
    id: "mt.trough",
    label: "Four-ball trough with eject",
    label_zh: "四球收球槽",
    size: [270, 62, 112, 0],
    children: [
      ["coil", "dt.coil-vuk", "eject coil", "发球线圈", 112, 0, 46],
      ["exit", "dt.micro", "exit switch", "出口开关", 88, 23, 10],
      ["drain", "dt.micro", "drain switch", "落球口开关", -122, 23, 20],
    ],
    screws: [
      [-128, -24],
      [-106, 26],
      [-45, -26],
      [-45, 26],
      [40, -26],
      [40, 26],
      [96, -26],
      [70, 26],
    ],
    cycle_test: "50 single balls ejected, never two; four balls settle against the stop.",
    cycle_test_zh: "单球发射 50 次，绝不出双球；四球均靠挡块停稳。",
  },
  {
    id: "mt.plunger",
    label: "Auto-plunger",
    label_zh: "自动发球器",
    size: [44, 112, 58, 24],
    children: [
      ["coil", "dt.coil-plunger", "coil", "线圈", 0, -18, 8],
      ["home", "dt.micro", "fork home switch", "拨叉原位开关", 10, 46, 10],
      ["fork", "dt.plunger-tip", "fork", "拨叉", 0, -22, above(0)],
    ],
    screws: [
      [-17, -51],
      [17, -51],
      [-17, 15],
      [17, 15],
      [-12, 50],
    ],
    cycle_test: "50 balls reach the top of the arch.",
    cycle_test_zh: "50 球均到达顶部弧轨。",
  },
  {
    id: "mt.magnet",
    label: "Playfield magnet",
    label_zh: "台面电磁铁",
    size: [66, 66, 60, 0],
    children: [["coil", "dt.coil-magnet", "coil", "线圈", 0, 0, 4]],
    screws: [
      [-28, -24],
      [28, -24],
      [28, 28],
      [-28, 28],
    ],
    cycle_test: "10 grabs of 3 s; core flush to 0.1 mm.",
    cycle_test_zh: "吸球 10 次各 3 秒；铁芯与台面平齐 0.1 mm。",
  },
  {
    id: "mt.up-post",
    label: "Up-post",
    label_zh: "升降柱",
    size: [40, 44, 78, 0],
    children: [
      ["coil", "dt.coil-post", "coil", "线圈", 0, 0, 12],
      ["up", "dt.micro", "post up switch", "升起开关", 8, 15, 66],
    ],
    screws: [
      [-15, -17],
      [15, -17],
      [-15, 17],
    ],
    cycle_test: "200 strokes; flush when down.",
    cycle_test_zh: "循环 200 次；落下时平齐。",
  },
  {
    id: "mt.kickback",
    label: "Outlane kickback",
    label_zh: "外道回踢器",
    size: [42, 112, 52, 0],
    children: [
      ["coil", "dt.coil-kick", "coil", "线圈", 0, -22, 8],
      ["home", "dt.micro", "home switch", "原位开关", 8, 38, 10],
    ],
    screws: [
      [-16, -51],
      [16, -51],
      [16, 22],
      [-16, 35],
    ],
    cycle_test: "50 balls kicked back past the slingshot.",
    cycle_test_zh: "踢回 50 球，均越过弹弓。",
  },
  {
    id: "mt.spinner",
    label: "Spinner",
    label_zh: "旋转片",
    size: [12, 20, 56, 0],
    children: [
      ["switch", "dt.gate-micro", "switch", "开关", 0, 0, 40],
      ["plate", "dt.swing-plate", "plate", "旋转片", -32, 0, 8],
    ],
    screws: [
      [0, -7, "ft.wood-35x12", 1.5],
      [0, 7, "ft.wood-35x12", 1.5],
    ],
    cycle_test: "Spins for 8 s from one flick; every half turn counts.",
    cycle_test_zh: "一拨可转 8 秒；每半圈计数。",
  },
];
