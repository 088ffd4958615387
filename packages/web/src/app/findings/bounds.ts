import type { FindingEntry } from "../../worker/views/findings.ts";

type Bound = FindingEntry["bounds"][number];

const NUMBER = /^-?\d+(?:\.\d+)?$/u;

/** Whether a bound is on a number that can get worse bit by bit. */
export const isNumber = ({ name, relation, limit }: Bound): boolean =>
  name !== "severity" && relation !== "=" && NUMBER.test(limit);

/** Whether a limit allows all that the bound allows: a tighter one would open the finding again at once. */
export function isLooser({ relation, limit }: Bound, typed: string): boolean {
  if (!NUMBER.test(typed.trim())) return false;
  return relation === "<=" ? Number(typed) >= Number(limit) : Number(typed) <= Number(limit);
}

/** The basis of an acceptance with other limits, by the names of the numbers. */
export const basisOf = (bounds: readonly Bound[], limits: Readonly<Record<string, string>>): string =>
  bounds.map(({ name, relation, limit }) => `${name}${relation}${(limits[name] ?? limit).trim()}`).join(" ");
