import { corners, type MechanismKind } from "./mechanism-kind.ts";

const above = (heightMm: number) => -(13 + heightMm);

/** Mechanisms of ramps and gates, toys, and what knocks, rings and shakes in the cabinet and the backbox. */
export const SHOW_MECHANISMS: readonly MechanismKind[] = [
  {
    id: "mt.diverter",
    label: "Ramp diverter",
    label_zh: "坡道分道器",
    size: [44, 84, 52, 118],
    children: [
      ["coil", "dt.coil-diverter", "coil", "线圈", 0, -10, 8],
      ["position", "dt.micro", "position switch", "位置开关", 8, 32, 10],
      ["blade", "dt.blade", "blade", "分道片", 0, 26, above(92), -20],
    ],
    screws: [
      [-17, -37],
      [17, -37],
      [17, 18],
      [-17, 37],
    ],
    cycle_test: "200 throws; blade stops against rubber on both sides.",
  },
  {
    id: "mt.lock",
    label: "Three-ball ramp lock",
    label_zh: "三球锁球器",
    size: [44, 80, 46, 115],
    children: [
      ["coil", "dt.coil-gate", "release coil", "释放线圈", 0, -18, 4],
      ["b1", "dt.gate-micro", "ball 1 switch", "一号球开关", 8, -30, above(100)],
      ["b2", "dt.gate-micro", "ball 2 switch", "二号球开关", 8, -2, above(100)],
      ["b3", "dt.gate-micro", "ball 3 switch", "三号球开关", 8, 26, above(100)],
    ],
    screws: corners([-22, -40, 22, 40]),
    cycle_test: "50 releases, one ball each.",
  },
  {
    id: "mt.gate",
    label: "Controlled one-way gate",
    label_zh: "受控单向闸门",
    size: [36, 44, 40, 60],
    children: [
      ["coil", "dt.coil-gate", "coil", "线圈", 0, -6, 6],
      ["pass", "dt.gate-micro", "ball passes switch", "过球开关", 4, 15, 8],
      ["wire", "dt.swing-wire", "wire", "闸门线", -38, 0, above(28)],
    ],
    screws: [
      [-14.5, -18.5],
      [14.5, -18.5],
      [-14.5, 18.5],
    ],
    cycle_test: "200 throws; wire swings free.",
  },
  {
    id: "mt.lifter",
    label: "Ramp flap lifter",
    label_zh: "坡道翻板提升器",
    size: [40, 72, 56, 20],
    children: [
      ["coil", "dt.coil-diverter", "coil", "线圈", 0, -8, 8],
      ["up", "dt.micro", "flap up switch", "翻板升起开关", 8, 30, 10],
    ],
    screws: [
      [-15, -31],
      [15, -31],
      [15, 17],
      [-15, 31],
    ],
    cycle_test: "200 lifts; flap lies flat within 0.5 mm.",
  },
  {
    id: "mt.beacon",
    label: "Revolving beacon",
    label_zh: "旋转灯塔",
    size: [70, 70, 84, 108],
    children: [
      ["motor", "dt.motor-gear", "motor", "电机", -6, 4, 10],
      ["home", "dt.micro", "home switch", "原位开关", 24, -20, 8],
      ["tower", "dt.lighthouse", "tower", "塔身", 0, 0, above(0)],
      ["lantern", "dt.lantern", "lantern", "灯室", 0, 0, above(88)],
      ["lamp-a", "dt.lamp-beacon", "beam lamp A", "光束灯 A", -9, 0, above(90)],
      ["lamp-b", "dt.lamp-beacon", "beam lamp B", "光束灯 B", 9, 0, above(90)],
    ],
    screws: [
      [-29, -29],
      [8, -29],
      [29, 29],
      [-31, 29],
    ],
    cycle_test: "30 minutes running; home found within 2 degrees.",
  },
  {
    id: "mt.ship",
    label: "Rocking ship",
    label_zh: "摇晃的船",
    size: [64, 84, 66, 95],
    children: [
      ["motor", "dt.motor-crank", "motor", "电机", 0, -8, 8],
      ["port", "dt.micro", "port limit switch", "左舷限位开关", -18, 32, 8],
      ["starboard", "dt.micro", "starboard limit switch", "右舷限位开关", 12, 32, 8],
      ["model", "dt.ship", "ship", "船", -2, -6, above(20), 45],
    ],
    screws: [
      [-27, -37],
      [27, -37],
      [27, 22],
      [-27, 20],
    ],
    cycle_test: "30 minutes rocking.",
  },
  {
    id: "mt.knocker",
    label: "Knocker",
    label_zh: "敲击器",
    size: [44, 112, 46, 0],
    children: [["coil", "dt.coil-knocker", "coil", "线圈", 0, -18, 4]],
    screws: corners([-22, -56, 22, 56]),
    cycle_test: "50 knocks.",
  },
  {
    id: "mt.bell",
    label: "Fog bell",
    label_zh: "雾钟",
    size: [70, 120, 60, 0],
    children: [["coil", "dt.coil-knocker", "coil", "线圈", 0, -24, 4]],
    screws: corners([-35, -60, 35, 60]),
    cycle_test: "50 strokes, clear tone.",
  },
  {
    id: "mt.shaker",
    label: "Storm shaker",
    label_zh: "风暴振动器",
    size: [76, 120, 78, 0],
    children: [["motor", "dt.motor-shaker", "motor", "电机", 0, 0, 10]],
    screws: corners([-38, -60, 38, 60], 7),
    cycle_test: "5 minutes, on and off each second.",
  },
  {
    id: "mt.tide-clock",
    label: "Backbox tide clock",
    label_zh: "背箱潮汐钟",
    size: [90, 90, 60, 0],
    children: [
      ["motor", "dt.motor-gear", "motor", "电机", 0, 0, 4],
      ["home", "dt.micro", "home switch", "原位开关", 30, 28, 6],
    ],
    // The lamp panel is too thin for wood screws.
    screws: corners([-45, -45, 45, 45]).map(([x, y]) => [x, y, "ft.m4x16", 2, "ft.nut-m4"]),
    cycle_test: "30 minutes running; home found within 2 degrees.",
  },
];
