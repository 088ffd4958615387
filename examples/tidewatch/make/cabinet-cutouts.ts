import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";
import { cabinetDevices } from "./cabinet-devices.ts";

type Cut = Pick<BookRow<"cutouts">, "purpose" | "shape"> & {
  readonly width_mm: number;
  readonly height_mm?: number;
};

const hole = (width_mm: number, purpose: Cut["purpose"] = "fixing"): Cut => ({
  purpose,
  shape: "circle",
  width_mm,
});
const window = (width_mm: number, height_mm: number): Cut => ({
  purpose: "fixing",
  shape: "rect",
  width_mm,
  height_mm,
});

/** What each device of a type needs in its panel. */
const FOR_TYPES: Readonly<Record<string, Cut>> = {
  "dt.inlet": window(30, 24),
  "dt.mains-switch": window(28, 22),
  "dt.button-lit": hole(28),
  "dt.flip-button": hole(26),
  "dt.service-button": hole(14),
  "dt.lamp-bb": hole(12, "other"),
  "dt.speaker-100": hole(90, "vent"),
  "dt.speaker-165": hole(148, "vent"),
  "mt.tide-clock": hole(12, "mechanism"),
};

/** Openings that no one device is the reason of: the coin door's, and room in the lamp panel for what stands beside it. */
const OPENINGS: readonly Partial<BookRow<"cutouts">>[] = [
  ["coin-door", "cab.front", 280, 190, 266, 266],
  ["lamp-speaker-left", "bb.lamp", 26, 140, 52, 120],
  ["lamp-speaker-right", "bb.lamp", 634, 140, 52, 120],
  ["lamp-hinge-stud", "bb.lamp", 330, 6, 26, 12],
].map(([id, panel, x_mm, y_mm, width_mm, height_mm]) => ({
  id: `cut.${id}`,
  panel: String(panel),
  side: "top",
  purpose: "other",
  shape: "rect",
  x_mm: Number(x_mm),
  y_mm: Number(y_mm),
  width_mm: Number(width_mm),
  height_mm: Number(height_mm),
}));

const placed = [...(cabinetDevices.tables.devices ?? []), ...(cabinetDevices.tables.mechanisms ?? [])];

/** Openings for what looks, speaks or is pressed through the cabinet's and the backbox's panels. */
export const cabinetCutouts: Topic = {
  tables: {
    cutouts: rows("cutouts", [
      ...OPENINGS,
      ...placed.flatMap((row) => {
        const cut = FOR_TYPES[row.type];
        return cut === undefined
          ? []
          : [
              {
                id: `cut.${row.id.replace(".", "-")}`,
                panel: row.panel,
                side: "top" as const,
                x_mm: row.x_mm,
                y_mm: row.y_mm,
                rotation_deg: row.rotation_deg,
                serves: row.id,
                ...cut,
              },
            ];
      }),
    ]),
  },
};
