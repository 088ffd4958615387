import type { BookRow, ShopNumbers } from "@pinwright/book";
import {
  choicesOf,
  type HarnessRoute,
  type Machine,
  type SizedBranch,
  type TreeNode,
} from "../model/index.ts";
import { type HolderSize, holderSize } from "./holder-size.ts";

/** What one pinboard is laid from. Orders of lists and maps carry no meaning. */
export interface PinboardInput {
  readonly harness: BookRow<"harnesses">;
  readonly rootId: string;
  readonly nodes: readonly TreeNode[];
  readonly branches: readonly SizedBranch[];
  /** By landing id. */
  readonly holderSizes: ReadonlyMap<string, HolderSize>;
  readonly numbers: Pick<ShopNumbers, "hand_room_mm" | "board_margin_mm" | "tie_spacing_mm">;
  /** Choices of the kind `peg` by their subject: `harness|node id` or `harness|branch id`. */
  readonly pegs: ReadonlyMap<string, BookRow<"choices">>;
}

/** The landing that a tree node stands for, or null for a waypoint. */
export const landingOf = (node: TreeNode): string | null =>
  node.kind === "landing" ? node.id.slice("landing:".length) : null;

/** Collects from a machine and the earlier stages what the pinboard of one harness depends on, and nothing else. */
export function pinboardInput(
  machine: Machine,
  harness: BookRow<"harnesses">,
  route: HarnessRoute,
  branches: readonly SizedBranch[],
): PinboardInput {
  const holderSizes = new Map<string, HolderSize>();
  for (const node of route.nodes) {
    const id = landingOf(node);
    const landing = id === null ? undefined : machine.landings.get(id);
    if (landing === undefined) continue;
    const first = landing.pointIds[0];
    const family = first === undefined ? undefined : machine.points.get(first)?.family;
    holderSizes.set(landing.id, holderSize(landing, family));
  }
  const { hand_room_mm, board_margin_mm, tie_spacing_mm } = machine.shop.numbers;
  return {
    harness,
    rootId: route.rootId,
    nodes: route.nodes,
    branches,
    holderSizes,
    numbers: { hand_room_mm, board_margin_mm, tie_spacing_mm },
    pegs: choicesOf(machine.choices.get("peg"), harness.id).own,
  };
}
