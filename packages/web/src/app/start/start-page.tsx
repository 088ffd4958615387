import type { BookInfo } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { Link } from "wouter";
import { call } from "../../api/call.ts";
import { usePick, useSpeech } from "../words.tsx";

/** What this is, what to try, and the books. */
export function StartPage() {
  const { words, language } = useSpeech();
  const pick = usePick();
  const [books, setBooks] = useState<readonly BookInfo[]>([]);
  useEffect(() => {
    void call("books", { parts: {} }).then(setBooks, () => undefined);
  }, []);
  const when = new Intl.DateTimeFormat(language, { dateStyle: "medium", timeStyle: "short" });
  return (
    <div className="page">
      <div style={{ borderLeft: "3px solid var(--accent)", paddingLeft: 16 }}>
        {words.start.lines.map((line) => (
          <p key={line} style={{ margin: "4px 0", fontSize: 16 }}>
            {line}
          </p>
        ))}
      </div>
      <h2>{words.start.machines}</h2>
      <ul style={{ listStyle: "none", padding: 0 }}>
        {books
          .filter((book) => book.kind === "machine" && !book.archived)
          .map((book) => (
            <li key={book.id} style={{ padding: "8px 0", borderTop: "1px solid var(--line)" }}>
              <Link href={`/b/${book.id}`} style={{ fontSize: 16, fontWeight: 600 }}>
                {pick(book.label, book.labelZh)}
              </Link>{" "}
              <span className="dim">{words.start.changed(when.format(new Date(book.changedAt)))}</span>
            </li>
          ))}
      </ul>
    </div>
  );
}
