import type { BookRow } from "@pinwright/book";
import { fromFrame } from "@pinwright/kernel";
import { rows, type Topic } from "./author.ts";
import { cabinetDevices } from "./cabinet-devices.ts";
import type { Xy } from "./shape.ts";

type Fixed = Pick<BookRow<"fasteners">, "type" | "flange_mm"> &
  Partial<Pick<BookRow<"fasteners">, "washer" | "nut" | "moments">>;

interface Screws {
  readonly at: readonly Xy[];
  readonly with: Fixed;
}

const WOOD_16 = "ft.wood-40x16";
const NUT_M4 = { nut: "ft.nut-m4", washer: "ft.washer-m4" } as const;

const four = (x: number, y: number): readonly Xy[] => [
  [-x, -y],
  [x, -y],
  [x, y],
  [-x, y],
];
const supply = (x: number, y: number): Screws => ({
  at: four(x, y),
  with: { type: WOOD_16, flange_mm: 2, moments: "start align tighten" },
});

/** Screws of each device of a type, in its frame. */
const FOR_TYPES: Readonly<Record<string, Screws>> = {
  "dt.psu-48": supply(115, 45),
  "dt.psu-12-150": supply(90, 35),
  "dt.psu-12-100": supply(75, 35),
  "dt.mains-filter": {
    at: [
      [-45, 0],
      [45, 0],
    ],
    with: { type: WOOD_16, flange_mm: 1.5 },
  },
  "dt.mains-duct": {
    at: [
      [0, -150],
      [0, 0],
      [0, 150],
    ],
    with: { type: WOOD_16, flange_mm: 2 },
  },
  "dt.inlet": {
    at: [
      [-20, 0],
      [20, 0],
    ],
    with: { type: "ft.m3x25", flange_mm: 3, nut: "ft.nut-m3" },
  },
  "dt.earth-bar": {
    at: [
      [-96, 0],
      [96, 0],
    ],
    with: { type: WOOD_16, flange_mm: 3 },
  },
  "dt.tilt-bob": {
    at: [
      [-15, 0],
      [15, 0],
    ],
    with: { type: "ft.wood-35x12", flange_mm: 2 },
  },
  "dt.door-micro": {
    at: [
      [-11, 0],
      [11, 0],
    ],
    with: { type: "ft.wood-29x9", flange_mm: 1.5 },
  },
  "dt.speaker-100": {
    at: four(45, 45),
    with: { type: "ft.m4x30", flange_mm: 6, moments: "start align tighten recheck", ...NUT_M4 },
  },
  "dt.speaker-165": {
    at: four(74, 74),
    with: { type: "ft.m4x30", flange_mm: 6, moments: "start align tighten recheck", ...NUT_M4 },
  },
};

/** What holds the devices of the cabinet and the backbox; boards stand on their stand-offs. */
export const cabinetFasteners: Topic = {
  tables: {
    fasteners: rows(
      "fasteners",
      (cabinetDevices.tables.devices ?? []).flatMap((device) => {
        const screws = FOR_TYPES[device.type];
        return (screws?.at ?? []).map(([xMm, yMm], i) => {
          // Seen from above, the frame of a device on an underside is turned over; none of these is on one.
          const frame = { xMm: device.x_mm, yMm: device.y_mm, rotationDeg: device.rotation_deg };
          const at = fromFrame(frame, { xMm, yMm });
          return {
            id: `fx.${device.id.replace(".", "-")}-${i + 1}`,
            panel: device.panel,
            side: device.side,
            x_mm: Math.round(at.xMm * 10) / 10,
            y_mm: Math.round(at.yMm * 10) / 10,
            holds: device.id,
            ...screws?.with,
          };
        });
      }),
    ),
  },
};
