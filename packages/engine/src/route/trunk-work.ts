import type { HarnessRoute, HarnessWires, Machine } from "../model/index.ts";
import { type RouteOptions, routeOn } from "./route-harness.ts";

/**
 * The route of a harness on the trunk that its designer drew, with tails and splices placed as well as that trunk
 * allows: its `work` stands beside that of `routeHarness`, and `unreached` names what the trunk does not reach. A
 * lane that no wire needs costs nothing; of a loop in the trunk the better part is used.
 * @param laneIds lanes and crossings of the trunk
 */
export function trunkWork(
  machine: Machine,
  harness: HarnessWires,
  laneIds: Iterable<string>,
  options: RouteOptions = {},
): HarnessRoute {
  return routeOn(
    machine,
    harness,
    [{ only: new Set(laneIds), rather: null, attach: new Map(), splices: new Map() }],
    options,
  );
}
