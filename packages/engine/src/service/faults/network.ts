import { compareText } from "@pinwright/kernel";
import { electricNetwork, type NetworkWire } from "../../electric/index.ts";
import type { Machine, PlacedElement } from "../../model/index.ts";

/** Up to this a resistor passes a signal or a supply as a wire does: shunts, commons, chokes (common practice, no source). */
const CONDUCTS_MOST_OHM = 100;

/** What joins two nodes: a wire, a mated or landed contact, or an element. */
export interface Joint {
  readonly id: string;
  readonly kind: "wire" | "contact" | "element";
  readonly a: number;
  readonly b: number;
  /** Null for a wire and a contact. */
  readonly element: PlacedElement | null;
}

/** Power between two nodes, alive as long as the item that makes it is fed. */
interface ServiceSource {
  readonly id: string;
  readonly itemId: string;
  readonly plus: number;
  readonly minus: number;
}

/** The machine as whoever looks for a fault sees it: what leads, and what lies between. */
export interface ServiceNetwork {
  /** Name of each node: a point on the item's side, `wire:` and the point on the wires' side, or a splice. */
  readonly nodes: readonly string[];
  readonly nodeOf: ReadonlyMap<string, number>;
  readonly joints: readonly Joint[];
  readonly jointOf: ReadonlyMap<string, number>;
  /** By joint: it leads at all times while it is sound. */
  readonly leads: readonly boolean[];
  readonly sources: readonly ServiceSource[];
  /** Joints of the inputs on which boards hear each other: nets of class data. */
  readonly messages: readonly number[];
}

/** Net class on which boards speak to each other. */
const MESSAGES = "data";

/**
 * What leads in a machine and what lies between, with every wire, contact, splice and element by itself, so that each can
 * fail by itself. Contacts that are closed whenever the machine is on lead; so do links, fuses and small resistors.
 */
export function serviceNetwork(machine: Machine, wires: readonly NetworkWire[]): ServiceNetwork {
  const { parts, units } = electricNetwork(machine, wires);
  const nodes: string[] = [];
  const nodeOf = new Map<string, number>();
  const node = (name: string): number => {
    const known = nodeOf.get(name);
    if (known !== undefined) return known;
    nodeOf.set(name, nodes.length);
    nodes.push(name);
    return nodes.length - 1;
  };
  const joints: Joint[] = [];
  const leads: boolean[] = [];
  const sources: ServiceSource[] = [];
  const join = (joint: Joint, isLeading: boolean): void => {
    joints.push(joint);
    leads.push(isLeading);
  };
  for (const part of parts) {
    const ends = { id: part.id, a: node(part.a), b: node(part.b) };
    if (part.kind === "wire" || part.kind === "contact")
      join({ ...ends, kind: part.kind, element: null }, true);
    else if (part.kind === "element")
      join(
        { ...ends, kind: "element", element: part.element },
        isLeading(part.element) || (part.element.row.kind === "contact" && units.closed.has(part.id)),
      );
    else
      sources.push({
        id: part.id,
        itemId: part.element?.itemId ?? part.a.split(":", 1)[0] ?? "",
        plus: ends.a,
        minus: ends.b,
      });
  }
  const known = new Set(joints.map(({ id }) => id));
  // What passes no direct current still reads and sounds: inputs and speakers.
  const rest = machine.elements
    .filter(({ id, row }) => !known.has(id) && (row.kind === "input" || row.kind === "speaker"))
    .toSorted((p, q) => compareText(p.id, q.id));
  for (const element of rest)
    join(
      {
        id: element.id,
        kind: "element",
        a: node(element.fromPointId),
        b: node(element.toPointId),
        element,
      },
      false,
    );
  const netOf = new Map(machine.ends.map(({ point, net }) => [point, machine.nets.get(net)]));
  const isMessage = ({ element }: Joint): boolean =>
    element?.row.kind === "input" &&
    [element.fromPointId, element.toPointId].some((point) => netOf.get(point)?.class === MESSAGES);
  return {
    nodes,
    nodeOf,
    joints,
    messages: joints.flatMap((joint, n) => (isMessage(joint) ? [n] : [])),
    jointOf: new Map(joints.map(({ id }, n) => [id, n])),
    leads,
    sources: sources.sort((p, q) => compareText(p.id, q.id)),
  };
}

function isLeading({ row }: PlacedElement): boolean {
  if (row.kind === "link" || row.kind === "fuse") return true;
  return row.kind === "resistor" && (row.ohm ?? 0) <= CONDUCTS_MOST_OHM;
}
