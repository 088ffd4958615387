import type { ElectricSolution, Machine, PlacedElement } from "../../model/index.ts";
import { conductors } from "./conductors.ts";

/** Nominal volts over an element while it is on, by the nets at its two sides; null when they say none. */
export function loadVolts(machine: Machine, element: PlacedElement): number | null {
  const volts = netVolts(machine, element);
  return volts.length === 0 ? null : Math.max(...volts, 0) - Math.min(...volts, 0);
}

function netsAt(
  machine: Machine,
  element: PlacedElement,
): readonly { volts: number | null; supply: string | null }[] {
  const c = conductors(machine);
  return [element.fromPointId, element.toPointId].flatMap((point) => c.nets[c.of.get(point) ?? -1] ?? []);
}

function netVolts(machine: Machine, element: PlacedElement): readonly number[] {
  const supplies = machine.book.tables.supplies;
  return netsAt(machine, element).flatMap(
    ({ volts, supply }) => volts ?? supplies.find((row) => row.id === supply)?.volts ?? [],
  );
}

/** Largest tolerance of the supplies that the nets at an element belong to, as a fraction. */
function tolerance(machine: Machine, element: PlacedElement): number {
  const supplies = machine.book.tables.supplies;
  const own = netsAt(machine, element).flatMap(
    ({ supply }) => supplies.find((row) => row.id === supply)?.tolerance_pct ?? [],
  );
  return Math.max(0, ...own) / 100;
}

/**
 * Most current in A that a load draws. From the solved networks when they are given; else a coil's voltage at the
 * upper limit of its supply ÷ its cold resistance (Ohm's law), and of an LED, a motor or a load the current that its
 * type states. Null when neither is known.
 */
export function loadAmps(
  machine: Machine,
  element: PlacedElement,
  solution: ElectricSolution | null,
): number | null {
  const solved = solution?.loads.get(element.id)?.amps.most;
  if (solved !== undefined) return solved;
  const { row } = element;
  if (row.kind !== "coil") return row.amp;
  const volts = loadVolts(machine, element);
  return volts === null || row.ohm === null || row.ohm <= 0
    ? null
    : (volts * (1 + tolerance(machine, element))) / row.ohm;
}
