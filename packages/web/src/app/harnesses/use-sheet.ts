import { useEffect, useState } from "react";
import type { AskAnswer, AskParam } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useSpeech } from "../words.tsx";

type Sheet = NonNullable<AskAnswer<"composeSheet">>;

export interface ComposedNow {
  readonly sheet: Sheet | null;
  /** True while a newer one is being composed. */
  readonly stale: boolean;
}

/** Today as it stands in a title block. */
const today = (): string => {
  const now = new Date();
  const two = (n: number): string => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

/** A sheet as it would print now, composed again whenever one of `follows` is another. */
export function useSheet(
  harnessId: string,
  kind: AskParam<"composeSheet">["kind"],
  follows: readonly unknown[],
): ComposedNow {
  const desk = useDesk();
  const { language } = useSpeech();
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const [stale, setStale] = useState(true);
  useEffect(() => {
    let wanted = true;
    setStale(true);
    const ask = setTimeout(() => {
      void desk.ask("composeSheet", { harnessId, kind, language, date: today() }).then(
        (made) => {
          if (!wanted) return;
          setSheet(made);
          setStale(false);
        },
        () => undefined,
      );
    }, 50);
    return () => {
      wanted = false;
      clearTimeout(ask);
    };
  }, [desk, harnessId, kind, language, ...follows]);
  return { sheet, stale };
}
