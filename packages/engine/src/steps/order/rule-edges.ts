import type { BookRow } from "@pinwright/book";
import { unitOf } from "../../fastening/index.ts";
import { type Finding, type Machine, makeFinding, type Precedence } from "../../model/index.ts";

type Rule = BookRow<"step_rules">;

/** What the designer's rules ask for, and those that say nothing in this machine. */
export interface Ruled {
  readonly edges: readonly Precedence[];
  readonly findings: readonly Finding[];
}

/** The designer's own rules of order. */
export function ruleEdges(machine: Machine): Ruled {
  const stepIds = new Set(machine.book.tables.steps.map((step) => step.id));
  const edges: Precedence[] = [];
  const findings: Finding[] = [];
  const named = (item: string | null, harness: string | null, step: string | null): string | null => {
    if (item !== null) return machine.items.has(item) ? unitOf(machine, item) : null;
    if (harness !== null) return machine.harnesses.has(harness) ? harness : null;
    return step !== null && stepIds.has(step) ? step : null;
  };
  for (const rule of machine.book.tables.step_rules) {
    const first = named(rule.first_item, rule.first_harness, rule.first_step);
    const then = named(rule.then_item, rule.then_harness, rule.then_step);
    if (first !== null && then !== null && first !== then)
      edges.push({ beforeId: first, afterId: then, why: "rule", at: rule.id });
    else
      findings.push(makeFinding("rule-idle", "warning", subjectsOf(rule), { missing: missing(first, then) }));
  }
  return { edges, findings };
}

function missing(first: string | null, then: string | null): "same" | "both" | "first" | "after" {
  if (first !== null) return then === null ? "after" : "same";
  return then === null ? "both" : "first";
}

const subjectsOf = (rule: Rule): readonly string[] => {
  const first = rule.first_item ?? rule.first_harness ?? rule.first_step;
  const then = rule.then_item ?? rule.then_harness ?? rule.then_step;
  return [rule.id, first, then].flatMap((id) => id ?? []);
};
