import { useState } from "react";
import { useSpeech, useWords } from "../../words.tsx";
import { SHEET_LANGUAGES, type SheetLanguage } from "./address.ts";

const KEY = "pinwright.sheet-language";

const kept = (): SheetLanguage | null => {
  const text = localStorage.getItem(KEY);
  return SHEET_LANGUAGES.find((one) => one === text) ?? null;
};

/** The language that sheets were printed in last on this device; first that of the app. */
export function useSheetLanguage(): readonly [SheetLanguage, (to: SheetLanguage) => void] {
  const { language } = useSpeech();
  const [chosen, setChosen] = useState(kept);
  return [
    chosen ?? language,
    (to) => {
      localStorage.setItem(KEY, to);
      setChosen(to);
    },
  ];
}

/** Chooses the language of what is printed. */
export function SheetLanguageChoice({
  language,
  set,
}: {
  readonly language: SheetLanguage;
  readonly set: (to: SheetLanguage) => void;
}) {
  const { benchSheets: own } = useWords();
  return (
    <select
      aria-label={own.language}
      value={language}
      onChange={({ currentTarget: { value } }) => set(SHEET_LANGUAGES.find((one) => one === value) ?? "en")}
    >
      {SHEET_LANGUAGES.map((one) => (
        <option key={one} value={one}>
          {own.languages[one]}
        </option>
      ))}
    </select>
  );
}
