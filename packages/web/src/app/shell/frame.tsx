import type { ReactNode } from "react";
import { Guide } from "../guide/guide.tsx";
import { useWords } from "../words.tsx";
import { BookBar, PlainBar } from "./bar.tsx";
import { Rail } from "./rail.tsx";
import { RefusedEdits } from "./refused-edits.tsx";
import { Working } from "./working.tsx";

/** Bar above, rail beside, and the section in the middle. */
export function Frame({
  bookId,
  children,
}: {
  readonly bookId: string | null;
  readonly children: ReactNode;
}) {
  const words = useWords();
  return (
    <div className="shell">
      <a className="skip" href="#main">
        {words.shell.skip}
      </a>
      {bookId === null ? <PlainBar /> : <BookBar bookId={bookId} />}
      <Rail bookId={bookId} />
      <main className="main" id="main" tabIndex={-1}>
        {children}
      </main>
      {bookId !== null && <Working />}
      {bookId !== null && <RefusedEdits />}
      {bookId !== null && <Guide bookId={bookId} />}
    </div>
  );
}
