import type { RuleWords } from "../finding.ts";

/** Wording of the rules of runs. */
export const runsFindings: Readonly<Record<string, RuleWords>> = {};
