import type { BookRow } from "@pinwright/book";
import type { HarnessResult, Landing, Languages, Machine, SizedWire } from "../model/index.ts";
import { type Cell, contactPart, wireEntryCell, wiresAtEnds } from "./ends.ts";

export interface LoadedWire {
  readonly wireId: string;
  readonly number: number;
  readonly colour: string;
  readonly wireTypeId: string;
  /** Point or splice at the other end. */
  readonly otherEnd: string;
  /** The contact is on the wire already when it comes to the pinboard. */
  readonly crimpedFirst: boolean;
}

export interface LoadedCavity {
  readonly pointId: string;
  /** Cavity number; null for a terminal. */
  readonly pin: number | null;
  /** `3` or a terminal's name. */
  readonly name: string;
  readonly label: string;
  readonly netId: string | null;
  readonly wires: readonly LoadedWire[];
  readonly contactPartId: string | null;
  readonly state: "wired" | "key" | "spare" | "empty";
  /** Place seen from the wire-entry side; of a terminal its place in the order of the book. */
  readonly cell: Cell;
}

export interface LoadedLanding {
  readonly landingId: string;
  readonly itemId: string;
  readonly labels: Languages;
  /** Null for bare terminals. */
  readonly connector: BookRow<"connectors"> | null;
  readonly half: "a" | "b" | null;
  readonly family: BookRow<"connector_families"> | null;
  readonly columns: number;
  readonly rows: number;
  readonly housingPartId: string | null;
  readonly keyPartId: string | null;
  readonly cavities: readonly LoadedCavity[];
}

/** Whether the end of a wire on this point is crimped at the cutting bench. */
function isCrimped(wire: SizedWire, pointId: string): boolean {
  if (wire.crimpedFirst === "both") return true;
  return wire.crimpedFirst !== "none" && wire[wire.crimpedFirst] === pointId;
}

/** Keys that keying gave to landings, beside those of their types. */
export type KeysByLanding = ReadonlyMap<string, readonly number[]>;

/** Cavities of a landing that a key blocks. */
export function keyPinsOf(landing: Landing, keys: KeysByLanding): readonly number[] {
  return keys.get(landing.id) ?? landing.keyPins;
}

/** The housing that a harness puts on a landing: half b of an in-line connector wears the mate's. */
export function housingPart(landing: Landing): string | null {
  if (landing.connector === null) return null;
  return landing.half === "b" ? landing.connector.mate_part : landing.connector.housing_part;
}

/**
 * How each housing of a harness is loaded, every cavity with its wires, seen from the wire-entry side, and what
 * goes on each bare terminal. Landings in code-point order.
 */
export function connectorLoading(
  machine: Machine,
  harness: HarnessResult,
  keys: KeysByLanding = new Map(),
): readonly LoadedLanding[] {
  const wiresAt = wiresAtEnds(harness);
  return harness.landingIds.flatMap((landingId): readonly LoadedLanding[] => {
    const landing = machine.landings.get(landingId);
    const item = landing === undefined ? undefined : machine.items.get(landing.itemId);
    if (landing === undefined || item === undefined) return [];
    const { connector } = landing;
    const blocked = keyPinsOf(landing, keys);
    const cavities = landing.pointIds.flatMap((pointId, i): readonly LoadedCavity[] => {
      const point = machine.points.get(pointId);
      if (point === undefined) return [];
      const wires = wiresAt.get(pointId) ?? [];
      const isKey = point.pin !== null && blocked.includes(point.pin);
      return [
        {
          pointId,
          pin: point.pin,
          name: point.pin === null ? point.localId : String(point.pin),
          label: point.label,
          netId: wires[0]?.netId ?? null,
          wires: wires.map((wire) => ({
            wireId: wire.id,
            number: wire.number,
            colour: wire.colour,
            wireTypeId: wire.wireType.id,
            otherEnd: wire.a === pointId ? wire.b : wire.a,
            crimpedFirst: isCrimped(wire, pointId),
          })),
          contactPartId: wires.length > 0 ? contactPart(machine, pointId) : null,
          state: wires.length > 0 ? "wired" : isKey ? "key" : point.use === "spare" ? "spare" : "empty",
          cell: point.pin === null ? { column: i, row: 0 } : wireEntryCell(machine, landing, point.pin),
        },
      ];
    });
    return [
      {
        landingId,
        itemId: landing.itemId,
        labels: item.labels,
        connector,
        half: landing.half,
        family: machine.points.get(landing.pointIds[0] ?? "")?.family ?? null,
        columns: connector === null ? cavities.length : Math.ceil(connector.ways / connector.rows),
        rows: connector?.rows ?? 1,
        housingPartId: housingPart(landing),
        keyPartId: connector?.key_part ?? null,
        cavities,
      },
    ];
  });
}
