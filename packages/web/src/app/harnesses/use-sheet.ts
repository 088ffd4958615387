import { draftAfter } from "@pinwright/words";
import { useEffect, useState } from "react";
import type { AskAnswer, AskParam } from "../../worker/protocol.ts";
import { useDesk } from "../book/desk.tsx";
import { useReleases } from "../revisions/use-releases.ts";
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
  const { releases, failed } = useReleases();
  const isAsked = releases !== null || failed !== null;
  const revision = draftAfter(releases?.[0]?.name ?? "");
  const [sheet, setSheet] = useState<Sheet | null>(null);
  const [stale, setStale] = useState(true);
  useEffect(() => {
    let wanted = true;
    setStale(true);
    if (!isAsked) return;
    const ask = setTimeout(() => {
      void desk.ask("composeSheet", { harnessId, kind, language, date: today(), revision }).then(
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
  }, [desk, harnessId, kind, language, revision, isAsked, ...follows]);
  return { sheet, stale };
}
