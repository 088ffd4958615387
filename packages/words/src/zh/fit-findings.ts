import type { RuleWords } from "../finding.ts";

/** Wording of the rules of how fasteners hold: length, wood, pilot holes, edges, threadlocker, and look-alike screws. */
export const fitFindings: Readonly<Record<string, RuleWords>> = {};
