import type { RuleWords } from "../finding.ts";

/** Wording of the rules of parts. */
export const partsFindings: Readonly<Record<string, RuleWords>> = {};
