import type { RuleWords } from "../finding.ts";

/** Wording of the rules of what stands in the way of what: items, boards, bundles, poses, glass. */
export const clashFindings: Readonly<Record<string, RuleWords>> = {};
