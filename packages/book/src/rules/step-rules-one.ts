import { type Rule, rowRule } from "./rule.ts";

export const stepRulesFirst: Rule = rowRule(
  {
    table: "step_rules",
    about: "A rule of order has exactly one of `first_item`, `first_harness` and `first_step`.",
    reads: ["first_item", "first_harness", "first_step"],
  },
  () => (row) => {
    const given = countGiven([row.first_item, row.first_harness, row.first_step]);
    return given === 1 ? null : { column: "first_item", expected: oneOf("first", given) };
  },
);

export const stepRulesThen: Rule = rowRule(
  {
    table: "step_rules",
    about: "A rule of order has exactly one of `then_item`, `then_harness` and `then_step`.",
    reads: ["then_item", "then_harness", "then_step"],
  },
  () => (row) => {
    const given = countGiven([row.then_item, row.then_harness, row.then_step]);
    return given === 1 ? null : { column: "then_item", expected: oneOf("then", given) };
  },
);

const countGiven = (names: readonly (string | null)[]): number =>
  names.filter((name) => name !== null).length;

const oneOf = (column: string, given: number): string =>
  `exactly one of ${column}_item, ${column}_harness and ${column}_step; found ${given === 0 ? "none" : given}`;
