import type { Finding } from "@pinwright/engine";

/** Wording of one rule in one language. */
export interface RuleWords {
  /** What is wrong, in a few words. */
  readonly title: string;
  /**
   * One case in a sentence. `{0}`, `{1}` … stand for its subjects, `{rest}` for those after the first,
   * `{diameter_mm}` for a number by its name.
   */
  readonly says: string;
  readonly why: string;
  readonly todo: string;
  /** Words for values that are names: by the name of the number, then by its value. */
  readonly values?: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/** Wording of the findings of one rule. */
export interface FindingWords extends Pick<RuleWords, "title" | "why" | "todo"> {
  /** The sentence of one finding, with its numbers. */
  readonly say: (finding: Finding) => string;
}

/**
 * A number as a person reads it: a tenth from 10 up, a hundredth from 1 up, three figures below. Data keep the
 * whole number.
 */
function plainNumber(value: number): string {
  const size = Math.abs(value);
  if (size >= 10) return String(Number(value.toFixed(1)));
  return String(size >= 1 ? Number(value.toFixed(2)) : Number(value.toPrecision(3)));
}

/**
 * Fills a sentence with the subjects and numbers of a finding; a name that the finding lacks stays as it is. What is
 * empty leaves no gap.
 * @param values words for values that are names
 */
export function fill(template: string, finding: Finding, values: RuleWords["values"] = {}): string {
  const filled = template.replace(/\{(\w+)\}/gu, (whole, name: string) => {
    if (name === "rest") return finding.subjects.slice(1).join(", ");
    const value = /^\d+$/u.test(name) ? finding.subjects[Number(name)] : finding.numbers[name];
    if (value === undefined) return whole;
    return typeof value === "number" ? plainNumber(value) : (values[name]?.[String(value)] ?? String(value));
  });
  return filled.replace(/ {2,}/gu, " ").replace(/ (?=[,.;，。；])/gu, "");
}

/** A finding in plain data: what is said of a rule that has no wording. */
export function plainly(finding: Finding): string {
  const numbers = Object.entries(finding.numbers).map(([name, value]) => `${name} ${value}`);
  return [finding.subjects.join(", "), numbers.join(", ")].filter((t) => t !== "").join(": ");
}
