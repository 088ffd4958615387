import { underPlayfield } from "./board-places.ts";
import { KEPT } from "./electrics-boards.ts";
import type { InlineWritten } from "./wiring-kit.ts";

type Side = "top" | "under";
const at = (panel: string, side: Side, x_mm: number, y_mm: number, rotation_deg = 0) => ({
  panel,
  side,
  x_mm,
  y_mm,
  rotation_deg,
});
const one = (
  id: string,
  label: string,
  labelZh: string,
  family: InlineWritten["family"],
  keys: readonly number[],
  place: InlineWritten["place"],
): InlineWritten => ({ id, label, labelZh, family, keys, place });

/** Row of in-line connectors at the rear edge of the playfield: pull these and the playfield comes out. */
const PLAYFIELD_ROW: readonly Omit<InlineWritten, "place">[] = [
  { id: "il.pf-bus-lower", label: "Playfield, lower bus", labelZh: "台面 下总线", family: "i250", keys: [2] },
  { id: "il.pf-bus-upper", label: "Playfield, upper bus", labelZh: "台面 上总线", family: "i250", keys: [4] },
  {
    id: "il.pf-lamp-front",
    label: "Playfield, front lamps",
    labelZh: "台面 前灯",
    family: "i420",
    keys: [1, 2],
  },
  {
    id: "il.pf-lamp-centre",
    label: "Playfield, compass lamps",
    labelZh: "台面 罗盘灯",
    family: "i420",
    keys: [1, 3],
  },
  {
    id: "il.pf-lamp-word",
    label: "Playfield, letter lamps",
    labelZh: "台面 字母灯",
    family: "i420",
    keys: [1],
  },
  {
    id: "il.pf-lamp-mid",
    label: "Playfield, middle lamps",
    labelZh: "台面 中部灯",
    family: "i420",
    keys: [1, 4],
  },
  {
    id: "il.pf-lamp-rear",
    label: "Playfield, rear lamps",
    labelZh: "台面 后灯",
    family: "i420",
    keys: [2, 3],
  },
  { id: "il.pf-motor", label: "Playfield, motors", labelZh: "台面 电机", family: "i420", keys: [3, 4] },
  {
    id: "il.pf-coil-lower",
    label: "Playfield, lower coils",
    labelZh: "台面 下线圈",
    family: "i420",
    keys: [2, 5],
  },
  {
    id: "il.pf-coil-upper",
    label: "Playfield, upper coils",
    labelZh: "台面 上线圈",
    family: "i420",
    keys: [4, 8],
  },
  { id: "il.pf-earth", label: "Playfield, earth", labelZh: "台面 接地", family: "i420", keys: [2] },
];

/** Connectors of what is fitted on top of the playfield: under it, near the hole that the harness comes through. */
const UNDER_TOP_PARTS = [
  ["il.ramp-left", "Left ramp", "左坡道", "i250", [3], 130, 680],
  ["il.ramp-right", "Right ramp", "右坡道", "i250", [5], 400, 690],
  ["il.light-sling-left", "Lights, left slingshot", "左弹弓照明", "i250", [1, 2], 80, 400],
  ["il.light-sling-right", "Lights, right slingshot", "右弹弓照明", "i250", [2], 390, 400],
  ["il.light-left", "Lights on top, left", "台面上左照明", "i250", [3], 60, 760],
  ["il.light-right", "Lights on top, right", "台面上右照明", "i250", [1, 3], 450, 985],
  ["il.light-front", "Lights on top, front", "台面上前照明", "i250", [1], 140, 110],
  ["il.light-rear", "Lights on top, rear", "台面上后照明", "i250", [2, 4], 430, 1020],
] as const;

/** Largest of these housings with its wires, in mm. */
const HOUSING_MM = [26, 34] as const;
const underTopParts = underPlayfield(
  UNDER_TOP_PARTS.map(([id, , , , , x, y]) => ({
    id,
    widthMm: HOUSING_MM[0],
    depthMm: HOUSING_MM[1],
    standoffMm: 0,
    x,
    y,
    rotations: [0],
  })),
  KEPT,
).map((found) => ({ xMm: (found.at.minX + found.at.maxX) / 2, yMm: (found.at.minY + found.at.maxY) / 2 }));

/**
 * In-line connectors of the machine. Half `a` is on the side of the supply or of the master. Where several of one
 * family can reach each other, ways or keys differ.
 */
export const INLINES: readonly InlineWritten[] = [
  ...PLAYFIELD_ROW.map((row, i) => ({ ...row, place: at("playfield", "under", 106 + 33 * i, 1050) })),
  one("il.bb-data", "Backbox, data", "背箱 数据", "i250", [6], at("bb.bottom", "top", 150, 120)),
  one("il.bb-audio", "Backbox, volume", "背箱 音量", "i250", [5], at("bb.bottom", "top", 200, 120)),
  one("il.bb-bass", "Backbox, bass speaker", "背箱 低音", "i420", [2, 4], at("bb.bottom", "top", 260, 120)),
  one("il.bb-logic", "Backbox, 12 V", "背箱 12 V", "i420", [2], at("bb.bottom", "top", 420, 120)),
  one("il.bb-lamp", "Backbox, lamps", "背箱 灯", "i420", [1], at("bb.bottom", "top", 480, 120)),
  one("il.bb-motor", "Backbox, tide clock", "背箱 潮汐钟", "i420", [3], at("bb.bottom", "top", 540, 120)),
  one("il.bb-earth", "Backbox, earth", "背箱 接地", "i420", [2], at("bb.bottom", "top", 600, 120)),
  one("il.coin-door", "Coin door", "投币门", "i250", [4], at("cab.front", "top", 110, 100)),
  ...UNDER_TOP_PARTS.map(([id, label, labelZh, family, keys], i) => {
    const place = underTopParts[i];
    return one(id, label, labelZh, family, keys, at("playfield", "under", place?.xMm ?? 0, place?.yMm ?? 0));
  }),
];
