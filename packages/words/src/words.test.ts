import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { findings as english } from "./en/findings.ts";
import { sheets as sheetsEn } from "./en/sheets.ts";
import { findingWords, wordedRules } from "./index.ts";
import { findings as chinese } from "./zh/findings.ts";
import { sheets as sheetsZh } from "./zh/sheets.ts";

const ENGINE = fileURLToPath(new URL("../../engine/src", import.meta.url));

/** Kinds of a passage, as `bundle/capacity.ts` names its rules by them; only a clip has a least diameter. */
const PASSAGES: Readonly<Record<string, readonly string[]>> = {
  overfull: ["lane", "crossing", "hole", "clip"],
  loose: ["clip"],
};

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === "testing" ? [] : sources(path);
    return entry.name.endsWith(".ts") && !entry.name.endsWith(".test.ts") ? [path] : [];
  });
}

/** Every rule that the engine's sources name where they make a finding. */
function engineRules(): ReadonlySet<string> {
  const rules = new Set<string>();
  for (const path of sources(ENGINE)) {
    const text = readFileSync(path, "utf8");
    for (const match of text.matchAll(
      /(?:makeFinding|finding)\(([\s\S]{0,90}?),\s*(?:"error"|"warning"|"note"|[a-z])/gu,
    )) {
      const first = match[1] ?? "";
      for (const literal of first.matchAll(/"([a-z]+(?:-[a-z]+)+)"/gu)) rules.add(literal[1] ?? "");
      const kind = /\$\{passage\.kind\}-([a-z]+)/u.exec(first);
      const suffix = kind?.[1] ?? "";
      for (const passage of PASSAGES[suffix] ?? []) rules.add(`${passage}-${suffix}`);
    }
    for (const match of text.matchAll(/rule: "([a-z-]+)"/gu)) rules.add(match[1] ?? "");
  }
  return rules;
}

const placeholders = (text: string): readonly string[] =>
  [...text.matchAll(/\{(\w+)\}/gu)].map((m) => m[1] ?? "").sort();

describe("wording of findings", () => {
  test("every rule of the engine is worded, and every wording has its rule", () => {
    const rules = [...engineRules()].sort();
    expect(rules.length).toBeGreaterThan(40);
    expect(wordedRules("en")).toEqual(rules);
    expect(wordedRules("zh")).toEqual(rules);
  });

  test.each(Object.keys(english))("%s says the same numbers in both languages", (rule) => {
    const en = english[rule];
    const zh = chinese[rule];
    expect(placeholders(zh?.says ?? "")).toEqual(placeholders(en?.says ?? ""));
    for (const text of [zh?.title, zh?.why, zh?.todo, en?.title, en?.why, en?.todo]) {
      expect(text).not.toBe("");
      expect(placeholders(text ?? "{missing}")).toEqual([]);
    }
    expect(/[\u4e00-\u9fff]/u.test(`${zh?.title}${zh?.says}`)).toBe(true);
  });

  test("a sentence is filled with subjects and numbers", () => {
    const words = findingWords("en", "tail-long");
    const finding = {
      rule: "tail-long",
      severity: "warning",
      subjects: ["bd.main:j1", "hs.lamps"],
      numbers: { tail_mm: 312, tail_max_mm: 260 },
      accepted: null,
    } as const;
    expect(words.say(finding)).toBe("bd.main:j1 in hs.lamps: 312 mm of tail, 260 mm allowed.");
    expect(findingWords("zh", "tail-long").say(finding)).toContain("尾线 312 mm，允许 260 mm");
  });

  test("a rule without wording is told in plain data", () => {
    const words = findingWords("en", "no-such-rule");
    const finding = {
      rule: "no-such-rule",
      severity: "note",
      subjects: ["a", "b"],
      numbers: { x_mm: 1 },
      accepted: null,
    } as const;
    expect(words.say(finding)).toBe("a, b: x_mm 1");
  });
});

describe("words of sheets", () => {
  const keys = (value: object, path = ""): string[] =>
    Object.entries(value).flatMap(([k, v]) =>
      typeof v === "object" && v !== null ? keys(v, `${path}${k}.`) : [`${path}${k}`],
    );

  test("both languages have the same words", () => {
    expect(keys(sheetsZh)).toEqual(keys(sheetsEn));
  });
});
