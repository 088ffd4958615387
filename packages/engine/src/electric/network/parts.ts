import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { Machine, PlacedElement, Point, Wire } from "../../model/index.ts";

/** What the network asks of a wire, beside its length. */
export type NetworkWire = Pick<Wire, "id" | "a" | "b" | "wireType" | "netId" | "harnessId">;

interface Joint {
  readonly id: string;
  /** Node ids. */
  readonly a: string;
  readonly b: string;
}

export interface WirePart extends Joint {
  readonly kind: "wire";
  readonly wire: NetworkWire;
}
/** A mated or landed contact, between the wires' side and the item's, or between the halves of an in-line connector. */
export interface ContactPart extends Joint {
  readonly kind: "contact";
  readonly family: BookRow<"connector_families">;
}
export interface ElementPart extends Joint {
  readonly kind: "element";
  readonly element: PlacedElement;
}
/** Power between two points: a row of `supplies`, or a source within a board that no row is about. */
export interface SourcePart extends Joint {
  readonly kind: "source";
  readonly supply: BookRow<"supplies"> | null;
  readonly element: PlacedElement | null;
  readonly volts: number;
  readonly tolerancePct: number;
}
export type Part = WirePart | ContactPart | ElementPart | SourcePart;

/** Node on the item's side of a contact. */
export const itemNode = (pointId: string): string => pointId;
/** Node on the wires' side of a contact. */
export const wireNode = (pointId: string): string => `wire:${pointId}`;
/** Node at the end of a wire: a splice, or the wires' side of a contact. */
export const endNode = (machine: Machine, end: string): string =>
  machine.points.has(end) ? wireNode(end) : end;

/** Kinds of elements that no direct current passes through, or too little to matter. */
const OPEN: ReadonlySet<BookRow<"elements">["kind"]> = new Set(["input", "capacitor", "speaker"]);

/** Every part of the machine that direct current can pass through, wires first, each kind in code-point order. */
export function partsOf(machine: Machine, wires: readonly NetworkWire[]): readonly Part[] {
  const wired = new Set(wires.flatMap((wire) => [wire.a, wire.b]));
  const sorted = wires.toSorted((p, q) => compareText(p.id, q.id));
  return [
    ...sorted.map(
      (wire): WirePart => ({
        id: wire.id,
        kind: "wire",
        a: endNode(machine, wire.a),
        b: endNode(machine, wire.b),
        wire,
      }),
    ),
    ...[...wired].sort(compareText).flatMap((pointId) => contactOf(machine, wired, pointId)),
    ...machine.elements.flatMap((element) => elementPart(machine, element)),
    ...bareSupplies(machine),
  ];
}

function contactOf(machine: Machine, wired: ReadonlySet<string>, pointId: string): readonly ContactPart[] {
  const point = machine.points.get(pointId);
  if (point === undefined) return [];
  const mate = matedPoint(machine, point);
  if (mate === null)
    return [
      { id: pointId, kind: "contact", a: wireNode(pointId), b: itemNode(pointId), family: point.family },
    ];
  // The two halves meet in one contact; it goes by the lower of their ids.
  if (!wired.has(mate) || compareText(mate, pointId) < 0) return [];
  return [{ id: pointId, kind: "contact", a: wireNode(pointId), b: wireNode(mate), family: point.family }];
}

/** The point of the other half of an in-line connector; null for any other point. */
function matedPoint(machine: Machine, point: Point): string | null {
  const half = machine.landings.get(point.landingId)?.half ?? null;
  return half === null ? null : `${point.itemId}:${half === "a" ? "b" : "a"}.${point.pin}`;
}

const DEFAULT_TOLERANCE_PCT = 0;

function elementPart(machine: Machine, element: PlacedElement): readonly (ElementPart | SourcePart)[] {
  const { id, fromPointId, toPointId, row } = element;
  if (OPEN.has(row.kind) || fromPointId === toPointId) return [];
  const joint = { id, a: itemNode(fromPointId), b: itemNode(toPointId) };
  if (row.kind !== "source") return [{ ...joint, kind: "element", element }];
  const supply =
    machine.book.tables.supplies.find((s) => s.positive === fromPointId && s.negative === toPointId) ?? null;
  const volts = supply?.volts ?? row.volt;
  if (volts === null) return [];
  const tolerancePct = supply?.tolerance_pct ?? DEFAULT_TOLERANCE_PCT;
  return [{ ...joint, kind: "source", supply, element, volts, tolerancePct }];
}

/** Supplies whose two points no source element joins. */
function bareSupplies(machine: Machine): readonly SourcePart[] {
  const joined = new Set(
    machine.elements.flatMap(({ row, fromPointId, toPointId }) =>
      row.kind === "source" ? [`${fromPointId} ${toPointId}`] : [],
    ),
  );
  return machine.book.tables.supplies.flatMap((supply): readonly SourcePart[] => {
    const { id, positive, negative, volts, tolerance_pct: tolerancePct } = supply;
    if (positive === null || negative === null || positive === negative) return [];
    if (joined.has(`${positive} ${negative}`)) return [];
    const [a, b] = [itemNode(positive), itemNode(negative)];
    return [{ id, kind: "source", a, b, supply, element: null, volts, tolerancePct }];
  });
}
