import type { ReleasedSheet } from "@pinwright/contract";
import { pathTo } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { useDesk } from "../../app/book/desk.tsx";
import { useSpeech } from "../../app/words.tsx";
import type { AskAnswer } from "../../worker/protocol.ts";
import { useBench } from "../tasks/bench-context.tsx";

type Pages = AskAnswer<"keptSheetPages">;
interface Told<T> {
  readonly found: T | null;
  readonly failed: string;
}
const NOTHING = { found: null, failed: "" };
const said = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** Sheets that a release keeps of what is on the bench, in the language that is read. */
export function useKeptSheets(release: string): Told<readonly ReleasedSheet[]> {
  const { bookId } = useDesk();
  const { language } = useSpeech();
  const { what, type } = useBench();
  const [told, setTold] = useState<Told<readonly ReleasedSheet[]>>(NOTHING);
  useEffect(() => {
    let wanted = true;
    const of = what === "harness" ? type : "machine";
    call("releaseSheets", { parts: { book: bookId, release } }).then(
      (sheets) => {
        const found = sheets.filter((sheet) => sheet.of === of && sheet.language === language);
        if (wanted) setTold({ found, failed: "" });
      },
      (error: unknown) => wanted && setTold({ found: null, failed: said(error) }),
    );
    return () => {
      wanted = false;
    };
  }, [bookId, release, language, what, type]);
  return told;
}

/** Pages of a sheet, drawn from what the release keeps. */
export function useKeptPages(release: string, sheet: ReleasedSheet | undefined): Told<Pages> {
  const desk = useDesk();
  const [told, setTold] = useState<Told<Pages>>(NOTHING);
  useEffect(() => {
    let wanted = true;
    if (sheet === undefined) return;
    const asked = async (): Promise<Pages> => {
      const parts = { book: desk.bookId, release, sheet: sheet.id };
      const response = await fetch(pathTo("releaseSheet", parts, { format: "json" }));
      if (!response.ok) throw new Error(String(response.status));
      return desk.ask("keptSheetPages", { kept: await response.text(), title: sheet.title });
    };
    asked().then(
      (found) => wanted && setTold({ found, failed: "" }),
      (error: unknown) => wanted && setTold({ found: null, failed: said(error) }),
    );
    return () => {
      wanted = false;
    };
  }, [desk, release, sheet]);
  return told;
}
