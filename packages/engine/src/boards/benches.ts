import type { Machine } from "../model/index.ts";

/** People at the board benches of the shop, who can stuff in line; at least 1. */
export function stuffingBenches(machine: Machine): number {
  const people = machine.shop.tables.benches
    .filter((bench) => bench.kind === "board")
    .reduce((sum, bench) => sum + bench.people, 0);
  return Math.max(1, people);
}
