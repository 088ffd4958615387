import { acceptSubject, type Finding, makeFinding } from "@pinwright/engine";
import { findingWords, wordedRules } from "@pinwright/words";
import { expect } from "vitest";
import type { Bench } from "./bench.ts";
import { judge } from "./judge.ts";
import type { Mutation } from "./mutation.ts";

const named = (findings: readonly Finding[]): readonly string[] => findings.map(acceptSubject);

/** A finding of every rule about things that no mutation has to do with. */
const ELSEWHERE = wordedRules("en").map((rule) =>
  makeFinding(rule, "error", ["sw.elsewhere", "hs.elsewhere"]),
);

/** Holds a mutation to what it declares: its rule names the victim, and all else that comes is a consequence. */
export function holdMutation(bench: Bench, mutation: Mutation): void {
  const { plan, verdict, findings, faults } = bench.try(mutation);
  expect(
    faults.map(({ table, value, expected }) => [table, value, expected]),
    "faults of the book",
  ).toEqual([]);
  expect(named(verdict.strays), "found elsewhere").toEqual([]);
  expect(named(verdict.lost), "no longer found").toEqual([]);
  expect(named(verdict.caught), "caught").not.toEqual([]);
  for (const finding of verdict.caught)
    for (const language of ["en", "zh"] as const)
      expect(findingWords(language, mutation.rule).say(finding)).not.toMatch(/[{}]|undefined|NaN/u);
  holdsByItself();

  /** It can fail: when its rule is switched off, and when a rule tells of what the fault has nothing to do with. */
  function holdsByItself(): void {
    const { findings: then } = bench.sound;
    const without = findings.filter(({ rule }) => rule !== mutation.rule);
    expect(judge(mutation, plan, then, without).caught).toEqual([]);
    expect(judge(mutation, plan, then, [...findings, ...ELSEWHERE]).strays).toEqual(ELSEWHERE);
  }
}
