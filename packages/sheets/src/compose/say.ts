import {
  type Language,
  languagesOf,
  type SheetLanguage,
  type SheetWords,
  sheetWords,
} from "@pinwright/words";

/** A text in every language of a sheet, joined; a text that is the same in both is set once. */
export function say(
  language: SheetLanguage,
  choose: (words: SheetWords, language: Language) => string,
  joint = "\n",
): string {
  const texts = languagesOf(language).map((l) => choose(sheetWords(l), l));
  return [...new Set(texts.filter((t) => t !== ""))].join(joint);
}

/** The label of something in every language of a sheet; one that lacks Chinese keeps its English label. */
export function label(
  language: SheetLanguage,
  labels: { readonly en: string; readonly zh: string },
  fallback: string,
  joint = "\n",
): string {
  const english = labels.en === "" ? fallback : labels.en;
  return say(language, (_, l) => (l === "en" ? english : labels.zh === "" ? english : labels.zh), joint);
}
