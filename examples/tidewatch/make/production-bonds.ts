import { rows } from "./author.ts";
import { cabinetDevices } from "./cabinet-devices.ts";
import { earthDevices, PLAYFIELD_STUDS } from "./earth-devices.ts";

const studs = [cabinetDevices, earthDevices]
  .flatMap((topic) => topic.tables.devices ?? [])
  .filter((device) => device.type === "dt.earth-stud");

/** Mechanisms with a metal frame, by the stud that is fixed to it. */
const mechanismOf = new Map(PLAYFIELD_STUDS.map((stud) => [stud, `mech.${stud.slice(3)}`]));

/** Every touchable metal part with its stud; the bond test visits the cabinet first, then the playfield. */
export const bonds = rows(
  "bonds",
  studs.map((stud, i) => ({
    id: `bond.${stud.id.slice(3)}`,
    label: stud.label,
    label_zh: stud.label_zh,
    metal: stud.label.replace(/^Earth: /, ""),
    item: mechanismOf.get(stud.id) ?? null,
    at: `${stud.id}:pe`,
    wire_type: "pe-18",
    stud: "M4 × 16, steel, welded or with a locked nut",
    ring: "hw.ring-m4",
    washer: "hw.washer-toothed-m4",
    order: i + 1,
  })),
);
