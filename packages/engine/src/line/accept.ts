import type { Finding, FindingNumber, Machine, Severity } from "../model/index.ts";
import { WORSE, type Worse } from "./worse.ts";

const BOUND = /^([a-z0-9_]+)(<=|>=|=)(.*)$/;
const RANK: Readonly<Record<Severity, number>> = { note: 0, warning: 1, error: 2 };

/** A word that a bound can hold: bounds are separated by spaces. */
const inBound = (value: FindingNumber): string => String(value).replace(/[\s%]/gu, encodeURIComponent);

const worseWhen = (rule: string, name: string): Worse => WORSE[rule]?.[name] ?? "other";

/** A limit that was accepted for one number of a finding, taken apart. */
export interface AcceptedBound {
  /** Name of the number, with its unit at its end; `severity` for how serious the finding is. */
  readonly name: string;
  readonly relation: "<=" | ">=" | "=";
  readonly limit: string;
}

/** The bounds in the basis of an acceptance; a word that is no bound stands as one that nothing meets. */
export function acceptedBounds(basis: string): readonly AcceptedBound[] {
  const words = basis.split(" ").filter((word) => word !== "");
  return words.map((word) => {
    const [, name = "", relation = "=", limit = ""] = BOUND.exec(word) ?? [];
    return { name, relation: relation === "<=" || relation === ">=" ? relation : "=", limit };
  });
}

/** Whether a finding still lies within one accepted bound: `laid_mm<=18.2`, `wires=3`, `severity<=warning`. */
function holds({ name, relation, limit }: AcceptedBound, finding: Finding): boolean {
  if (name === "severity") return Object.keys(RANK).slice(RANK[finding.severity]).includes(limit);
  const value = finding.numbers[name];
  if (value === undefined) return false;
  if (relation === "=" || typeof value !== "number") return inBound(value) === limit;
  return relation === "<=" ? value <= Number(limit) : value >= Number(limit);
}

/** The bounds of an acceptance that a finding no longer keeps: why it is open again. */
export const brokenBounds = (finding: Finding, basis: string): readonly AcceptedBound[] =>
  acceptedBounds(basis).filter((bound) => !holds(bound, finding));

/**
 * Subject of the choice that accepts a finding: its rule, its ids, and whatever else tells it apart from other
 * findings of the rule about the same ids, joined by `|`.
 */
export const acceptSubject = ({ rule, subjects, numbers }: Finding): string => {
  const names = Object.keys(numbers).filter((name) => worseWhen(rule, name) === "name");
  return [rule, ...subjects, ...names.map((name) => String(numbers[name]))].join("|");
};

/**
 * Basis of an acceptance of a finding as it is now: a bound for every number that would make it worse, and for how
 * serious it is, separated by spaces. Numbers of rules that are not known here must stay what they are.
 */
export function acceptBounds({ rule, severity, numbers }: Finding): string {
  const bounds = Object.entries(numbers).flatMap(([name, value]) => {
    const worse = worseWhen(rule, name);
    if (worse === "name" || worse === "free") return [];
    const relation = worse === "more" ? "<=" : worse === "less" ? ">=" : "=";
    return [`${name}${typeof value === "number" ? relation : "="}${inBound(value)}`];
  });
  return [...(severity === "error" ? [] : [`severity<=${severity}`]), ...bounds].join(" ");
}

/**
 * A finding with the acceptance that a person gave it, as long as it got no worse: every bound in the choice's
 * basis (`name<=value`, `name>=value` or `name=value`, separated by one space) must still hold. An acceptance
 * without a bound holds for whatever the numbers are.
 */
export function withAcceptance(machine: Pick<Machine, "choices">, finding: Finding): Finding {
  const choice = machine.choices.get("accept")?.get(acceptSubject(finding));
  if (choice === undefined || brokenBounds(finding, choice.basis).length > 0) return finding;
  return { ...finding, accepted: { by: choice.by, reason: choice.reason, basis: choice.basis } };
}
