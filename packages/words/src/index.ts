export { type CompareWords, changeSentence, compareWords, subjectName } from "./compare-text.ts";
export type { FindingWords, RuleWords } from "./finding.ts";
export { type Language, languagesOf, type SheetLanguage, type Translated } from "./language.ts";
export { findingWords, type SheetWords, sheetWords, wordedRules } from "./worded.ts";
