import { TextInput } from "@mantine/core";
import type { ServiceBookTexts } from "@pinwright/contract";
import { IconSearch } from "@tabler/icons-react";
import { useEffect, useState } from "react";
import { call } from "../../../api/call.ts";
import { useWords } from "../../words.tsx";
import { findText, MOST_HITS, type Spot } from "./find-text.ts";

/** Search in all that is written in a book. */
export function BookSearch({
  job,
  onOpen,
}: {
  readonly job: string;
  readonly onOpen: (page: number, spot: Spot | null) => void;
}) {
  const { serviceBookApp: own } = useWords();
  const [wanted, setWanted] = useState("");
  const [texts, setTexts] = useState<ServiceBookTexts | null>(null);
  const isAsked = wanted.trim() !== "";
  useEffect(() => {
    if (!isAsked || texts !== null) return;
    let isHere = true;
    call("serviceBookTexts", { parts: { job } }).then(
      (answer) => isHere && setTexts(answer),
      () => undefined,
    );
    return () => {
      isHere = false;
    };
  }, [isAsked, texts, job]);
  const hits = texts === null ? [] : findText(texts, wanted);
  return (
    <search className="book-search">
      <TextInput
        type="search"
        label={own.search}
        placeholder={own.searchHint}
        leftSection={<IconSearch size={16} aria-hidden />}
        value={wanted}
        onChange={({ currentTarget: { value } }) => setWanted(value)}
      />
      {isAsked && texts !== null && (
        <>
          <p role="status" className="dim">
            {hits.length > MOST_HITS ? own.more(MOST_HITS) : own.found(hits.length)}
          </p>
          <ol className="book-hits">
            {hits.slice(0, MOST_HITS).map(({ page, text, spot }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: hits are made anew with each letter
              <li key={i}>
                <button type="button" className="book-line" onClick={() => onOpen(page, spot)}>
                  <span>{text}</span> <span className="dim">{own.page(page)}</span>
                </button>
              </li>
            ))}
          </ol>
        </>
      )}
    </search>
  );
}
