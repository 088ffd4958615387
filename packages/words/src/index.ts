export { bookTerm } from "./book-terms.ts";
export { type CompareWords, compareWords } from "./compare-teller.ts";
export { changeSentence, subjectName } from "./compare-text.ts";
export type { FindingWords, RuleWords } from "./finding.ts";
export { type Language, languagesOf, type SheetLanguage, type Translated } from "./language.ts";
export { afterOf, draftAfter } from "./revision.ts";
export { findingWords, type SheetWords, sheetWords, wordedRules } from "./worded.ts";
