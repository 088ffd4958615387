import type { Finding, Machine, PanelsResult } from "../model/index.ts";

export interface Panelled {
  readonly panels: PanelsResult;
  readonly findings: readonly Finding[];
}

/** No panels yet. */
export const NO_PANELS: PanelsResult = { cuts: [], fits: [] };

/** The sizes that panels are cut to and the fits of their box, with a memory. */
export class PanelsSolver {
  solve(_machine: Machine): Panelled {
    return { panels: NO_PANELS, findings: [] };
  }

  sweep(): void {}
}
