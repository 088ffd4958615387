import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

type Type = Partial<BookRow<"fastener_types">>;

/**
 * Pilot holes in birch plywood: 90 % of the root, between the sizes of the published table for hardwood (no. 4:
 * 2.84 mm, 1.71; no. 6: 3.51, 2.15; no. 8: 4.17, 2.56).
 */
const PILOT_MM: Readonly<Record<number, number>> = { 2.9: 1.8, 3: 1.8, 3.5: 2.1, 4: 2.4 };

/**
 * Screws into the playfield's wood are so long that, with what they hold, they stay below its face. Torques: common
 * practice, no source.
 */
const wood = (
  id: string,
  label: string,
  label_zh: string,
  diameter: number,
  length: number,
  more: Type,
): Type => ({
  id,
  label,
  label_zh,
  kind: "wood-screw",
  thread: `${diameter} × ${length} wood`,
  diameter_mm: diameter,
  length_mm: length,
  head: "pan",
  head_diameter_mm: diameter * 2,
  head_height_mm: Math.round(diameter * 6) / 10,
  drive: diameter < 3.5 ? "cross 1" : "cross 2",
  pilot_mm: PILOT_MM[diameter] ?? null,
  torque_nm: diameter < 3.5 ? 0.6 : 1.2,
  clutch: diameter < 3.5 ? 3 : 6,
  colour: "zinc",
  ...more,
});

/** A machine screw goes through a clearance hole, medium fit of ISO 273. */
const CLEARANCE_MM = { 3: 3.4, 4: 4.5 } as const;
const HEX = { 3: "hexagon 5.5 mm", 4: "hexagon 7 mm" } as const;

const machine = (size: 3 | 4, length: number, label: string, label_zh: string, more: Type = {}): Type => ({
  id: `ft.m${size}x${length}`,
  label,
  label_zh,
  kind: "machine-screw",
  thread: `M${size}`,
  diameter_mm: size,
  length_mm: length,
  head: "pan",
  head_diameter_mm: size === 3 ? 6 : 8,
  head_height_mm: size === 3 ? 2.4 : 3.1,
  drive: size === 3 ? "cross 1" : "cross 2",
  pilot_mm: CLEARANCE_MM[size],
  threadlocker: true,
  clutch: size === 3 ? 3 : 6,
  torque_nm: size === 3 ? 0.6 : 1.4,
  colour: "zinc",
  ...more,
});

/** Nuts across their corners: ISO 4032, from memory. */
const nut = (size: 3 | 4): Type => ({
  id: `ft.nut-m${size}`,
  label: `Nut M${size}`,
  label_zh: `螺母 M${size}`,
  kind: "nut",
  thread: `M${size}`,
  diameter_mm: size,
  length_mm: size === 3 ? 2.4 : 3.2,
  head: HEX[size],
  head_diameter_mm: size === 3 ? 6 : 7.7,
  head_height_mm: size === 3 ? 2.4 : 3.2,
  drive: HEX[size],
  colour: "zinc",
});

const TYPES: readonly Type[] = [
  wood("ft.wood-29x9", "Wood screw 2.9 × 9, pan head", "木螺钉 2.9 × 9 盘头", 2.9, 9, {}),
  wood("ft.wood-30x12", "Wood screw 3.0 × 12, pan head", "木螺钉 3.0 × 12 盘头", 3, 12, {}),
  wood("ft.wood-35x12", "Wood screw 3.5 × 12, pan head", "木螺钉 3.5 × 12 盘头", 3.5, 12, {}),
  wood("ft.wood-40x16", "Wood screw 4.0 × 16, pan head", "木螺钉 4.0 × 16 盘头", 4, 16, {}),
  wood("ft.wood-40x12", "Wood screw 4.0 × 12, hexagon washer head", "木螺钉 4.0 × 12 六角法兰头", 4, 12, {
    head: "hexagon with washer",
    head_diameter_mm: 9,
    head_height_mm: 3.5,
    drive: "hexagon 7 mm",
    colour: "zinc",
    clutch: 8,
    torque_nm: 1.8,
  }),
  wood(
    "ft.wood-40x30",
    "Wood screw 4.0 × 30, countersunk, into rails",
    "木螺钉 4.0 × 30 沉头（固定木条）",
    4,
    30,
    {
      head: "countersunk",
      head_height_mm: 0,
      // Clear through the playfield; it bites in what it holds on the far side.
      pilot_mm: 4.5,
      bites: "thread",
      clutch: 8,
      torque_nm: 1.8,
    },
  ),
  {
    id: "ft.guide-m3x18",
    label: "Machine screw M3 × 18 into a guide's tapped foot",
    label_zh: "机螺钉 M3 × 18（导轨螺孔脚）",
    kind: "machine-screw",
    thread: "M3",
    diameter_mm: 3,
    length_mm: 18,
    head: "pan with washer",
    head_diameter_mm: 7,
    head_height_mm: 2.6,
    drive: "cross 1",
    pilot_mm: 3.4,
    threadlocker: true,
    clutch: 4,
    torque_nm: 1,
    colour: "black",
  },
  machine(3, 25, "Machine screw M3 × 25, pan head", "机螺钉 M3 × 25 盘头"),
  machine(4, 16, "Machine screw M4 × 16, pan head", "机螺钉 M4 × 16 盘头"),
  machine(4, 30, "Machine screw M4 × 30, pan head", "机螺钉 M4 × 30 盘头"),
  nut(3),
  nut(4),
  {
    id: "ft.washer-m4",
    label: "Washer M4",
    label_zh: "垫圈 M4",
    kind: "washer",
    thread: "M4",
    diameter_mm: 4.3,
    length_mm: 0.8,
    head_diameter_mm: 9,
    head_height_mm: 0.8,
    colour: "zinc",
  },
  {
    id: "ft.post-rubber",
    label: "Rubber post with wood screw",
    label_zh: "橡皮柱（带木螺钉）",
    kind: "post",
    thread: "3.5 × 34 wood",
    diameter_mm: 3.5,
    length_mm: 34,
    head: "round post",
    head_diameter_mm: 7.5,
    head_height_mm: 0,
    drive: "cross 2",
    pilot_mm: PILOT_MM[3.5] ?? null,
    clutch: 5,
    torque_nm: 1.2,
    colour: "clear",
  },
  {
    id: "ft.post-plastic",
    label: "Post of a plastic or ramp, hexagon, with wood screw end",
    label_zh: "塑料板支柱（六角，木螺纹端）",
    kind: "post",
    thread: "4.0 × 42 wood",
    diameter_mm: 4,
    length_mm: 42,
    head: "hexagon 8 mm",
    head_diameter_mm: 8,
    head_height_mm: 0,
    drive: "hexagon 8 mm",
    pilot_mm: PILOT_MM[4] ?? null,
    clutch: 7,
    torque_nm: 1.5,
    colour: "nickel",
  },
];

export const fastenerTypes: Topic = {
  tables: {
    fastener_types: rows(
      "fastener_types",
      TYPES.map((type) => ({ part: `hw.${type.id?.slice(3) ?? ""}`, ...type })),
    ),
  },
};
