import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import { outlineAbout, polygon, type Xy } from "./shape.ts";

/** Inside of the cabinet, and the backbox that stands on its rear. */
export const CABINET = { widthMm: 560, depthMm: 1300, frontMm: 400, rearMm: 560, plyMm: 18 } as const;
export const BACKBOX = { widthMm: 700, depthMm: 230, heightMm: 750, plyMm: 18 } as const;

type Panel = readonly [
  id: string,
  label: string,
  labelZh: string,
  purpose: "cabinet" | "backbox",
  width: number,
  height: number,
  thickness: number,
  material: string,
  outline?: string,
];

const PLY = "birch plywood, 13 plies";

/** Every panel's `top` is the inside of the box, so what is fixed inside stands on `top`. */
const PANELS: readonly Panel[] = [
  ["cab.bottom", "Cabinet bottom", "机箱底板", "cabinet", 560, 1300, 18, PLY],
  ["cab.left", "Cabinet left side", "机箱左侧板", "cabinet", 1300, 560, 18, PLY, "cab-left.svg"],
  ["cab.right", "Cabinet right side", "机箱右侧板", "cabinet", 1300, 560, 18, PLY, "cab-right.svg"],
  ["cab.front", "Cabinet front", "机箱前板", "cabinet", 560, 400, 18, PLY],
  ["cab.back", "Cabinet back", "机箱后板", "cabinet", 560, 560, 18, PLY],
  ["cab.door", "Coin door", "投币门", "cabinet", 260, 260, 2, "steel sheet, powder-coated"],
  ["bb.bottom", "Backbox bottom", "背箱底板", "backbox", 700, 230, 18, PLY],
  ["bb.left", "Backbox left side", "背箱左侧板", "backbox", 230, 750, 18, PLY],
  ["bb.right", "Backbox right side", "背箱右侧板", "backbox", 230, 750, 18, PLY],
  ["bb.back", "Backbox back", "背箱后板", "backbox", 700, 750, 12, PLY],
  ["bb.top", "Backbox top", "背箱顶板", "backbox", 700, 230, 18, PLY],
  ["bb.lamp", "Lamp panel", "灯板", "backbox", 660, 710, 9, "birch plywood, 7 plies"],
];

/** The glass over the playfield, which slides in from the front in channels below the upper edges of the sides. */
export const GLASS = {
  id: "glass.field",
  label: "Playfield glass",
  label_zh: "台面玻璃",
  purpose: "glass",
  width_mm: 552,
  height_mm: 1180,
  thickness_mm: 5,
  material: "tempered glass",
  part: "hw.glass",
} as const;

/** Sides slope up from the front to the rear; the right one, seen from inside, has its front at the right. */
const SIDE_LEFT: readonly Xy[] = [
  [0, 0],
  [CABINET.depthMm, 0],
  [CABINET.depthMm, CABINET.rearMm],
  [1020, CABINET.rearMm],
  [0, CABINET.frontMm],
];

export const cabinetPanels: Topic = {
  tables: {
    panels: rows("panels", [
      ...PANELS.map(
        ([id, label, label_zh, purpose, width_mm, height_mm, thickness_mm, material, outline]): Partial<
          BookRow<"panels">
        > => ({
          id,
          label,
          label_zh,
          purpose,
          width_mm,
          height_mm,
          thickness_mm,
          material,
          ...(outline === undefined ? {} : { outline }),
          wood: material.startsWith("birch") ? "hardwood" : "none",
          grain: material.startsWith("birch") ? (width_mm >= height_mm ? "x" : "y") : "none",
          part: id === "cab.door" ? "hw.door-plate" : null,
        }),
      ),
      GLASS,
    ]),
  },
  outlines: new Map([
    ["cab-left.svg", outlineAbout([0, 0], polygon(...SIDE_LEFT))],
    [
      "cab-right.svg",
      outlineAbout([0, 0], polygon(...SIDE_LEFT.map(([x, y]): Xy => [CABINET.depthMm - x, y]).reverse())),
    ],
  ]),
};
