import type { HarnessResult, LineResult, PlacedElement, SizedWire } from "@pinwright/engine";
import { mateOf } from "@pinwright/engine";

/** A wire, with the harness that it lies in. */
export interface LaidWire {
  readonly wire: SizedWire;
  readonly harness: HarnessResult;
}

/** One way on from a point or splice. */
export type Joint =
  | { readonly kind: "wire"; readonly id: string; readonly other: string; readonly laid: LaidWire }
  /** To the same cavity of the other half of an in-line connector. */
  | { readonly kind: "mate"; readonly id: string; readonly other: string }
  | {
      readonly kind: "element";
      readonly id: string;
      readonly other: string;
      readonly element: PlacedElement;
    };

/** The machine as a meter sees it: points, and what joins them. */
export interface CircuitGraph {
  /** In the order mates, elements as in the book, wires by harness and number. */
  readonly joints: ReadonlyMap<string, readonly Joint[]>;
  /** What wires, mated contacts and links make one, by point or splice. */
  readonly conductorOf: ReadonlyMap<string, number>;
  /** Elements at each conductor, links left out; one with both ends there twice. */
  readonly elementsAt: readonly (readonly PlacedElement[])[];
}

/** A link, or a resistor so small that it only measures: what is on both sides of it is one rail. */
const SHUNT_MOST_OHM = 1;

const isLink = ({ row }: PlacedElement): boolean => row.kind === "link";
export const isShunt = ({ row }: PlacedElement): boolean =>
  row.kind === "resistor" && row.ohm !== null && row.ohm <= SHUNT_MOST_OHM;
/** Elements that a signal or a current is switched or read by. */
export const isControl = ({ row }: PlacedElement): boolean => row.kind === "driver" || row.kind === "input";

/** All joints of a machine with its wires. */
export function circuitGraph(line: LineResult): CircuitGraph {
  const { machine } = line;
  const joints = new Map<string, Joint[]>();
  const join = (from: string, joint: Joint): void => {
    const own = joints.get(from);
    if (own === undefined) joints.set(from, [joint]);
    else own.push(joint);
  };
  for (const point of machine.points.values()) {
    const mate = mateOf(machine, point.id);
    if (mate !== null && machine.points.has(mate))
      join(point.id, { kind: "mate", id: `mate ${point.id}`, other: mate });
  }
  for (const element of machine.elements) {
    const { id, fromPointId, toPointId } = element;
    join(fromPointId, { kind: "element", id, other: toPointId, element });
    if (toPointId !== fromPointId) join(toPointId, { kind: "element", id, other: fromPointId, element });
  }
  for (const harness of line.harnesses.values())
    for (const wire of [...harness.wires].sort((a, b) => a.number - b.number)) {
      const laid = { wire, harness };
      join(wire.a, { kind: "wire", id: wire.id, other: wire.b, laid });
      join(wire.b, { kind: "wire", id: wire.id, other: wire.a, laid });
    }
  return { joints, ...conductorsOf(joints, machine.elements) };
}

function conductorsOf(
  joints: ReadonlyMap<string, readonly Joint[]>,
  elements: readonly PlacedElement[],
): Pick<CircuitGraph, "conductorOf" | "elementsAt"> {
  const conductorOf = new Map<string, number>();
  let count = 0;
  for (const start of joints.keys()) {
    if (conductorOf.has(start)) continue;
    const queue = [start];
    conductorOf.set(start, count);
    for (const at of queue)
      for (const joint of joints.get(at) ?? []) {
        if ((joint.kind === "element" && !isLink(joint.element)) || conductorOf.has(joint.other)) continue;
        conductorOf.set(joint.other, count);
        queue.push(joint.other);
      }
    count++;
  }
  const elementsAt: PlacedElement[][] = Array.from({ length: count }, () => []);
  for (const element of elements) {
    if (isLink(element)) continue;
    elementsAt[conductorOf.get(element.fromPointId) ?? -1]?.push(element);
    elementsAt[conductorOf.get(element.toPointId) ?? -1]?.push(element);
  }
  return { conductorOf, elementsAt };
}
