import type { Fact, FactBody } from "@pinwright/contract";
import { byTime, corrected } from "@pinwright/engine";

type Fitted = Extract<FactBody, { kind: "fitted" }>;
type Removed = Extract<FactBody, { kind: "removed" }>;

/** One line of what happened to units: a fact, or one that went out for another that came in. */
export type UnitEvent =
  | { readonly kind: "fact"; readonly fact: Fact; readonly isTakenBack: boolean }
  | {
      readonly kind: "swapped";
      readonly fact: Fact;
      readonly out: Removed;
      readonly in: Fitted;
      readonly isTakenBack: boolean;
    };

/** Whether a fact speaks of a unit: of itself, or of something that goes in or comes out. */
function speaksOf(body: FactBody, unit: string): boolean {
  switch (body.kind) {
    case "correction":
    case "recall":
    case "recall-ended":
    case "problem":
    case "problem-note":
    case "problem-ended":
      return false;
    case "fitted":
      return body.unit === unit || body.into === unit;
    case "removed":
      return body.unit === unit || body.from === unit;
    default:
      return body.unit === unit;
  }
}

const keyOf = ({ stream, seq }: Pick<Fact, "stream" | "seq">): string => `${stream} ${seq}`;

/**
 * What happened to units, the last first. What was taken back stays in sight. A unit that came out of a place and the one
 * that went in with the same breath are one swap.
 */
export function eventsOf(facts: readonly Fact[], unitIds: readonly string[]): readonly UnitEvent[] {
  const gone = corrected(facts);
  const own = facts.filter(({ body }) => unitIds.some((unit) => speaksOf(body, unit))).toSorted(byTime);
  const events: UnitEvent[] = [];
  for (const fact of own) {
    const isTakenBack = gone.has(keyOf(fact));
    const last = events.at(-1);
    const before = last?.kind === "fact" && last.fact.stream === fact.stream ? last.fact : null;
    const out = outFor(before, fact);
    if (out !== null && fact.body.kind === "fitted") {
      events.pop();
      events.push({ kind: "swapped", fact, out, in: fact.body, isTakenBack });
    } else events.push({ kind: "fact", fact, isTakenBack });
  }
  return events.reverse();
}

/** What came out of the place that a fact fills, if that was the record just before. */
function outFor(before: Fact | null, { body, at }: Fact): Removed | null {
  if (before === null || body.kind !== "fitted" || before.body.kind !== "removed") return null;
  const isSame = before.body.from === body.into && before.body.place === body.place && before.at === at;
  return isSame ? before.body : null;
}
