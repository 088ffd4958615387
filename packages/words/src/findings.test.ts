import { expect, test } from "vitest";
import { findings as en } from "./en/findings.ts";
import { findings as zh } from "./zh/findings.ts";

const holes = (says: string): readonly string[] => [...new Set(says.match(/\{\w+\}/gu) ?? [])].sort();

test("every rule has a wording in both languages, with the same numbers in it", () => {
  expect(Object.keys(zh).sort()).toEqual(Object.keys(en).sort());
  for (const [rule, words] of Object.entries(en)) {
    expect(holes(zh[rule]?.says ?? ""), rule).toEqual(holes(words.says));
  }
});
