import { TextInput } from "@mantine/core";
import { useEffect, useRef, useState } from "react";
import { Link, useSearchParams } from "wouter";
import type { AskAnswer } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { useSpeech } from "../../words.tsx";
import { DRAFT } from "../address.ts";
import { SheetOverlay } from "../overlay/sheet-overlay.tsx";
import { ChangedSheets } from "./changed-sheets.tsx";
import { Effects } from "./effects.tsx";
import { MakeSheets } from "./make-sheets.tsx";
import { sheetNamed, useSheetTitle } from "./sheet-title.ts";
import { thingAddress } from "./thing-address.ts";
import { useComparison } from "./use-comparison.ts";
import { useDraftFacts } from "./use-draft-facts.ts";

type Comparison = AskAnswer<"comparison">;

/** What differs between two revisions, and what follows from it. */
export function Compared({ from, to }: { readonly from: string; readonly to: string }) {
  const own = useSpeech().words.compareApp;
  const draft = useDraftFacts(from);
  const { comparison, working, failed } = useComparison(from, to, draft.facts);
  const [params, setParams] = useSearchParams();
  const sheetId = params.get("sheet");
  if (failed !== "") return <p className="error-text">{failed}</p>;
  if (comparison === null)
    return (
      <p className="dim" role="status">
        {own.working}
      </p>
    );
  const sheet = comparison.sheets.find(({ id }) => id === sheetId);
  const show = (id: string | null): void =>
    setParams({ from, to, ...(id === null ? {} : { sheet: id }) }, { replace: true });
  const hasSheets = to !== DRAFT || draft.facts !== null;
  return (
    <div className="compared" aria-busy={working}>
      {sheetId !== null && (
        <Overlaid
          key={sheetId}
          sheetId={sheetId}
          sheet={sheet}
          from={from}
          to={to}
          close={() => show(null)}
        />
      )}
      <Sentences comparison={comparison} from={from} to={to} />
      <aside className="compare-effects">
        <MakeSheets from={from} to={to} />
        <ChangedSheets
          sheets={hasSheets ? comparison.sheets : null}
          draft={draft}
          isDraft={to === DRAFT}
          lay={show}
        />
        <Effects comparison={comparison} to={to} />
      </aside>
    </div>
  );
}

function Overlaid({
  sheetId,
  sheet,
  from,
  to,
  close,
}: {
  readonly sheetId: string;
  readonly sheet: Comparison["sheets"][number] | undefined;
  readonly from: string;
  readonly to: string;
  readonly close: () => void;
}) {
  const { words, language } = useSpeech();
  const own = words.compareApp.sheets;
  const titleOf = useSheetTitle();
  const title = titleOf(sheet ?? sheetNamed(sheetId));
  const place = useRef<HTMLElement>(null);
  // Whoever asked for it stands further down in the list of sheets.
  useEffect(() => {
    place.current?.scrollIntoView({ block: "start" });
  }, []);
  return (
    <section className="compare-overlay" aria-label={title} ref={place}>
      <header>
        <h3>{title}</h3>
        <button type="button" className="on-demand" onClick={close}>
          {own.close}
        </button>
      </header>
      <SheetOverlay
        sheetId={`${sheetId}.${language}`}
        title={title}
        from={from}
        to={to}
        pages={sheet?.pages ?? []}
      />
    </section>
  );
}

function Sentences({
  comparison,
  from,
  to,
}: {
  readonly comparison: Comparison;
  readonly from: string;
  readonly to: string;
}) {
  const own = useSpeech().words.compareApp;
  const { bookId } = useDesk();
  const [text, setText] = useState("");
  const name = (revision: string): string => (revision === DRAFT ? own.draft : revision);
  const groups = comparison.told;
  const wanted = text.trim().toLowerCase();
  const shown = groups.flatMap(({ subject, title, sentences }) => {
    if (wanted === "" || `${title} ${subject.id}`.toLowerCase().includes(wanted))
      return [{ subject, title, sentences }];
    const some = sentences.filter((sentence) => sentence.toLowerCase().includes(wanted));
    return some.length === 0 ? [] : [{ subject, title, sentences: some }];
  });
  const count = groups.reduce((sum, { sentences }) => sum + sentences.length, 0);
  if (count === 0) return <p>{own.nothing(name(from), name(to))}</p>;
  return (
    <section className="compare-sentences" aria-label={own.changes(count)}>
      <div className="compare-filter">
        <b role="status">{own.changes(count)}</b>
        <TextInput
          aria-label={own.filter}
          placeholder={own.filterHint}
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
        />
      </div>
      {shown.length === 0 && <p>{own.noMatch}</p>}
      {shown.map(({ subject, title, sentences }) => (
        <section key={`${subject.table} ${subject.id}`} className="compare-group">
          <h3>
            <Link href={thingAddress(bookId, subject)} title={own.openThing(subject.id)}>
              {title}
            </Link>
          </h3>
          <ul>
            {sentences.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      ))}
    </section>
  );
}
