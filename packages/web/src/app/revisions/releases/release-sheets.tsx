import { pathTo, type ReleasedSheet } from "@pinwright/contract";
import { sheetWords } from "@pinwright/words";
import { useState } from "react";
import { call } from "../../../api/call.ts";
import { useTrouble } from "../../trouble.ts";
import { useSpeech } from "../../words.tsx";

/** Sheets by their kind, in the order in which they come. */
function byKind(sheets: readonly ReleasedSheet[]): ReadonlyMap<string, readonly ReleasedSheet[]> {
  const kinds = new Map<string, ReleasedSheet[]>();
  for (const sheet of sheets) kinds.set(sheet.kind, [...(kinds.get(sheet.kind) ?? []), sheet]);
  return kinds;
}

/** The sheets of a release in the reader's language, by kind; asked for when they are laid open. */
export function ReleaseSheets({ book, release }: { readonly book: string; readonly release: string }) {
  const { words, language } = useSpeech();
  const own = words.revisionsApp.list;
  const trouble = useTrouble();
  const [sheets, setSheets] = useState<readonly ReleasedSheet[] | null>(null);
  const [failed, setFailed] = useState("");
  const ask = (open: boolean): void => {
    if (!open || sheets !== null) return;
    setFailed("");
    call("releaseSheets", { parts: { book, release } }).then(setSheets, (error: unknown) =>
      setFailed(trouble(error)),
    );
  };
  const titles: Readonly<Record<string, string>> = sheetWords(language).kinds;
  const shown = sheets?.filter((sheet) => sheet.language === language) ?? [];
  return (
    <details className="release-sheets" onToggle={(event) => ask(event.currentTarget.open)}>
      <summary>{sheets === null ? own.sheets : own.sheetsOf(shown.length)}</summary>
      {failed !== "" && <p className="error-text">{failed}</p>}
      {failed === "" && sheets === null && <p className="dim">{own.loading}</p>}
      {[...byKind(shown)].map(([kind, list]) => (
        <details key={kind}>
          <summary>
            {titles[kind] ?? kind} <span className="dim">{own.sheetsOf(list.length)}</span>
          </summary>
          <ul>
            {list.map((sheet) => (
              <li key={sheet.id}>
                <a
                  href={pathTo("releaseSheet", { book, release, sheet: sheet.id })}
                  target="_blank"
                  rel="noreferrer"
                >
                  {sheet.title}
                </a>{" "}
                <span className="dim">
                  {sheet.number} · {own.pages(sheet.pages)}
                </span>
              </li>
            ))}
          </ul>
        </details>
      ))}
    </details>
  );
}
