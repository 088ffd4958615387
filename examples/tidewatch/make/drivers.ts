import type { ShopRow } from "@pinwright/book";

type Driver = Partial<ShopRow<"drivers">>;

/** A driver with a long blade: its handle stays beyond what stands on the panel. Sizes: common practice, no source. */
const driver = (id: string, label: string, label_zh: string, fits: string, blade: number): Driver => ({
  id,
  label,
  label_zh,
  kind: "driver",
  fits,
  tip_diameter_mm: blade,
  tip_length_mm: 125,
  grip_diameter_mm: 34,
  grip_length_mm: 140,
});

const socket = (size: string, outside: number): Driver => ({
  id: `drv.socket-${size.replace(".", "")}`,
  label: `Nut driver ${size} mm`,
  label_zh: `套筒螺丝刀 ${size} mm`,
  kind: "socket",
  fits: `hexagon ${size} mm`,
  tip_diameter_mm: outside,
  tip_length_mm: 130,
  grip_diameter_mm: 34,
  grip_length_mm: 120,
});

const spanner = (size: string, jaws: number, thick: number, length: number): Driver => ({
  id: `drv.spanner-${size.replace(".", "")}`,
  label: `Spanner ${size} mm`,
  label_zh: `开口扳手 ${size} mm`,
  kind: "spanner",
  fits: `hexagon ${size} mm`,
  tip_diameter_mm: jaws,
  tip_length_mm: thick,
  grip_diameter_mm: 10,
  grip_length_mm: length,
  swing_deg: 60,
});

/** Drivers and spanners at the benches. */
export const DRIVERS: readonly Driver[] = [
  driver("drv.cross-1", "Cross driver 1", "十字螺丝刀 1 号", "cross 1", 5),
  driver("drv.cross-2", "Cross driver 2", "十字螺丝刀 2 号", "cross 2", 6),
  socket("5.5", 8),
  socket("7", 10),
  socket("8", 11.5),
  spanner("5.5", 14, 3, 95),
  spanner("7", 17, 3.5, 105),
  spanner("8", 19, 4, 115),
  // What the small example is screwed with: both are built in one shop.
  driver("drv.pz1", "Cross driver PZ1", "PZ1 十字螺丝刀", "PZ1", 5),
  { ...socket("5.5", 8), id: "drv.socket-plain", fits: "5.5 mm socket" },
];
