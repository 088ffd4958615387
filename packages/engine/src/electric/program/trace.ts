import { compareText } from "@pinwright/kernel";
import type { PlacedElement } from "../../model/index.ts";
import type { Conductors, Terminal } from "./conductors.ts";

/** A driver or an input of a board that switches or reads an element. */
export interface Control {
  readonly element: PlacedElement;
  /** End of the driver or input that the signal is on; its other end is on a rail or a common. */
  readonly end: "from" | "to";
  /** Point of that end. */
  readonly pointId: string;
  /** Side of the traced element that leads there. */
  readonly side: "from" | "to";
  /** Elements that lie between. */
  readonly passed: number;
}

/** What hangs on one element. */
export interface Trace {
  /** In code-point order of the controls' elements; none twice. */
  readonly controls: readonly Control[];
  /** For each side: whether a rail, or another load in series, is reached without passing a driver or an input. */
  readonly feeds: Readonly<Record<"from" | "to", { readonly rail: boolean; readonly load: boolean }>>;
}

/** Kinds that a signal or a load's current passes through on its way. */
const PASSED: ReadonlySet<string> = new Set(["resistor", "fuse", "diode"]);
/** Kinds that are passed only where they are in series: nothing else hangs on the conductor between. */
const SERIES: ReadonlySet<string> = new Set(["contact", "coil", "led", "motor", "load", "speaker"]);
const LOADS: ReadonlySet<string> = new Set(["coil", "led", "motor", "load", "speaker"]);

const isControl = ({ element }: Terminal): boolean =>
  element.row.kind === "driver" || element.row.kind === "input";

/** Whether the current of an element that flows this way gets through: a diode leads from anode to cathode. */
const leads = ({ element, end }: Terminal, outward: boolean): boolean =>
  element.row.kind !== "diode" || (end === "from") === outward;

interface Reach {
  readonly visited: Set<number>;
  readonly found: { readonly terminal: Terminal; readonly at: number; readonly passed: number }[];
  rail: boolean;
  load: boolean;
}

/**
 * Goes from one side of an element through everything in series, up to rails. `outward`: the current leaves the
 * element on this side, which decides the way through diodes.
 */
function reach(c: Conductors, own: PlacedElement, start: number, barred: number, outward: boolean): Reach {
  const r: Reach = { visited: new Set([start]), found: [], rail: false, load: false };
  const queue: { at: number; by: PlacedElement; before: number; passed: number }[] = [
    { at: start, by: own, before: barred, passed: 0 },
  ];
  for (const { at, by, before, passed } of queue) {
    if (c.isRail[at] === true) {
      r.rail = true;
      continue;
    }
    const here = (c.terminals[at] ?? []).filter(
      (t) => t.element !== by && t.element.row.kind !== "capacitor",
    );
    const controls = here.filter(isControl);
    for (const terminal of controls) r.found.push({ terminal, at, passed });
    // What lies beside the element that led here, such as its flyback diode, does not branch its current off.
    const rest = here.filter((t) => !isControl(t) && t.other !== before);
    for (const t of rest) {
      const { kind } = t.element.row;
      if (LOADS.has(kind)) r.load = true;
      const isPassed =
        (PASSED.has(kind) && leads(t, outward)) ||
        (SERIES.has(kind) && controls.length === 0 && rest.length === 1);
      if (!isPassed || t.other === barred || r.visited.has(t.other)) continue;
      r.visited.add(t.other);
      queue.push({ at: t.other, by: t.element, before: at, passed: passed + 1 });
    }
  }
  return r;
}

/** Whether of both ends of a control the first carries the signal: a common has the more drivers and inputs on it. */
function carriesSignal(c: Conductors, one: Control, two: Control): boolean {
  const rank = ({ pointId, end }: Control): number => {
    const at = c.of.get(pointId) ?? -1;
    const shared = (c.terminals[at] ?? []).filter(isControl).length;
    return (c.isCommon[at] === true ? 1e6 : 0) + 2 * shared + (end === "from" ? 0 : 1);
  };
  return rank(one) < rank(two);
}

/**
 * Every driver and input that switches or reads an element, found along wires, in-line connectors, links and whatever
 * lies in series: fuses, resistors, diodes in the direction of the current, contacts, loads. A driver or input counts
 * when the loop closes: its other end is on a rail, on a common, or on what the element's other side leads to. So a
 * switch at a common is not read by the inputs of its neighbours, and a motor in a bridge has all four drivers.
 */
export function trace(c: Conductors, element: PlacedElement): Trace {
  const from = c.of.get(element.fromPointId) ?? -1;
  const to = c.of.get(element.toPointId) ?? -1;
  const found = new Map<string, Control>();
  const feeds = { from: { rail: false, load: false }, to: { rail: false, load: false } };
  for (const forward of [true, false]) {
    const sides = {
      from: reach(c, element, from, to, !forward),
      to: reach(c, element, to, from, forward),
    };
    for (const side of ["from", "to"] as const) {
      const other = sides[side === "from" ? "to" : "from"];
      feeds[side].rail ||= sides[side].rail;
      feeds[side].load ||= sides[side].load;
      for (const { terminal, at, passed } of sides[side].found) {
        const closes =
          other.visited.has(terminal.other) ||
          (c.isCommon[terminal.other] === true && c.isCommon[at] !== true);
        const { end, pointId } = terminal;
        const control: Control = { element: terminal.element, end, pointId, side, passed };
        const known = found.get(terminal.element.id);
        if (closes && (known === undefined || carriesSignal(c, control, known)))
          found.set(terminal.element.id, control);
      }
    }
  }
  const controls = [...found.values()].sort((a, b) => compareText(a.element.id, b.element.id));
  return { controls, feeds };
}
