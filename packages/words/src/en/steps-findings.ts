import type { RuleWords } from "../finding.ts";

/** Wording of the rules of order, steps and stations. */
export const stepsFindings: Readonly<Record<string, RuleWords>> = {};
