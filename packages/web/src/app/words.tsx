import type { Language } from "@pinwright/words";
import { type AppWords, ENGLISH, loadAppWords } from "@pinwright/words/app";
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from "react";

interface Speech {
  readonly language: Language;
  readonly words: AppWords;
  readonly setLanguage: (language: Language) => void;
}

const SpeechContext = createContext<Speech>({ language: "en", words: ENGLISH, setLanguage: () => undefined });
const KEY = "pinwright.language";

const preferred = (): Language => {
  const kept = localStorage.getItem(KEY);
  if (kept === "en" || kept === "zh") return kept;
  return navigator.languages.some((language) => language.toLowerCase().startsWith("zh")) ? "zh" : "en";
};

/** Gives everything inside its words, in the language that this browser was set to. */
export function WordsProvider({ children }: { readonly children: ReactNode }) {
  const [language, setLanguage] = useState(preferred);
  const [words, setWords] = useState<AppWords | null>(language === "en" ? ENGLISH : null);
  useEffect(() => {
    let wanted = true;
    document.documentElement.lang = language === "zh" ? "zh-Hans" : "en";
    localStorage.setItem(KEY, language);
    void loadAppWords(language).then((loaded) => wanted && setWords(loaded));
    return () => {
      wanted = false;
    };
  }, [language]);
  const speech = useMemo(() => ({ language, words: words ?? ENGLISH, setLanguage }), [language, words]);
  return words === null ? null : <SpeechContext value={speech}>{children}</SpeechContext>;
}

export const useSpeech = (): Speech => useContext(SpeechContext);

/** The words of the app. */
export const useWords = (): AppWords => useContext(SpeechContext).words;

/** Picks the label of the language that is shown; the other one where it is blank. */
export function usePick(): (en: string, zh: string) => string {
  const { language } = useSpeech();
  return (en, zh) => (language === "zh" ? zh || en : en || zh);
}
