import type { BookRow, ShopNumbers } from "@pinwright/book";
import type { HarnessWires, Machine } from "../../model/index.ts";
import { createMachine, createShop, type SomeTables } from "../../testing/book.ts";
import { createWiring, type TestWiring } from "../../testing/wiring.ts";
import { wireHarness } from "../../wire/index.ts";
import type { RoutedHarness } from "../checks/facts.ts";
import { routeHarness } from "../route-harness.ts";

type Some<N extends "waypoints" | "lanes" | "crossings" | "choices"> = Partial<BookRow<N>>;

/** A waypoint under the playfield, unless it says otherwise. */
export const waypoint = (
  id: string,
  x: number,
  y: number,
  more: Some<"waypoints"> = {},
): Some<"waypoints"> => ({
  id,
  panel: "pf",
  side: "under",
  x_mm: x,
  y_mm: y,
  ...more,
});

/** A lane `l.from-to`. */
export const lane = (from: string, to: string, more: Some<"lanes"> = {}): Some<"lanes"> => ({
  id: `l.${from}-${to}`,
  from,
  to,
  max_diameter_mm: 40,
  ...more,
});

export const crossing = (from: string, to: string, more: Some<"crossings"> = {}): Some<"crossings"> => ({
  id: `x.${from}-${to}`,
  from,
  to,
  kind: "hinge",
  max_diameter_mm: 40,
  ...more,
});

/** A machine with wires and lanes. */
export const createRouted = (
  wiring: TestWiring,
  lanes: SomeTables,
  numbers: Partial<ShopNumbers> = {},
): Machine => createMachine(createWiring({ ...wiring, more: lanes }), createShop({}, numbers));

/** Harness `h1` with its route. */
export const routed = (machine: Machine, harnessId = "h1"): RoutedHarness => {
  const wires: HarnessWires = wireHarness(machine, harnessId);
  return { wires, route: routeHarness(machine, wires, { steps: 50_000 }) };
};
