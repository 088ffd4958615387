import type { FaultAnswer, FaultSession, Seen } from "@pinwright/engine";
import { useState } from "react";
import { useFaults } from "../host.ts";
import { lookedLine } from "../looks.ts";
import { sessionText, suspectOfId } from "../session-text.ts";

interface Props {
  readonly session: FaultSession;
  readonly answer: FaultAnswer | null;
  readonly say: (seen: Readonly<Record<string, Seen | null>>) => void;
  /** Takes one thing back that was done. */
  readonly undo: (n: number) => void;
  readonly clear: () => void;
}

/** All that was said; each line can be taken back. */
export function History({ session, answer, say, undo, clear }: Props) {
  const faults = useFaults();
  const { words, names } = faults;
  const [isSure, setSure] = useState(false);
  const told = names.functions.filter(({ id }) => session.seen[id] !== undefined);
  const works = told.filter(({ id }) => session.seen[id] === "works");
  const bad = told.filter(({ id }) => session.seen[id] !== "works");
  const isEmpty = told.length === 0 && session.done.length === 0;
  return (
    <section className="ff-section" id="ff-history" aria-labelledby="ff-history-title">
      <h2 id="ff-history-title">{words.history}</h2>
      {isEmpty && <p>{words.historyNone}</p>}
      <ul className="ff-history">
        {bad.map(({ id, f }) => {
          const line = words.seen(names.functionName(f), words.says[session.seen[id] ?? "works"]);
          return <Line key={id} text={line} forget={() => say({ [id]: null })} />;
        })}
        {works.length > 0 && (
          <Line
            text={words.workCount(works.length)}
            forget={() => say(Object.fromEntries(works.map(({ id }) => [id, null])))}
          />
        )}
        {session.done.map((one, n) => {
          const line =
            one.what === "looked"
              ? lookedLine(faults, one.look, one.answer)
              : words.mendedLine(suspectOfId(faults, one.suspect), one.helped);
          // biome-ignore lint/suspicious/noArrayIndexKey: the same may be done twice, and the order is all there is
          return <Line key={`${n} ${line}`} text={line} forget={() => undo(n)} />;
        })}
      </ul>
      {!isEmpty && (
        <div className="ff-answers">
          {isSure ? (
            <>
              <span>{words.clearSure}</span>
              <button
                type="button"
                onClick={() => {
                  setSure(false);
                  clear();
                }}
              >
                {words.yes}
              </button>
              <button type="button" onClick={() => setSure(false)}>
                {words.no}
              </button>
            </>
          ) : (
            <button type="button" onClick={() => setSure(true)}>
              {words.clearAll}
            </button>
          )}
        </div>
      )}
      {!isEmpty && <Export text={sessionText(faults, session, answer)} />}
    </section>
  );
}

function Line({ text, forget }: { readonly text: string; readonly forget: () => void }) {
  const { words } = useFaults();
  return (
    <li>
      <span>{text}</span>
      <button type="button" aria-label={words.forget(text)} onClick={forget}>
        ×
      </button>
    </li>
  );
}

/** All of it as a text for the service desk. */
function Export({ text }: { readonly text: string }) {
  const { words, file } = useFaults();
  const [isCopied, setCopied] = useState(false);
  const copy = (): void =>
    void navigator.clipboard?.writeText(text).then(
      () => setCopied(true),
      () => setCopied(false),
    );
  return (
    <details className="ff-export">
      <summary>{words.export}</summary>
      <textarea readOnly rows={12} value={text} aria-label={words.export} />
      <div className="ff-answers">
        <button type="button" onClick={copy}>
          {isCopied ? words.copied : words.copy}
        </button>
        <a
          className="ff-button"
          download={`${file.machine.id}-faults.txt`}
          href={`data:text/plain;charset=utf-8,${encodeURIComponent(text)}`}
        >
          {words.saveText}
        </a>
        <button type="button" onClick={() => print()}>
          {words.print}
        </button>
      </div>
    </details>
  );
}
