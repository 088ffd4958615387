import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import type { BoardTypeWritten } from "./board-kit.ts";
import { feetOf, type Rectangle, underPlayfield } from "./board-places.ts";
import { headBoardTypes } from "./electrics-head-boards.ts";
import { mechanismBoardTypes } from "./electrics-mechanism-boards.ts";
import { nodeBoardTypes } from "./electrics-node-boards.ts";
import { powerBoardTypes } from "./electrics-power-boards.ts";

export const boardTypes: readonly BoardTypeWritten[] = [
  ...nodeBoardTypes,
  ...mechanismBoardTypes,
  ...powerBoardTypes,
  ...headBoardTypes,
];

type Named = readonly [id: string, type: string, label: string, labelZh: string];
type Fixed = readonly [...Named, panel: string, x: number, y: number, rotation?: 0 | 90, side?: "under"];
type Near = readonly [...Named, x: number, y: number];

/** Boards of the cabinet and the backbox, by their lower left corner. */
const FIXED: readonly Fixed[] = [
  ["bd.mains", "mains", "Mains fuse board", "市电保险板", "cab.bottom", 215, 830],
  ["bd.interlock", "interlock", "Coil interlock board", "线圈联锁板", "cab.bottom", 100, 850],
  ["bd.dist48", "dist48", "Coil fuse board", "线圈保险板", "cab.bottom", 370, 720],
  ["bd.dist12", "dist12", "Lamp fuse board", "灯保险板", "cab.bottom", 370, 590],
  ["bd.distmotor", "distmotor", "Motor fuse board", "电机保险板", "cab.bottom", 225, 700],
  ["bd.distlogic", "distlogic", "Logic fuse board", "逻辑保险板", "cab.bottom", 90, 700],
  ["bd.starpoint", "starpoint", "Earth point board", "直流接地点板", "cab.bottom", 430, 890],
  ["bd.hub", "hub", "Bus hub", "总线集线板", "cab.bottom", 40, 580],
  ["bd.coil-cab", "coil4", "Cabinet coil board", "机柜线圈板", "cab.bottom", 240, 590],
  ["bd.motor-cab", "motor", "Shaker board", "振动电机板", "cab.bottom", 120, 470],
  ["bd.switch-cab", "switch16", "Cabinet switch board", "机柜开关板", "cab.bottom", 50, 260],
  ["bd.lamp-cab", "lamp4", "Cabinet lamp board", "机柜灯板", "cab.bottom", 50, 340],
  ["bd.volume", "volume", "Volume and headphone board", "音量与耳机板", "cab.front", 450, 100],
  ["bd.main", "main", "Main board", "主板", "bb.back", 40, 540],
  ["bd.netmaster", "netmaster", "Network master", "网络主控板", "bb.back", 290, 600],
  ["bd.audio", "audio", "Audio board", "音频板", "bb.back", 490, 570],
  ["bd.display", "display", "Display board", "显示控制板", "bb.back", 300, 440],
  ["bd.bbpower", "bbpower", "Backbox power board", "背箱电源板", "bb.back", 60, 120],
  ["bd.lamp-bb-1", "lamp16", "Backglass lamp board 1", "背玻璃灯板一", "bb.back", 260, 120],
  ["bd.lamp-bb-2", "lamp16", "Backglass lamp board 2", "背玻璃灯板二", "bb.back", 400, 120],
  ["bd.motor-bb", "motor", "Tide clock board", "潮汐钟板", "bb.back", 540, 120],
  ["bd.dot-left", "dot", "Dot panel, left half", "点阵屏左半", "bb.lamp", 68, 30, 0, "under"],
  ["bd.dot-right", "dot", "Dot panel, right half", "点阵屏右半", "bb.lamp", 334, 30, 0, "under"],
  ...Array.from({ length: 8 }, (_, i): Fixed => {
    const column = i % 2;
    return [
      `bd.strip-${i + 1}`,
      "strip",
      `Backlight strip ${i + 1}`,
      `背光灯条 ${i + 1}`,
      "bb.lamp",
      110 + 240 * column,
      280 + 90 * Math.floor(i / 2),
      0,
      "under",
    ];
  }),
  ["bd.trough-rx", "trough-rx", "Trough receiver board", "球槽接收板", "playfield", 236, 26, 0, "under"],
  ["bd.trough-tx", "trough-tx", "Trough emitter board", "球槽发射板", "playfield", 262, 115, 0, "under"],
];

/** Boards under the playfield and where they are wanted; the largest come first. */
const NEAR: readonly Near[] = [
  ["bd.coil-mid", "coil8", "Coil board, middle", "线圈板 中部", 180, 640],
  ["bd.lamp-1", "lamp16", "Lamp board, front left", "灯板 左前", 70, 290],
  ["bd.lamp-2", "lamp16", "Lamp board, front right", "灯板 右前", 400, 290],
  ["bd.lamp-3", "lamp16", "Lamp board, compass", "灯板 罗盘", 180, 400],
  ["bd.lamp-4", "lamp16", "Lamp board, letters", "灯板 字母", 290, 440],
  ["bd.lamp-5", "lamp16", "Lamp board, middle left", "灯板 左中", 90, 560],
  ["bd.lamp-6", "lamp16", "Lamp board, middle right", "灯板 右中", 350, 560],
  ["bd.lamp-7", "lamp16", "Lamp board, rear", "灯板 后部", 240, 960],
  ["bd.coil-front", "coil4", "Coil board, front", "线圈板 前部", 110, 120],
  ["bd.coil-rear", "coil4", "Coil board, rear", "线圈板 后部", 130, 850],
  ["bd.magnet", "magnet", "Magnet board", "电磁铁板", 235, 500],
  ["bd.beacon", "beacon", "Beacon board", "灯塔板", 160, 740],
  ["bd.switch-1", "switch16", "Switch board, front left", "开关板 左前", 90, 430],
  ["bd.switch-2", "switch16", "Switch board, front right", "开关板 右前", 400, 400],
  ["bd.switch-3", "switch16", "Switch board, middle left", "开关板 左中", 90, 670],
  ["bd.switch-4", "switch16", "Switch board, middle right", "开关板 右中", 400, 720],
  ["bd.switch-5", "switch16", "Switch board, rear", "开关板 后部", 330, 1000],
  ["bd.flip-left", "flipper", "Left flipper board", "左拨板驱动板", 130, 240],
  ["bd.flip-right", "flipper", "Right flipper board", "右拨板驱动板", 340, 240],
  ["bd.flip-upper", "flipper", "Upper flipper board", "右上拨板驱动板", 440, 590],
  ["bd.motor-ship", "motor", "Ship motor board", "船电机板", 110, 980],
  ["bd.sling-left", "sling", "Left slingshot board", "左弹弓驱动板", 50, 370],
  ["bd.sling-right", "sling", "Right slingshot board", "右弹弓驱动板", 440, 340],
  ["bd.bumper-left", "bumper", "Left pop bumper board", "左弹跳柱板", 100, 920],
  ["bd.bumper-right", "bumper", "Right pop bumper board", "右弹跳柱板", 380, 920],
  ["bd.bumper-low", "bumper", "Lower pop bumper board", "下弹跳柱板", 300, 820],
  ["bd.hall", "hall", "Magnetic sensor board", "磁传感器板", 290, 590],
  ["bd.opto-right", "opto", "Beam board, skill shot", "光束板 技巧球", 470, 640],
  ["bd.opto-left", "opto", "Beam board, wreck", "光束板 沉船", 90, 840],
];

/** Rear edge of the playfield, kept for the in-line connectors. */
const INLINE_ROW: Rectangle = { minX: 90, minY: 1036, maxX: 460, maxY: 1067 };
/** Room for the earth hub and for the trough's own boards. */
const KEPT_BY_OTHERS: readonly Rectangle[] = [INLINE_ROW, { minX: 190, minY: 18, maxX: 470, maxY: 135 }];

const typeOf = (name: string): BoardTypeWritten => {
  const type = boardTypes.find((t) => t.name === name);
  if (type === undefined) throw new Error(`Board type ${name} is not there.`);
  return type;
};

const found = underPlayfield(
  NEAR.map(([id, type, , , x, y]) => ({
    id,
    widthMm: typeOf(type).sizeMm[0],
    depthMm: typeOf(type).sizeMm[1],
    standoffMm: typeOf(type).standoffMm ?? 10,
    x,
    y,
    rotations: [0, 90],
  })),
  KEPT_BY_OTHERS,
);

/** What has been given away on the underside, the feet of the boards included. */
export const KEPT: readonly Rectangle[] = [...KEPT_BY_OTHERS, ...found.flatMap((board) => feetOf(board.at))];

/** Boards by their bus segment, in no order: the hops follow from where they are. */
export const SEGMENTS = {
  cabinet: ["bd.switch-cab", "bd.lamp-cab", "bd.motor-cab", "bd.coil-cab"],
  backbox: ["bd.lamp-bb-1", "bd.lamp-bb-2", "bd.motor-bb"],
  lower: [
    "bd.flip-left",
    "bd.flip-right",
    "bd.sling-left",
    "bd.sling-right",
    "bd.coil-front",
    "bd.lamp-1",
    "bd.lamp-2",
    "bd.lamp-3",
    "bd.lamp-4",
    "bd.switch-1",
    "bd.switch-2",
    "bd.trough-rx",
  ],
  upper: [
    "bd.flip-upper",
    "bd.magnet",
    "bd.coil-mid",
    "bd.coil-rear",
    "bd.bumper-left",
    "bd.bumper-right",
    "bd.bumper-low",
    "bd.beacon",
    "bd.motor-ship",
    "bd.lamp-5",
    "bd.lamp-6",
    "bd.lamp-7",
    "bd.switch-3",
    "bd.switch-4",
    "bd.switch-5",
    "bd.hall",
    "bd.opto-right",
    "bd.opto-left",
  ],
} as const satisfies Readonly<Record<string, readonly string[]>>;

/** Addresses count through all segments, so that a plug in the wrong port of the hub changes nothing. */
const addresses = new Map<string, number>(
  Object.values(SEGMENTS)
    .flat()
    .map((id, i) => [id, i + 1]),
);

type BoardRow = Partial<BookRow<"boards">>;

const written: readonly BoardRow[] = [
  ...FIXED.map(
    ([id, type, label, label_zh, panel, x_mm, y_mm, rotation_deg, side]): BoardRow => ({
      id,
      label,
      label_zh,
      type: `bt.${type}`,
      panel,
      side: side ?? "top",
      x_mm,
      y_mm,
      rotation_deg: rotation_deg ?? 0,
    }),
  ),
  ...NEAR.map(([id, type, label, label_zh]): BoardRow => {
    const place = found.find((f) => f.id === id);
    return {
      id,
      label,
      label_zh,
      type: `bt.${type}`,
      panel: "playfield",
      side: "under",
      x_mm: place?.xMm ?? 0,
      y_mm: place?.yMm ?? 0,
      rotation_deg: place?.rotationDeg ?? 0,
    };
  }),
];

/** Places of all boards, without address and termination. */
export const boardRows: readonly BookRow<"boards">[] = rows("boards", written);

export const boardsTopic = (terminated: ReadonlySet<string>): Topic => ({
  tables: {
    boards: boardRows.map((row) => ({
      ...row,
      address: addresses.get(row.id) ?? null,
      terminated: terminated.has(row.id),
    })),
  },
});
