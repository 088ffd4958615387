import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

/**
 * A device of a mechanism. `z` is the height off the side that the mechanism is fixed to; what stands above the
 * playfield on a mechanism below it has z = −(thickness + height of its lower edge).
 */
export type Child = readonly [
  child: string,
  type: string,
  label: string,
  label_zh: string,
  x: number,
  y: number,
  z: number,
  rotation?: number,
];

/** A screw that holds the mechanism: where, of which type, and the plate's thickness. */
export type Screw = readonly [x: number, y: number, type?: string, flange?: number, nut?: string];

export interface MechanismKind {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
  /** Its plate is a rectangle about its origin. */
  readonly size: readonly [width: number, depth: number, height: number, reach: number];
  readonly children: readonly Child[];
  readonly screws: readonly Screw[];
  readonly cycle_test: string;
  readonly cycle_test_zh: string;
}

/** Screws in the corners of a plate about the origin, `inset` from its edges. */
export const corners = (
  [minX, minY, maxX, maxY]: readonly [number, number, number, number],
  inset = 5,
): readonly Screw[] => [
  [minX + inset, minY + inset],
  [maxX - inset, minY + inset],
  [maxX - inset, maxY - inset],
  [minX + inset, maxY - inset],
];

/** Mechanisms whose metal hands cannot reach when the playfield is lifted: closed ones, and frames of plastic. */
const WITHOUT_BARE_METAL: ReadonlySet<string> = new Set([
  "mt.gate",
  "mt.up-post",
  "mt.spinner",
  "mt.knocker",
  "mt.bell",
  "mt.shaker",
  "mt.tide-clock",
]);

/** The tables that mechanism types make. */
export const mechanismKinds = (kinds: readonly MechanismKind[]): Topic => ({
  tables: {
    mechanism_types: rows(
      "mechanism_types",
      kinds.map(
        ({ id, label, label_zh, size, cycle_test, cycle_test_zh }): Partial<BookRow<"mechanism_types">> => ({
          id,
          label,
          label_zh,
          width_mm: size[0],
          depth_mm: size[1],
          height_mm: size[2],
          reach_mm: size[3],
          cycle_test,
          cycle_test_zh,
          needs_bond: !WITHOUT_BARE_METAL.has(id),
        }),
      ),
    ),
    mechanism_devices: rows(
      "mechanism_devices",
      kinds.flatMap((kind) =>
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
    mechanism_fasteners: rows(
      "mechanism_fasteners",
      kinds.flatMap((kind) =>
        kind.screws.map(([x_mm, y_mm, fastener_type, flange_mm, nut], i) => ({
          mechanism_type: kind.id,
          child: `fx-${i + 1}`,
          fastener_type: fastener_type ?? "ft.wood-40x12",
          x_mm,
          y_mm,
          flange_mm: flange_mm ?? 2,
          nut: nut ?? null,
          moments: "start align tighten recheck",
        })),
      ),
    ),
  },
});
