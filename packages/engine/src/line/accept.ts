import type { Finding, FindingNumber, Machine } from "../model/index.ts";

const BOUND = /^([a-z0-9_]+)(<=|>=|=)(.+)$/;

/** Whether a number still lies within one accepted bound: `laid_mm<=18.2`, `wires=3`. */
function holds(bound: string, numbers: Readonly<Record<string, FindingNumber>>): boolean {
  const [, name = "", relation = "", limit = ""] = BOUND.exec(bound) ?? [];
  const value = numbers[name];
  if (value === undefined) return false;
  if (relation === "=" || typeof value !== "number") return String(value) === limit;
  return relation === "<=" ? value <= Number(limit) : value >= Number(limit);
}

/** Subject of the choice that accepts a finding. */
export const acceptSubject = (finding: Finding): string => [finding.rule, ...finding.subjects].join("|");

/**
 * A finding with the acceptance that a person gave it, as long as it got no worse: every bound in the choice's
 * basis (`name<=value`, `name>=value` or `name=value`, separated by one space) must still hold. An acceptance
 * without a bound holds for whatever the numbers are.
 */
export function withAcceptance(machine: Machine, finding: Finding): Finding {
  const choice = machine.choices.get("accept")?.get(acceptSubject(finding));
  if (choice === undefined) return finding;
  const bounds = choice.basis.split(" ").filter((bound) => bound !== "");
  if (!bounds.every((bound) => holds(bound, finding.numbers))) return finding;
  return { ...finding, accepted: { by: choice.by, reason: choice.reason, basis: choice.basis } };
}
