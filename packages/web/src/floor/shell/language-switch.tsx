import { useSpeech } from "../../app/words.tsx";

/** The other language, by its own name. */
export function LanguageSwitch() {
  const { language, setLanguage } = useSpeech();
  const other = language === "en" ? "zh" : "en";
  return (
    <button
      type="button"
      className="floor-plain"
      lang={other === "zh" ? "zh-Hans" : "en"}
      onClick={() => setLanguage(other)}
    >
      {other === "zh" ? "中文" : "English"}
    </button>
  );
}
