/** Language of words that a person reads. */
export type Language = "en" | "zh";

/** Language of a sheet; `both` sets English and Chinese together. */
export type SheetLanguage = Language | "both";

/** Languages of a sheet in the order in which they are set. */
export function languagesOf(language: SheetLanguage): readonly Language[] {
  return language === "both" ? ["en", "zh"] : [language];
}

/**
 * The type of a word list in any language: every text of the English list, with whatever text; every sentence
 * with numbers keeps its parameters.
 */
export type Translated<T> = {
  readonly [K in keyof T]: T[K] extends string
    ? string
    : T[K] extends (...values: infer A) => string
      ? (...values: A) => string
      : T[K] extends readonly string[]
        ? readonly string[]
        : Translated<T[K]>;
};
