import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

type Child = readonly [
  child: string,
  type: string,
  label: string,
  label_zh: string,
  x: number,
  y: number,
  z: number,
  rotation?: number,
];

interface Kind {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
  readonly size: readonly [width: number, depth: number, height: number, reach: number];
  readonly children: readonly Child[];
  readonly cycle_test: string;
}

const KINDS: readonly Kind[] = [
  ...(["left", "right", "upper"] as const).map(
    (hand): Kind => ({
      id: `mt.flipper-${hand}`,
      label: { left: "Flipper, left hand", right: "Flipper, right hand", upper: "Flipper, upper right" }[
        hand
      ],
      label_zh: { left: "左拨板机构", right: "右拨板机构", upper: "右上拨板机构" }[hand],
      size: [134, 60, 62, 30],
      children: [
        ["coil", "dt.coil-flipper", "coil", "线圈", hand === "left" ? -72 : 72, 0, 8, 90],
        ["eos", "dt.eos", "end-of-stroke switch", "行程末端开关", hand === "left" ? -16 : 16, 22, 10, 90],
      ],
      cycle_test: "500 strokes; end-of-stroke gap 2 mm at rest, opens in the last 3 mm; bat free, no rub.",
    }),
  ),
  {
    id: "mt.slingshot",
    label: "Slingshot kicker",
    label_zh: "弹弓机构",
    size: [56, 80, 52, 26],
    children: [["coil", "dt.coil-sling", "coil", "线圈", 0, -10, 8]],
    cycle_test: "200 strokes; arm returns by itself and does not touch the slot.",
  },
  {
    id: "mt.bumper",
    label: "Pop bumper",
    label_zh: "弹跳柱",
    size: [64, 64, 88, 66],
    children: [
      ["coil", "dt.coil-bumper", "coil", "线圈", 0, 0, 24],
      ["spoon", "dt.spoon", "spoon switch", "勺形开关", 24, 0, 4],
      ["lamp", "dt.lamp-bumper", "lamp", "灯", 0, 0, -60],
    ],
    cycle_test: "200 strokes; skirt tilts the spoon from all sides; ring clears the playfield by 1 mm.",
  },
  {
    id: "mt.drop-bank",
    label: "Drop target bank, four targets",
    label_zh: "四联落靶",
    size: [112, 58, 112, 40],
    children: [
      ["reset", "dt.coil-reset", "reset coil", "复位线圈", 0, 4, 66],
      ["trip", "dt.coil-trip", "trip coil", "释放线圈", 40, 14, 30],
      ["t1", "dt.drop-switch", "target 1 switch", "一号靶开关", -34.5, 12, 60],
      ["t2", "dt.drop-switch", "target 2 switch", "二号靶开关", -11.5, 12, 60],
      ["t3", "dt.drop-switch", "target 3 switch", "三号靶开关", 11.5, 12, 60],
      ["t4", "dt.drop-switch", "target 4 switch", "四号靶开关", 34.5, 12, 60],
      ["home", "dt.micro", "reset bar home switch", "复位杆原位开关", -40, -16, 80],
    ],
    cycle_test: "200 resets; each target drops alone when hit, all stand after reset.",
  },
  {
    id: "mt.drop-single",
    label: "Drop target, single, with trip",
    label_zh: "单落靶",
    size: [44, 58, 108, 40],
    children: [
      ["reset", "dt.coil-reset", "reset coil", "复位线圈", 0, 2, 62],
      ["trip", "dt.coil-trip", "trip coil", "释放线圈", 0, 12, 30],
      ["down", "dt.drop-switch", "target down switch", "落靶开关", 15, 12, 60],
    ],
    cycle_test: "200 resets and 200 trips.",
  },
  {
    id: "mt.saucer",
    label: "Kick-out saucer",
    label_zh: "踢出球碗",
    size: [48, 92, 66, 4],
    children: [
      ["coil", "dt.coil-kick", "coil", "线圈", 0, 14, 16],
      ["ball", "dt.micro", "ball in saucer switch", "球到位开关", 14, -28, 14],
    ],
    cycle_test: "50 balls kicked out to the same mark.",
  },
  {
    id: "mt.up-kicker",
    label: "Vertical up-kicker",
    label_zh: "垂直上踢机构",
    size: [56, 66, 118, 80],
    children: [
      ["coil", "dt.coil-vuk", "coil", "线圈", 0, 0, 50],
      ["ball", "dt.micro", "ball ready switch", "球到位开关", 16, 20, 34],
    ],
    cycle_test: "50 balls lifted, none falls back.",
  },
  {
    id: "mt.trough",
    label: "Four-ball trough with eject",
    label_zh: "四球收球槽",
    size: [286, 62, 112, 0],
    children: [
      ["coil", "dt.coil-vuk", "eject coil", "发球线圈", 116, 0, 46],
      ["exit", "dt.micro", "exit switch", "出口开关", 116, 22, 10],
      ["drain", "dt.micro", "drain switch", "落球口开关", -122, 22, 20],
    ],
    cycle_test: "50 single balls ejected, never two; four balls settle against the stop.",
  },
  {
    id: "mt.plunger",
    label: "Auto-plunger",
    label_zh: "自动发球器",
    size: [50, 116, 58, 24],
    children: [
      ["coil", "dt.coil-plunger", "coil", "线圈", 0, -16, 8],
      ["home", "dt.micro", "fork home switch", "拨叉原位开关", 14, 46, 10],
    ],
    cycle_test: "50 balls reach the top of the arch.",
  },
  {
    id: "mt.diverter",
    label: "Ramp diverter",
    label_zh: "坡道分道器",
    size: [50, 84, 52, 96],
    children: [
      ["coil", "dt.coil-diverter", "coil", "线圈", 0, -12, 8],
      ["position", "dt.micro", "position switch", "位置开关", 12, 34, 10],
    ],
    cycle_test: "200 throws; blade stops against rubber on both sides.",
  },
  {
    id: "mt.magnet",
    label: "Playfield magnet",
    label_zh: "台面电磁铁",
    size: [66, 66, 60, 0],
    children: [["coil", "dt.coil-magnet", "coil", "线圈", 0, 0, 4]],
    cycle_test: "10 grabs of 3 s; core flush to 0.1 mm.",
  },
  {
    id: "mt.lock",
    label: "Three-ball ramp lock",
    label_zh: "三球锁球器",
    size: [120, 44, 46, 0],
    children: [
      ["coil", "dt.coil-gate", "release coil", "释放线圈", 40, 0, 4, 90],
      ["b1", "dt.gate-micro", "ball 1 switch", "一号球开关", -42, 12, 10],
      ["b2", "dt.gate-micro", "ball 2 switch", "二号球开关", -15, 12, 10],
      ["b3", "dt.gate-micro", "ball 3 switch", "三号球开关", 12, 12, 10],
    ],
    cycle_test: "50 releases, one ball each.",
  },
  {
    id: "mt.gate",
    label: "Controlled one-way gate",
    label_zh: "受控单向闸门",
    size: [36, 50, 40, 34],
    children: [
      ["coil", "dt.coil-gate", "coil", "线圈", 0, -4, 6],
      ["pass", "dt.gate-micro", "ball passes switch", "过球开关", 6, 18, 8],
    ],
    cycle_test: "200 throws; wire swings free.",
  },
  {
    id: "mt.up-post",
    label: "Up-post",
    label_zh: "升降柱",
    size: [40, 44, 72, 26],
    children: [
      ["coil", "dt.coil-post", "coil", "线圈", 0, 0, 12],
      ["up", "dt.micro", "post up switch", "升起开关", 10, 16, 50],
    ],
    cycle_test: "200 strokes; flush when down.",
  },
  {
    id: "mt.kickback",
    label: "Outlane kickback",
    label_zh: "外道回踢器",
    size: [42, 112, 52, 20],
    children: [
      ["coil", "dt.coil-kick", "coil", "线圈", 0, -20, 8],
      ["home", "dt.micro", "home switch", "原位开关", 10, 44, 10],
    ],
    cycle_test: "50 balls kicked back past the slingshot.",
  },
  {
    id: "mt.lifter",
    label: "Ramp flap lifter",
    label_zh: "坡道翻板提升器",
    size: [44, 76, 56, 40],
    children: [
      ["coil", "dt.coil-diverter", "coil", "线圈", 0, -8, 8],
      ["up", "dt.micro", "flap up switch", "翻板升起开关", 10, 30, 10],
    ],
    cycle_test: "200 lifts; flap lies flat within 0.5 mm.",
  },
  {
    id: "mt.beacon",
    label: "Revolving beacon",
    label_zh: "旋转灯塔",
    size: [76, 76, 84, 108],
    children: [
      ["motor", "dt.motor-gear", "motor", "电机", 0, 0, 10],
      ["home", "dt.micro", "home switch", "原位开关", 26, 20, 8],
      ["lamp-a", "dt.lamp-beacon", "beam lamp A", "光束灯 A", -9, 0, -104],
      ["lamp-b", "dt.lamp-beacon", "beam lamp B", "光束灯 B", 9, 0, -104],
    ],
    cycle_test: "30 minutes running; home found within 2 degrees.",
  },
  {
    id: "mt.ship",
    label: "Rocking ship",
    label_zh: "摇晃的船",
    size: [64, 84, 66, 90],
    children: [
      ["motor", "dt.motor-crank", "motor", "电机", 0, -8, 8],
      ["port", "dt.micro", "port limit switch", "左舷限位开关", -18, 32, 8],
      ["starboard", "dt.micro", "starboard limit switch", "右舷限位开关", 12, 32, 8],
    ],
    cycle_test: "30 minutes rocking.",
  },
  {
    id: "mt.spinner",
    label: "Spinner",
    label_zh: "旋转片",
    size: [46, 16, 52, 0],
    children: [["switch", "dt.gate-micro", "switch", "开关", 12, 0, 40]],
    cycle_test: "Spins for 8 s from one flick; every half turn counts.",
  },
  {
    id: "mt.knocker",
    label: "Knocker",
    label_zh: "敲击器",
    size: [44, 112, 46, 0],
    children: [["coil", "dt.coil-knocker", "coil", "线圈", 0, -18, 4]],
    cycle_test: "50 knocks.",
  },
  {
    id: "mt.bell",
    label: "Fog bell",
    label_zh: "雾钟",
    size: [70, 120, 60, 0],
    children: [["coil", "dt.coil-knocker", "coil", "线圈", 0, -24, 4]],
    cycle_test: "50 strokes, clear tone.",
  },
  {
    id: "mt.shaker",
    label: "Storm shaker",
    label_zh: "风暴振动器",
    size: [76, 120, 78, 0],
    children: [["motor", "dt.motor-shaker", "motor", "电机", 0, 0, 10]],
    cycle_test: "5 minutes on and off each second.",
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
    cycle_test: "30 minutes running; home found within 2 degrees.",
  },
];

export const mechanismTypes: Topic = {
  tables: {
    mechanism_types: rows(
      "mechanism_types",
      KINDS.map(
        ({ id, label, label_zh, size, cycle_test }): Partial<BookRow<"mechanism_types">> => ({
          id,
          label,
          label_zh,
          width_mm: size[0],
          depth_mm: size[1],
          height_mm: size[2],
          reach_mm: size[3],
          cycle_test,
        }),
      ),
    ),
    mechanism_devices: rows(
      "mechanism_devices",
      KINDS.flatMap((kind) =>
        kind.children.map(([child, device_type, label, label_zh, x_mm, y_mm, z_mm, rotation_deg]) => ({
          mechanism_type: kind.id,
          child,
          label,
          label_zh,
          device_type,
          x_mm,
          y_mm,
          z_mm,
          rotation_deg: rotation_deg ?? 0,
        })),
      ),
    ),
  },
};
