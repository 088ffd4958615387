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
  /** The same nodes by number: those of all parts are counted from 0. */
  readonly from: number;
  readonly to: number;
}

interface WirePart extends Joint {
  readonly kind: "wire";
  readonly wire: NetworkWire;
}
/** A mated or landed contact, between the wires' side and the item's, or between the halves of an in-line connector. */
interface ContactPart extends Joint {
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
const endNode = (machine: Machine, end: string): string => (machine.points.has(end) ? wireNode(end) : end);

/** Kinds of elements that no direct current passes through, or too little to matter. */
const OPEN: ReadonlySet<BookRow<"elements">["kind"]> = new Set(["input", "capacitor", "speaker"]);

/** Parts with the number of nodes that they join. */
export interface Parts {
  readonly parts: readonly Part[];
  readonly nodes: number;
}

/**
 * Every part of the machine that direct current can pass through: wires, contacts, elements, and supplies by
 * themselves; each kind in code-point order, so that the order of rows has no part in any result.
 */
export function partsOf(machine: Machine, wires: readonly NetworkWire[]): Parts {
  const index = new Map<string, number>();
  const number = (node: string): number => {
    const known = index.get(node);
    if (known !== undefined) return known;
    index.set(node, index.size);
    return index.size - 1;
  };
  const joint = (id: string, a: string, b: string): Joint => ({ id, a, b, from: number(a), to: number(b) });
  const wired = new Set<string>();
  for (const { a, b } of wires) wired.add(a).add(b);
  const parts: Part[] = byId(wires).map((wire) => ({
    ...joint(wire.id, endNode(machine, wire.a), endNode(machine, wire.b)),
    kind: "wire",
    wire,
  }));
  for (const pointId of [...wired].sort(compareText)) {
    const contact = contactOf(machine, wired, pointId, joint);
    if (contact !== null) parts.push(contact);
  }
  for (const element of byId(machine.elements)) {
    const part = elementPart(machine, element, joint);
    if (part !== null) parts.push(part);
  }
  parts.push(...bareSupplies(machine, joint));
  return { parts, nodes: index.size };
}

const byId = <T extends { readonly id: string }>(rows: readonly T[]): readonly T[] =>
  rows.toSorted((p, q) => compareText(p.id, q.id));

type MakeJoint = (id: string, a: string, b: string) => Joint;

function contactOf(
  machine: Machine,
  wired: ReadonlySet<string>,
  pointId: string,
  joint: MakeJoint,
): ContactPart | null {
  const point = machine.points.get(pointId);
  if (point === undefined) return null;
  const { family } = point;
  const mate = matedPoint(machine, point);
  if (mate === null)
    return { ...joint(pointId, wireNode(pointId), itemNode(pointId)), kind: "contact", family };
  // The two halves meet in one contact; it goes by the lower of their ids.
  if (!wired.has(mate) || compareText(mate, pointId) < 0) return null;
  return { ...joint(pointId, wireNode(pointId), wireNode(mate)), kind: "contact", family };
}

/** The point of the other half of an in-line connector; null for any other point. */
function matedPoint(machine: Machine, point: Point): string | null {
  const half = machine.landings.get(point.landingId)?.half ?? null;
  return half === null ? null : `${point.itemId}:${half === "a" ? "b" : "a"}.${point.pin}`;
}

/** Of a source within a board that no row of `supplies` is about. */
const BOARD_TOLERANCE_PCT = 0;

function elementPart(
  machine: Machine,
  element: PlacedElement,
  joint: MakeJoint,
): ElementPart | SourcePart | null {
  const { id, fromPointId, toPointId, row } = element;
  if (OPEN.has(row.kind) || fromPointId === toPointId) return null;
  if (row.kind !== "source")
    return { ...joint(id, itemNode(fromPointId), itemNode(toPointId)), kind: "element", element };
  const supply =
    machine.book.tables.supplies.find((s) => s.positive === fromPointId && s.negative === toPointId) ?? null;
  const volts = supply?.volts ?? row.volt;
  if (volts === null) return null;
  return {
    ...joint(id, itemNode(fromPointId), itemNode(toPointId)),
    kind: "source",
    supply,
    element,
    volts,
    tolerancePct: supply?.tolerance_pct ?? BOARD_TOLERANCE_PCT,
  };
}

/** Supplies whose two points no source element joins. */
function bareSupplies(machine: Machine, joint: MakeJoint): readonly SourcePart[] {
  const joined = new Set(
    machine.elements.flatMap(({ row, fromPointId, toPointId }) =>
      row.kind === "source" ? [`${fromPointId} ${toPointId}`] : [],
    ),
  );
  return byId(machine.book.tables.supplies).flatMap((supply): readonly SourcePart[] => {
    const { id, positive, negative, volts, tolerance_pct: tolerancePct } = supply;
    if (positive === null || negative === null || positive === negative) return [];
    if (joined.has(`${positive} ${negative}`)) return [];
    const ends = joint(id, itemNode(positive), itemNode(negative));
    return [{ ...ends, kind: "source", supply, element: null, volts, tolerancePct }];
  });
}
