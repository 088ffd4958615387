import type { BookRow } from "@pinwright/book";
import { fromFrame, type PointMm, pointInRing, pointSegmentDistance, ringSides } from "@pinwright/kernel";
import { mechanismTypes } from "./mechanism-types.ts";
import { mechanisms } from "./mechanisms.ts";
import { playfieldCutouts } from "./playfield-cutouts.ts";
import { playfieldDeviceTypes } from "./playfield-device-types.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import { playfieldSwitches } from "./playfield-switches.ts";

/** What lies where on the underside of the playfield, for those who look for room there. */
interface Covered {
  readonly id: string;
  readonly ring: readonly PointMm[];
}

type Sized = { readonly id: string; readonly width_mm: number; readonly depth_mm: number };
type Placed = Pick<BookRow<"devices">, "id" | "type" | "side" | "x_mm" | "y_mm" | "rotation_deg">;

function footprint(row: Placed, type: Sized, outline: readonly PointMm[] | undefined): readonly PointMm[] {
  const frame = { xMm: row.x_mm, yMm: row.y_mm, rotationDeg: row.rotation_deg };
  const [w, d] = [type.width_mm / 2, type.depth_mm / 2];
  const ring = outline ?? [
    { xMm: -w, yMm: -d },
    { xMm: w, yMm: -d },
    { xMm: w, yMm: d },
    { xMm: -w, yMm: d },
  ];
  return ring.map((p) => fromFrame(frame, p));
}

const deviceTypes = new Map((playfieldDeviceTypes.tables.device_types ?? []).map((type) => [type.id, type]));
const typesOfMechanisms = new Map(
  (mechanismTypes.tables.mechanism_types ?? []).map((type) => [type.id, type]),
);

const COVERED: readonly Covered[] = [
  ...[playfieldLamps, playfieldSwitches].flatMap((topic) =>
    (topic.tables.devices ?? []).flatMap((row) => {
      const type = deviceTypes.get(row.type);
      if (type === undefined || row.side !== "under") return [];
      const outline = playfieldDeviceTypes.outlines?.get(type.outline ?? "")?.rings[0];
      return [{ id: row.id, ring: footprint(row, type, outline) }];
    }),
  ),
  ...(mechanisms.tables.mechanisms ?? []).flatMap((row) => {
    const type = typesOfMechanisms.get(row.type);
    return type === undefined || row.side !== "under"
      ? []
      : [{ id: row.id, ring: footprint(row, type, undefined) }];
  }),
];

const CUTS: readonly { readonly at: PointMm; readonly ring: readonly PointMm[] }[] = (
  playfieldCutouts.tables.cutouts ?? []
).map((row) => {
  const width = row.width_mm ?? 0;
  const type = { id: row.id, width_mm: width, depth_mm: row.height_mm ?? width };
  const at = { xMm: row.x_mm, yMm: row.y_mm };
  return { at, ring: footprint({ ...row, type: "", side: "under" }, type, undefined) };
});

const distanceTo = (p: PointMm, ring: readonly PointMm[]): number =>
  pointInRing(p, ring) === "outside"
    ? Math.min(...ringSides(ring).map((side) => pointSegmentDistance(p, side)))
    : 0;

/** Whether a screw head of this radius has room on the underside, and wood around it. */
export const hasRoom = (p: PointMm, radiusMm: number, woodMm = 3): boolean =>
  COVERED.every(({ ring }) => distanceTo(p, ring) >= radiusMm) &&
  CUTS.every(({ ring }) => distanceTo(p, ring) >= woodMm);
