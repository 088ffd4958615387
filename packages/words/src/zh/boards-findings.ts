import type { RuleWords } from "../finding.ts";

/** Wording of the rules of boards. */
export const boardsFindings: Readonly<Record<string, RuleWords>> = {};
