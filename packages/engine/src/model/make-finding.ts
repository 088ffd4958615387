import type { Finding, FindingNumber, Severity } from "./finding.ts";

/** A finding that nobody has accepted yet. */
export const makeFinding = (
  rule: string,
  severity: Severity,
  subjects: readonly string[],
  numbers: Readonly<Record<string, FindingNumber>> = {},
): Finding => ({ rule, severity, subjects, numbers, accepted: null });
