import { sheets as sheetsEn } from "./en/sheets.ts";
import type { Language, Translated } from "./language.ts";
import { sheets as sheetsZh } from "./zh/sheets.ts";

export { type Language, languagesOf, type SheetLanguage, type Translated } from "./language.ts";

/** Words of the sheets in one language. */
export type SheetWords = Translated<typeof sheetsEn>;

const SHEETS: Readonly<Record<Language, SheetWords>> = { en: sheetsEn, zh: sheetsZh };

/** Words of the sheets in a language. */
export function sheetWords(language: Language): SheetWords {
  return SHEETS[language];
}
