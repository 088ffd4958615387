import type { HarnessResult } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** Where the wires of one harness leave their lane for a housing or for the terminals of a device. */
export interface LayoutTail {
  readonly id: string;
  readonly harnessId: string;
  readonly number: number;
  readonly panelId: string;
  readonly side: "top" | "under";
  /** The waypoint. */
  readonly fromId: string;
  readonly fromXMm: number;
  readonly fromYMm: number;
  /** The landing. */
  readonly itemId: string;
  readonly toXMm: number;
  readonly toYMm: number;
  readonly laidMm: number;
}

const known = new WeakMap<HarnessResult["branches"], readonly LayoutTail[]>();

/** Tails of one harness on all panels. */
function tailsOf({ machine }: Model["line"], result: HarnessResult): readonly LayoutTail[] {
  const before = known.get(result.branches);
  if (before !== undefined) return before;
  const nodes = new Map(result.route.nodes.map((node) => [node.id, node]));
  const tails = result.branches.flatMap((branch): LayoutTail[] => {
    if (branch.kind !== "tail") return [];
    const ends = [nodes.get(branch.a), nodes.get(branch.b)];
    const from = ends.find((node) => node?.kind === "waypoint");
    const to = ends.find((node) => node?.kind === "landing");
    const landing = machine.landings.get(branch.id.slice("tail:".length));
    if (from === undefined || to === undefined || landing === undefined) return [];
    return [
      {
        id: `${result.harness.id} ${branch.id}`,
        harnessId: result.harness.id,
        number: result.harness.number,
        panelId: to.place.panelId,
        side: to.place.side,
        fromId: from.id,
        fromXMm: from.place.xMm,
        fromYMm: from.place.yMm,
        itemId: landing.itemId,
        toXMm: to.place.xMm,
        toYMm: to.place.yMm,
        laidMm: branch.bundle.laidMm,
      },
    ];
  });
  known.set(result.branches, tails);
  return tails;
}

/** Tails on one panel; they follow what is dragged. */
export const layoutTails = view<{ readonly panelId: string }, LayoutTail>({
  uses: ({ line }) => [...line.harnesses.values()].map((result) => result.branches),
  entries: ({ line }, { panelId }) =>
    new Map(
      [...line.harnesses.values()].flatMap((result) =>
        tailsOf(line, result).flatMap((tail) => (tail.panelId === panelId ? [[tail.id, tail] as const] : [])),
      ),
    ),
});
