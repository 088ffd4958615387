import { sheetWords } from "@pinwright/words";
import { useCallback } from "react";
import type { AskAnswer } from "../../../worker/protocol.ts";
import { useView } from "../../book/desk.tsx";
import { useSpeech } from "../../words.tsx";

type Sheet = Pick<AskAnswer<"comparison">["sheets"][number], "title" | "kind" | "of">;

/** A sheet of which only the name is known: its kind is the longest that the name has. */
export function sheetNamed(id: string): Sheet {
  const kind = Object.keys(sheetWords("en").kinds)
    .sort((a, b) => b.length - a.length)
    .find((one) => id.includes(`.${one}`));
  return { title: "", kind: kind ?? id, of: kind === undefined ? "" : id.slice(0, id.indexOf(`.${kind}`)) };
}

/** Title of a sheet in the reader's language: sheets are compared in English, so in Chinese it is put together here. */
export function useSheetTitle(): (sheet: Sheet) => string {
  const { language } = useSpeech();
  const harnesses = useView("harnesses", null);
  return useCallback(
    ({ title, kind, of }) => {
      if (language === "en" && title !== "") return title;
      const kinds: Readonly<Record<string, string>> = sheetWords(language).kinds;
      const harness = harnesses?.get(of);
      const about =
        harness === undefined
          ? sheetWords(language).machine.whole
          : `H${harness.number} ${language === "zh" && harness.label.zh !== "" ? harness.label.zh : harness.label.en}`;
      const name = kinds[kind];
      if (name === undefined) return title === "" ? kind : title;
      return `${about}${language === "zh" ? "：" : ": "}${name}`;
    },
    [language, harnesses],
  );
}
