import type { KeptProblem } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { call } from "../../../api/call.ts";
import { type Asked, useAsked } from "../../bench/use-asked.ts";
import { useDesk } from "../../book/desk.tsx";
import { usePick } from "../../words.tsx";

/** Problems of the open book, open ones first; kept up to date where facts are heard. */
export function useProblems(): Asked<readonly KeptProblem[]> {
  const { bookId } = useDesk();
  return useAsked(`problems ${bookId}`, (signal) =>
    call("problems", { parts: {}, query: { book: bookId }, signal }),
  );
}

/** What ids are called in the reader's language; the id itself until the book has answered. */
export function useThingNames(ids: readonly string[]): (id: string) => string {
  const desk = useDesk();
  const pick = usePick();
  const [named, setNamed] = useState<ReadonlyMap<string, { readonly en: string; readonly zh: string }>>(
    new Map(),
  );
  const key = [...new Set(ids)].sort().join("\n");
  useEffect(() => {
    let wanted = true;
    desk.ask("thingNames", key === "" ? [] : key.split("\n")).then(
      (found) => wanted && setNamed(new Map(found.map(({ id, labels }) => [id, labels]))),
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, [desk, key]);
  return (id) => {
    const labels = named.get(id);
    return labels === undefined ? id : pick(labels.en, labels.zh) || id;
  };
}
