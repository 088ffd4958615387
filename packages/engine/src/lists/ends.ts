import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import {
  cavityAt,
  cavityGrid,
  type HarnessResult,
  type Landing,
  type Languages,
  type Machine,
  type SizedWire,
} from "../model/index.ts";

type Family = BookRow<"connector_families">;

/**
 * How an end is made, which decides the verb: a contact crimped for a housing, a crimped tab that is pushed on, a
 * crimped ring on its stud, a soldered lug, a ferrule or a bare end under a screw, a socket pressed on, a splice.
 */
export type EndKind = "crimp" | "tab" | "ring" | "solder" | "ferrule" | "screw" | "press" | "splice";

const END_KINDS: Readonly<Record<Family["kind"], EndKind>> = {
  housing: "crimp",
  tab: "tab",
  ring: "ring",
  lug: "solder",
  screw: "ferrule",
  idc: "press",
  splice: "splice",
};

export function endKind(family: Family): EndKind {
  return family.kind === "screw" && family.contact_part === null ? "screw" : END_KINDS[family.kind];
}

/** Whether the end hangs free while the harness lies on the bench: its terminal is in the machine. */
export function isLoose(family: Family): boolean {
  return family.kind !== "housing" && family.kind !== "idc";
}

/** Whether two wires on one point are joined before the harness is fitted; on a lug or under a screw they are not. */
export function isBenchJoint(family: Family): boolean {
  return family.kind !== "lug" && family.kind !== "screw";
}

/** One end of a wire as a list names it. */
export interface ListEnd {
  /** Point id or splice id. */
  readonly id: string;
  readonly kind: "point" | "splice";
  /** Landing that the end is held at; null for a splice. */
  readonly landingId: string | null;
  readonly itemId: string | null;
  readonly labels: Languages | null;
  /** Cavity number; null for a terminal or a splice. */
  readonly pin: number | null;
  /** `j1.3`, a terminal's name, or for a splice its number. */
  readonly localId: string;
  readonly stripMm: number;
  readonly made: EndKind;
  readonly familyId: string | null;
  readonly contactPartId: string | null;
  /** Crimped at the cutting bench, before the wire is laid. */
  readonly crimpedFirst: boolean;
}

/** The contact that a harness puts on a point: half b of an in-line connector wears the mate's. */
export function contactPart(machine: Machine, pointId: string): string | null {
  const point = machine.points.get(pointId);
  if (point === undefined) return null;
  const half = machine.landings.get(point.landingId)?.half ?? null;
  return half === "b" ? point.family.mate_contact_part : point.family.contact_part;
}

export function listEnd(machine: Machine, wire: SizedWire, side: "a" | "b"): ListEnd {
  const id = wire[side];
  const point = machine.points.get(id);
  const crimpedFirst = wire.crimpedFirst === side || wire.crimpedFirst === "both";
  if (point === undefined) {
    return {
      id,
      kind: "splice",
      landingId: null,
      itemId: null,
      labels: null,
      pin: null,
      localId: id.slice(id.lastIndexOf(":") + 1),
      stripMm: machine.shop.numbers.splice_strip_mm,
      made: "splice",
      familyId: null,
      contactPartId: null,
      crimpedFirst: false,
    };
  }
  return {
    id,
    kind: "point",
    landingId: point.landingId,
    itemId: point.itemId,
    labels: machine.items.get(point.itemId)?.labels ?? null,
    pin: point.pin,
    localId: point.localId,
    stripMm: point.family.strip_mm,
    made: endKind(point.family),
    familyId: point.family.id,
    contactPartId: contactPart(machine, id),
    crimpedFirst,
  };
}

/** Wires of a harness in the order of their numbers. */
export function byNumber(harness: HarnessResult): readonly SizedWire[] {
  return [...harness.wires].sort((a, b) => a.number - b.number || compareText(a.id, b.id));
}

/** Wires of a harness by the point or splice that they end on, in the order of their numbers. */
export function wiresAtEnds(harness: HarnessResult): ReadonlyMap<string, readonly SizedWire[]> {
  const map = new Map<string, SizedWire[]>();
  for (const wire of byNumber(harness)) {
    for (const end of [wire.a, wire.b]) {
      const list = map.get(end);
      if (list === undefined) map.set(end, [wire]);
      else list.push(wire);
    }
  }
  return map;
}

/** Column and row of a cavity, from 0. */
export interface Cell {
  readonly column: number;
  readonly row: number;
}

/**
 * Where a cavity is when the housing is seen from the side where the wires enter, cavity 1 at the upper left: the
 * numbering of a header seen from its mating side. Half b of an in-line connector is the header's side, seen from
 * behind, so left and right change places.
 */
export function wireEntryCell(machine: Machine, landing: Landing, pin: number): Cell {
  const { connector } = landing;
  const family = machine.points.get(landing.pointIds[0] ?? "")?.family;
  if (connector === null || family === undefined) return { column: pin - 1, row: 0 };
  const grid = cavityGrid(connector, family);
  const at = cavityAt(grid, pin);
  const column = Math.round(at.xMm / grid.pitchMm);
  return {
    column: landing.half === "b" ? grid.columns - 1 - column : column,
    row: Math.round(at.yMm / grid.rowPitchMm),
  };
}
