import type { RuleWords } from "../finding.ts";

/** Wording of the rules of what can catch the ball. */
export const ballFindings: Readonly<Record<string, RuleWords>> = {};
