import type { PrintChanges as Changes } from "@pinwright/contract";
import { useEffect, useState } from "react";
import { call } from "../../api/call.ts";
import { revisionsAddress } from "../revisions/address.ts";
import { pageRanges } from "../revisions/compare/page-ranges.ts";
import { useSpeech } from "../words.tsx";
import type { FoundPrint } from "./use-print.ts";

/** What changed on the sheet since it was printed: pages, sentences, and what was written of every release after it. */
export function PrintChanges({ found: { code, state, releases } }: { readonly found: FoundPrint }) {
  const { words, language } = useSpeech();
  const own = words.printPage;
  const [changes, setChanges] = useState<Changes | "none" | null>(null);
  const { machine: book, sheet, hash: print } = code;
  useEffect(() => {
    let wanted = true;
    setChanges(null);
    call("printChanges", { parts: { book, sheet, print }, query: { language } }).then(
      (found) => wanted && setChanges(found),
      () => wanted && setChanges("none"),
    );
    return () => {
      wanted = false;
    };
  }, [book, sheet, print, language]);
  const last = releases.find(({ name }) => name === state?.releases[0]);
  const since = releases.filter(({ no, note }) => no > (last?.no ?? 0) && note !== "");
  return (
    <section>
      <h2>{own.since}</h2>
      {changes === null && (
        <p className="dim" role="status">
          {own.working}
        </p>
      )}
      {changes !== null && changes !== "none" && <Told changes={changes} code={code} />}
      {since.map(({ name, note }) => (
        <div key={name}>
          <h3>{own.notesOf(name)}</h3>
          <p className="print-note">{note}</p>
        </div>
      ))}
    </section>
  );
}

function Told({
  changes: { from, to, pages, groups },
  code,
}: {
  readonly changes: Changes;
  readonly code: FoundPrint["code"];
}) {
  const own = useSpeech().words.printPage;
  const sheet = code.sheet.replace(/\.(?:en|zh|both)$/u, "");
  return (
    <>
      {pages.length > 0 && <p>{own.pages(pageRanges(pages))}</p>}
      {groups.length === 0 && <p>{own.noSentences}</p>}
      {groups.map(({ title, sentences }) => (
        <div key={title}>
          <h3>{title}</h3>
          <ul>
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </div>
      ))}
      <p className="print-links">
        <a href={revisionsAddress(code.machine, "compare", { from, to, sheet })}>{own.overlay}</a>
        <a href={revisionsAddress(code.machine, "compare", { from, to })}>{own.all}</a>
      </p>
    </>
  );
}
