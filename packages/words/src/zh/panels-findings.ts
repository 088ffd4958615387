import type { RuleWords } from "../finding.ts";

/** Wording of the rules of panels. */
export const panelsFindings: Readonly<Record<string, RuleWords>> = {};
