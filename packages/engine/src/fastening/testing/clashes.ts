import type { Finding, HarnessResult } from "../../model/index.ts";
import { createMachine, type SomeTables } from "../../testing/book.ts";
import { ClashSolver } from "../clash/clash-solver.ts";
import { SolidsSolver } from "../solids/solids-solver.ts";

/** The panel that everything of a test stands on, unless it says otherwise. */
export const PANEL = { id: "pf", width_mm: 500, height_mm: 1000, thickness_mm: 13 } as const;
export const TOP = { panel: "pf", side: "top" } as const;

export const NO_HARNESSES: ReadonlyMap<string, HarnessResult> = new Map();

/** What stands in the way in a machine of these rows, without harnesses. */
export function findClashes(some: SomeTables): readonly Finding[] {
  const machine = createMachine({ panels: [PANEL], ...some });
  return new ClashSolver().solve(machine, new SolidsSolver().solve(machine), NO_HARNESSES);
}

/** Findings by rule and subjects. */
export const rulesOf = (findings: readonly Finding[]): readonly string[] =>
  findings.map(({ rule, subjects }) => `${rule} ${subjects.join(" ")}`);
