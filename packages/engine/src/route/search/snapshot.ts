import type { Network, Option } from "./network.ts";
import type { RouteSolution } from "./problem.ts";
import { clearTree, ensureRooted, tie, useLane } from "./tree.ts";

/** A tree that can be gone back to. */
export interface Snapshot {
  readonly lanes: readonly number[];
  readonly at: readonly (Option | null)[];
  readonly price: number;
}

/** Keeps the tree as it is. @param price its price, as `treePrice` gave it */
export function takeSnapshot(net: Network, price: number): Snapshot {
  ensureRooted(net);
  const lanes: number[] = [];
  for (const { parentLane } of net.order) if (parentLane !== null) lanes.push(parentLane.index);
  return { lanes, at: net.terminals.map((t) => t.at), price };
}

/** Goes back to a tree of the same network. */
export function restore(net: Network, snapshot: Snapshot): void {
  clearTree(net);
  for (const index of snapshot.lanes) {
    const lane = net.lanes[index];
    if (lane !== undefined) useLane(net, lane);
  }
  net.terminals.forEach((terminal, i) => {
    const option = snapshot.at[i] ?? null;
    if (option !== null) tie(net, terminal, option);
  });
  net.stale = true;
}

/** Lays a solution into a network, also into one that was built with other surcharges. */
export function layIn(net: Network, solution: RouteSolution): void {
  clearTree(net);
  for (const index of solution.lanes) {
    const lane = net.lanes[index];
    if (lane !== undefined) useLane(net, lane);
  }
  const chosen = [...solution.attach, ...solution.spliceAt];
  net.terminals.forEach((terminal, i) => {
    const option = terminal.options.find((o) => o.index === chosen[i]);
    if (option !== undefined) tie(net, terminal, option);
  });
  net.stale = true;
}

/** The solution that a snapshot holds; null when a terminal is tied to nothing. */
export function solutionOf(net: Network, snapshot: Snapshot): RouteSolution | null {
  const attach: number[] = [];
  const spliceAt: number[] = [];
  for (const [i, terminal] of net.terminals.entries()) {
    const option = snapshot.at[i] ?? null;
    if (option === null) return null;
    if (terminal.tail) attach.push(option.index);
    else spliceAt.push(option.index);
  }
  return { lanes: [...snapshot.lanes].sort((a, b) => a - b), attach, spliceAt };
}
