import { Button } from "@mantine/core";
import type { BookInfo } from "@pinwright/contract";
import { useLocation } from "wouter";
import { useMay } from "../session/session.tsx";
import { useWords } from "../words.tsx";
import { begin, nextStep } from "./guide-state.ts";
import { keepGuide, useGuide } from "./use-guide.ts";

const EXAMPLE = "first-light";

/** Invites to the guided first ten minutes, or to go on with them. */
export function GuideInvitation({ books }: { readonly books: readonly BookInfo[] | null }) {
  const { start, guide } = useWords();
  const [, go] = useLocation();
  const state = useGuide();
  const mayEdit = useMay("lead");
  if (books === null || !mayEdit) return null;
  const isThere = (id: string) => books.some((book) => book.id === id && !book.archived);
  const running = state !== null && nextStep(state) !== null && state.done.length > 0 && isThere(state.book);
  const book = running ? state.book : EXAMPLE;
  const walk = (fresh: boolean) => {
    keepGuide(fresh || state === null ? begin(book) : { ...state, open: true });
    go(`/b/${book}/layout`);
  };
  return (
    <section>
      <h2>{start.guideTitle}</h2>
      {isThere(book) ? (
        <>
          <p className="dim">{start.guideHint}</p>
          <div style={{ display: "flex", gap: 8 }}>
            <Button onClick={() => walk(!running)}>{running ? start.guideOn : start.guideGo}</Button>
            {running && (
              <Button variant="default" onClick={() => walk(true)}>
                {guide.again}
              </Button>
            )}
          </div>
        </>
      ) : (
        <p className="dim">{start.noGuide}</p>
      )}
    </section>
  );
}
