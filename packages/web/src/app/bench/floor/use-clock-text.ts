import { useMemo } from "react";
import { useSpeech } from "../../words.tsx";

/** Hours and minutes as the reader's language has them. */
export function useClockText(): (ms: number) => string {
  const { language } = useSpeech();
  return useMemo(() => {
    const clock = new Intl.DateTimeFormat(language === "zh" ? "zh-CN" : "en-GB", {
      hour: "2-digit",
      minute: "2-digit",
    });
    return (ms) => clock.format(new Date(ms));
  }, [language]);
}
