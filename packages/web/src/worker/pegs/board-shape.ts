import type { BoardPoint, HarnessResult, Machine, Pinboard } from "@pinwright/engine";

/** A place on a pinboard that can be moved by hand. */
interface BoardNode {
  /** Tree node id: a waypoint, or `landing:` and a landing. */
  readonly id: string;
  readonly at: BoardPoint;
  readonly peg: boolean;
  readonly isHolder: boolean;
  /** Pinned by a person: by whom and why. */
  readonly pinned: { readonly by: string; readonly reason: string } | null;
}

/** A pinboard in lines, for handling it: board millimetres, origin lower left, y up. */
export interface BoardShape {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly nodes: readonly BoardNode[];
  readonly branches: readonly {
    readonly id: string;
    readonly line: readonly BoardPoint[];
    readonly laidMm: number;
  }[];
  readonly holders: readonly {
    readonly landingId: string;
    readonly at: BoardPoint;
    readonly towardDeg: number;
    readonly widthMm: number;
    readonly depthMm: number;
  }[];
}

export function boardShape(machine: Machine, harness: HarnessResult, pinboard: Pinboard): BoardShape {
  const choices = machine.choices.get("peg");
  const laid = new Map(harness.branches.map((branch) => [branch.id, branch.bundle.laidMm]));
  return {
    widthMm: pinboard.widthMm,
    heightMm: pinboard.heightMm,
    nodes: pinboard.nodes.map(({ id, at, peg }) => {
      const choice = choices?.get(`${pinboard.harnessId}|${id}`);
      return {
        id,
        at,
        peg,
        isHolder: id.startsWith("landing:"),
        pinned: choice?.held === "pinned" ? { by: choice.by, reason: choice.reason } : null,
      };
    }),
    branches: pinboard.branches.map(({ id, line }) => ({ id, line, laidMm: laid.get(id) ?? 0 })),
    holders: pinboard.holders,
  };
}
