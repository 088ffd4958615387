import { sheetWords } from "@pinwright/words";
import { useCallback } from "react";
import type { AskAnswer } from "../../../worker/protocol.ts";
import { useView } from "../../book/desk.tsx";
import { useSpeech } from "../../words.tsx";

type Sheet = AskAnswer<"comparison">["sheets"][number];

/** Title of a sheet in the reader's language: sheets are compared in English, so in Chinese it is put together here. */
export function useSheetTitle(): (sheet: Sheet) => string {
  const { language } = useSpeech();
  const harnesses = useView("harnesses", null);
  return useCallback(
    ({ title, kind, of }) => {
      if (language === "en") return title;
      const kinds: Readonly<Record<string, string>> = sheetWords(language).kinds;
      const harness = harnesses?.get(of);
      const about =
        harness === undefined
          ? sheetWords(language).machine.whole
          : `H${harness.number} ${harness.label.zh === "" ? harness.label.en : harness.label.zh}`;
      const name = kinds[kind];
      return name === undefined ? title : `${about}：${name}`;
    },
    [language, harnesses],
  );
}
