import type { BookRow } from "@pinwright/book";
import { faceX, type Machine, placed } from "@pinwright/engine";
import { rows } from "./author.ts";

const HOLE = /^(-?[\d.]+),(-?[\d.]+)$/;

/** Stand-offs of different heights are told apart by their finish. */
const FINISH: Readonly<Record<number, string>> = { 10: "nickel", 12: "brass", 15: "black", 36: "nickel" };

/** Stand-offs that boards stand on: with a wood screw end in panels, of the height that the board type asks for. */
const WOOD_END = [10, 12, 15, 36].map(
  (heightMm): Partial<BookRow<"fastener_types">> => ({
    id: `ft.standoff-${heightMm}`,
    label: `Stand-off ${heightMm} mm, hexagon, wood screw end`,
    label_zh: `六角支柱 ${heightMm} mm（木螺纹端）`,
    kind: "standoff",
    thread: "3.5 × 9 wood, M3 inside",
    diameter_mm: 3.5,
    length_mm: 9,
    head: "hexagon 5.5 mm",
    head_diameter_mm: 6.4,
    head_height_mm: heightMm,
    drive: "hexagon 5.5 mm",
    pilot_mm: 2.1,
    clutch: 4,
    torque_nm: 0.9,
    colour: FINISH[heightMm] ?? "nickel",
    part: `hw.standoff-${heightMm}`,
  }),
);

/** The same with a stud that goes through a panel too thin for a wood screw, and a nut on the far side. */
const STUDDED = [10, 12, 15].map(
  (heightMm): Partial<BookRow<"fastener_types">> => ({
    id: `ft.standoff-m3-${heightMm}`,
    label: `Stand-off ${heightMm} mm, hexagon, M3 stud`,
    label_zh: `六角支柱 ${heightMm} mm（M3 螺柱）`,
    kind: "standoff",
    thread: "M3",
    diameter_mm: 3,
    length_mm: 14,
    head: "hexagon 5.5 mm",
    head_diameter_mm: 6.4,
    head_height_mm: heightMm,
    drive: "hexagon 5.5 mm",
    pilot_mm: 3.4,
    bites: "thread",
    clutch: 4,
    torque_nm: 0.6,
    colour: FINISH[heightMm] ?? "nickel",
    part: `hw.standoff-m3-${heightMm}`,
  }),
);

export const STANDOFFS = [...WOOD_END, ...STUDDED];

/** Panels thinner than this have no wood for a screw of 9 mm. */
const THIN_MM = 10;

/** A stand-off under each fixing hole of each board, where the board lies in the machine. */
export function boardFixings(machine: Machine): readonly BookRow<"fasteners">[] {
  return rows(
    "fasteners",
    [...machine.items.values()].flatMap((item) => {
      if (item.kind !== "board") return [];
      const isThin = (machine.panels.get(item.place.panelId)?.thickness_mm ?? 0) < THIN_MM;
      const nearest = (isThin ? STUDDED : WOOD_END).toSorted(
        (a, b) =>
          Math.abs((a.head_height_mm ?? 0) - item.type.standoff_mm) -
          Math.abs((b.head_height_mm ?? 0) - item.type.standoff_mm),
      )[0];
      return item.type.holes.split(" ").flatMap((hole, i) => {
        const [, x, y] = HOLE.exec(hole) ?? [];
        if (x === undefined || y === undefined || nearest?.id === undefined) return [];
        const at = placed(item.place, faceX(item.place.side, Number(x), item.type.width_mm / 2), Number(y));
        return [
          {
            id: `fx.${item.id.slice(3)}-${i + 1}`,
            type: nearest.id,
            panel: item.place.panelId,
            side: item.place.side,
            x_mm: Math.round(at.xMm * 10) / 10,
            y_mm: Math.round(at.yMm * 10) / 10,
            holds: item.id,
            ...(isThin ? { nut: "ft.nut-m3" } : {}),
            purpose: "stand-off of a board",
          },
        ];
      });
    }),
  );
}
