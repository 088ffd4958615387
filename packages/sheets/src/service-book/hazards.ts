import { endKind, type LineResult } from "@pinwright/engine";
import type { Language } from "@pinwright/words";
import { shortNumber } from "../compose/number.ts";
import { supplyName, withVolts } from "../machine-facts.ts";

/** What a machine can do to whoever opens it, in the order in which it is told. */
export const HAZARDS = [
  "mains",
  "stored",
  "volts",
  "earth",
  "moving",
  "hot",
  "raised",
  "folded",
  "glass",
  "springs",
  "solder",
] as const;
export type HazardId = (typeof HAZARDS)[number];

/** A hazard that a machine has. */
export interface Hazard {
  readonly id: HazardId;
  /** Supplies that it is about, with their figures; blank: it is about no supply. */
  readonly names: string;
}

/** Up to here direct current counts as safety extra-low voltage when touched: IEC 60335-1 clause 8.1.4. */
const SAFE_DC_V = 42.4;

/** Panels that lie otherwise in a pose than when the machine is played. */
export function movedPanels(line: LineResult, poseId: string): readonly string[] {
  const { poses, pose_places: places } = line.machine.book.tables;
  const usual = poses.find((pose) => pose.usual === "yes") ?? poses[0];
  const placeOf = (pose: string | undefined, panel: string): string => {
    const at = places.find((p) => p.pose === pose && p.panel === panel);
    return at === undefined
      ? ""
      : [at.x_mm, at.y_mm, at.z_mm, at.rx_deg, at.ry_deg, at.rz_deg].map(String).join(" ");
  };
  return places
    .filter((p) => p.pose === poseId && placeOf(poseId, p.panel) !== placeOf(usual?.id, p.panel))
    .map((p) => p.panel);
}

/** The hazards of a machine, of those that its book shows. */
export function hazardsOf(line: LineResult, language: Language): readonly Hazard[] {
  const { machine } = line;
  const { tables } = machine.book;
  const wires = [...line.harnesses.values()].flatMap((harness) => harness.wires);
  const classes = new Set(wires.map((wire) => wire.netClass));
  const kinds = new Set(machine.elements.map((element) => element.row.kind));
  const coilSupplies = new Set(
    wires.flatMap((w) => (w.netClass === "coil" ? (machine.nets.get(w.netId)?.supply ?? []) : [])),
  );
  const high = tables.supplies.filter((s) => coilSupplies.has(s.id) && s.volts > SAFE_DC_V);
  const stored = tables.supplies.filter((s) => s.stored_j !== null && s.stored_j > 0);
  const purposes = (poseId: string): readonly string[] =>
    movedPanels(line, poseId).flatMap((id) => machine.panels.get(id)?.purpose ?? []);
  const moves = (purpose: string): boolean => tables.poses.some((p) => purposes(p.id).includes(purpose));
  const soldered = wires.some((w) =>
    [w.a, w.b].some((end) => {
      const family = machine.points.get(end)?.family;
      return family !== undefined && endKind(family) === "solder";
    }),
  );
  const has: Readonly<Record<HazardId, boolean>> = {
    mains: classes.has("mains"),
    stored: stored.length > 0 || (classes.has("mains") && kinds.has("capacitor")),
    volts: high.length > 0,
    earth: classes.has("earth"),
    moving: kinds.has("coil") || kinds.has("motor"),
    hot: kinds.has("coil"),
    raised: moves("playfield"),
    folded: moves("backbox"),
    glass: [...machine.panels.values()].some((panel) => panel.purpose === "glass"),
    springs: tables.mechanism_types.length > 0,
    solder: soldered,
  };
  const named = (list: typeof high, figure: (s: (typeof high)[number]) => string): string =>
    list.map((s) => `${withVolts(supplyName(line, s.id, language), s.volts)}${figure(s)}`).join(", ");
  const names: Partial<Record<HazardId, string>> = {
    stored: named(stored, (s) => `: ${shortNumber(s.stored_j ?? 0, 2)} J`),
    volts: named(high, () => ""),
  };
  return HAZARDS.filter((id) => has[id]).map((id) => ({ id, names: names[id] ?? "" }));
}
