import type { BoardsResult, Finding, Machine } from "../model/index.ts";

export interface Registered {
  readonly boards: BoardsResult;
  readonly findings: readonly Finding[];
}

/** No boards yet. */
export const NO_BOARDS: BoardsResult = { register: [] };

/** The register of boards, with a memory. */
export class BoardsSolver {
  solve(_machine: Machine): Registered {
    return { boards: NO_BOARDS, findings: [] };
  }

  sweep(): void {}
}
