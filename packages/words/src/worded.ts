import { findings as findingsEn } from "./en/findings.ts";
import { sheets as sheetsEn } from "./en/sheets.ts";
import { type FindingWords, fill, plainly, type RuleWords } from "./finding.ts";
import type { Language, Translated } from "./language.ts";
import { findings as findingsZh } from "./zh/findings.ts";
import { sheets as sheetsZh } from "./zh/sheets.ts";

/** Words of the sheets in one language. */
export type SheetWords = Translated<typeof sheetsEn>;

const SHEETS: Readonly<Record<Language, SheetWords>> = { en: sheetsEn, zh: sheetsZh };
const FINDINGS: Readonly<Record<Language, Readonly<Record<string, RuleWords>>>> = {
  en: findingsEn,
  zh: findingsZh,
};

/** Words of the sheets in a language. */
export function sheetWords(language: Language): SheetWords {
  return SHEETS[language];
}

/** Rules that have a wording, in code-point order. */
export function wordedRules(language: Language): readonly string[] {
  return Object.keys(FINDINGS[language]).sort();
}

/**
 * Wording of the findings of a rule: title, why it matters, what to do, and a sentence for each finding. A rule
 * without wording, as an older program may meet it, is told by its id and its numbers.
 */
export function findingWords(language: Language, rule: string): FindingWords {
  const words = FINDINGS[language][rule];
  if (words === undefined) return { title: rule, why: "", todo: "", say: plainly };
  const { title, why, todo, says, values } = words;
  return { title, why, todo, say: (finding) => fill(says, finding, values) };
}
