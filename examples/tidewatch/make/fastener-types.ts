import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

type Type = Partial<BookRow<"fastener_types">>;

/**
 * Screws into the playfield's wood are so long that, with what they hold, they stay below its face. Pilot holes
 * in plywood and torques: common practice, no source.
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
  pilot_mm: Math.round(diameter * 6.5) / 10,
  torque_nm: diameter < 3.5 ? 0.6 : 1.2,
  clutch: diameter < 3.5 ? 3 : 6,
  colour: "zinc",
  ...more,
});

export const fastenerTypes: Topic = {
  tables: {
    fastener_types: rows("fastener_types", [
      wood("ft.wood-29x9", "Wood screw 2.9 × 9, pan head", "木螺钉 2.9 × 9 盘头", 2.9, 9, {}),
      wood("ft.wood-30x12", "Wood screw 3.0 × 12, pan head", "木螺钉 3.0 × 12 盘头", 3, 12, {}),
      wood("ft.wood-35x12", "Wood screw 3.5 × 12, pan head", "木螺钉 3.5 × 12 盘头", 3.5, 12, {}),
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
        threadlocker: false,
        clutch: 4,
        torque_nm: 1,
        colour: "black",
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
        pilot_mm: 2.3,
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
        pilot_mm: 2.6,
        clutch: 7,
        torque_nm: 1.5,
        colour: "nickel",
      },
    ]),
  },
};
