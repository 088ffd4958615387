import type { RuleWords } from "../finding.ts";

/** Wording of the rules of what tool and hand reach, and what comes off for service. */
export const accessFindings: Readonly<Record<string, RuleWords>> = {};
