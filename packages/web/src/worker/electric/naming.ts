import type { LineResult, PlacedElement } from "@pinwright/engine";
import { type Both, bothOf } from "../wires/wires-at.ts";

const byId = new WeakMap<LineResult["machine"]["elements"], ReadonlyMap<string, PlacedElement>>();

/** A placed element by its id. */
export function elementOf({ machine }: LineResult, id: string): PlacedElement | undefined {
  const known = byId.get(machine.elements) ?? new Map(machine.elements.map((one) => [one.id, one] as const));
  byId.set(machine.elements, known);
  return known.get(id);
}

/** What people call something electrical, and where it is. */
export interface Named {
  readonly id: string;
  /** Item that it is in; null for a supply without one. */
  readonly itemId: string | null;
  readonly label: Both;
}

/** An element by the name of its item. */
export function namedElement(line: LineResult, id: string): Named {
  const itemId = elementOf(line, id)?.itemId ?? null;
  const item = itemId === null ? undefined : line.machine.items.get(itemId);
  return { id, itemId, label: item?.labels ?? { en: "", zh: "" } };
}

/** A row of `supplies`, by its label; a source within a board by the board's name. */
export function namedSupply(line: LineResult, id: string): Named {
  const row = line.machine.book.tables.supplies.find((supply) => supply.id === id);
  if (row === undefined) return namedElement(line, id);
  const itemId = row.positive === null ? null : (line.machine.points.get(row.positive)?.itemId ?? null);
  return { id, itemId, label: bothOf(row) };
}

/** Kind of a load, as its element says. */
export type LoadKind = "coil" | "motor" | "led" | "load";

export function loadKindOf(line: LineResult, id: string): LoadKind {
  const kind = elementOf(line, id)?.row.kind;
  return kind === "coil" || kind === "motor" || kind === "led" ? kind : "load";
}
