import { SharedMemory } from "@pinwright/kernel";
import type { Machine, PlacedElement } from "../../model/index.ts";
import { type Conductors, conductors } from "./conductors.ts";
import { type Trace, trace } from "./trace.ts";

/** An element with what switches or reads it. */
export interface Traced extends Trace {
  readonly element: PlacedElement;
}

const known = new SharedMemory<Conductors, ReadonlyMap<string, Traced>>();

/** Kinds that a program can have to do with, in any item. */
const KINDS: ReadonlySet<string> = new Set(["contact", "coil", "motor", "led", "speaker"]);

/** Net classes on which boards speak to each other: what is read there is a message, not a point. */
const MESSAGES: ReadonlySet<string> = new Set(["data", "audio"]);

function isTraced(c: Conductors, { row, fromPointId, toPointId }: PlacedElement): boolean {
  if (KINDS.has(row.kind)) return true;
  // A resistor that something moves is a knob; a load that is a device may be switched.
  if (row.kind === "resistor") return row.control !== null && row.control !== "";
  if (row.kind === "load") return row.board_type === null;
  if (row.kind !== "driver" && row.kind !== "input") return false;
  return ![fromPointId, toPointId].some((point) =>
    (c.nets[c.of.get(point) ?? -1] ?? []).some((net) => MESSAGES.has(net.class)),
  );
}

/**
 * Every element that a program may drive or read, by its id, with the drivers and inputs that do: contacts, coils,
 * motors, LEDs and speakers, loads that are devices, variable resistors, and the drivers and inputs of boards that
 * other boards read or drive other than by messages. Machines that differ in places alone share the answer.
 */
export function traces(machine: Machine): ReadonlyMap<string, Traced> {
  const c = conductors(machine);
  return known.ask(c, [], () => {
    const found = new Map<string, Traced>();
    for (const element of machine.elements)
      if (isTraced(c, element)) found.set(element.id, { element, ...trace(c, element) });
    return found;
  });
}
