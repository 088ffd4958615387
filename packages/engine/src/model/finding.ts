export type Severity = "error" | "warning" | "note";

/** Number in a finding, quantised so that equal situations give equal findings. */
export type FindingNumber = number | string | boolean;

/**
 * One result of a check. It holds ids and numbers; its wording lives in `words`, under `rule`.
 * `numbers` keys end with their unit (`diameter_mm`).
 */
export interface Finding {
  /** Stable name of the rule: `lane-overfull`. One rule, one file, one wording in each language. */
  readonly rule: string;
  readonly severity: Severity;
  /** Ids of what it is about, the first being the one to go to. */
  readonly subjects: readonly string[];
  readonly numbers: Readonly<Record<string, FindingNumber>>;
  /** Set when a person accepted it: who and why, and the bound that was accepted. */
  readonly accepted: { readonly by: string; readonly reason: string; readonly basis: string } | null;
}
