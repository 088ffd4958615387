import { Button } from "@mantine/core";
import type { BookInfo } from "@pinwright/contract";
import { useState } from "react";
import { Link } from "wouter";
import { call } from "../../api/call.ts";
import { GuideInvitation } from "../guide/guide-invitation.tsx";
import { useMay, useSession } from "../session/session.tsx";
import { usePick, useSpeech, useWords } from "../words.tsx";
import { ImportBook } from "./import-book.tsx";
import { NewBookForm } from "./new-book.tsx";
import { refusalText } from "./refusal-text.ts";
import { useBooks } from "./use-books.ts";
import "./start.css";

/** What this is, what to try, and the books. */
export function StartPage() {
  const { start, floorBench } = useWords();
  const { books, refresh } = useBooks();
  const mayMake = useMay("designer");
  const machines = (books ?? []).filter((book) => book.kind === "machine");
  const away = machines.filter((book) => book.archived);
  return (
    <div className="start">
      <div className="start-lines">
        {start.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
      <h2>{start.machines}</h2>
      {books !== null && machines.length === away.length && <p className="dim">{start.none}</p>}
      <BookList books={machines.filter((book) => !book.archived)} refresh={refresh} />
      {away.length > 0 && (
        <details>
          <summary style={{ padding: "8px 0" }}>{start.archived(away.length)}</summary>
          <BookList books={away} refresh={refresh} />
        </details>
      )}
      <p>
        <a href="/floor">{floorBench.net.floor}</a> · {floorBench.net.floorIs}
      </p>
      <GuideInvitation books={books} />
      {mayMake && (
        <div className="start-columns">
          <NewBookForm />
          <ImportBook />
        </div>
      )}
    </div>
  );
}

function BookList({
  books,
  refresh,
}: {
  readonly books: readonly BookInfo[];
  readonly refresh: () => Promise<void>;
}) {
  const { words, language } = useSpeech();
  const pick = usePick();
  const { status } = useSession();
  const mayPutAway = useMay("owner");
  const [wrong, setWrong] = useState("");
  const when = new Intl.DateTimeFormat(language, {
    dateStyle: "medium",
    timeStyle: "short",
    hourCycle: "h23",
  });
  const put = async (book: BookInfo) => {
    try {
      await call("changeBook", {
        parts: { book: book.id },
        body: { archived: !book.archived },
        token: status.token,
      });
      setWrong("");
      await refresh();
    } catch (error) {
      setWrong(refusalText(words, error));
    }
  };
  return (
    <>
      <ul className="book-list">
        {books.map((book) => (
          <li key={book.id}>
            <Link className="name" href={`/b/${book.id}`}>
              {pick(book.label, book.labelZh) || book.id}
            </Link>
            <span className="dim">{book.id}</span>
            <span className="dim when">{words.start.changed(when.format(new Date(book.changedAt)))}</span>
            {mayPutAway && (
              <Button variant="subtle" size="compact-sm" onClick={() => void put(book)}>
                {book.archived ? words.start.takeOut : words.start.putAway}
              </Button>
            )}
          </li>
        ))}
      </ul>
      <p role="alert" className="error-text">
        {wrong}
      </p>
    </>
  );
}
