import { Button, Progress } from "@mantine/core";
import { useState, useSyncExternalStore } from "react";
import type { AskAnswer } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { pageRanges } from "./page-ranges.ts";
import { useSheetTitle } from "./sheet-title.ts";
import type { useDraftFacts } from "./use-draft-facts.ts";

/** Sheets that are shown before the rest is asked for. */
const SHOWN = 30;

/** Which sheets say something else, with their pages; each can be laid over the old one. */
export function ChangedSheets({
  sheets,
  draft,
  isDraft,
  lay,
}: {
  /** Null: the draft's are not composed. */
  readonly sheets: AskAnswer<"comparison">["sheets"] | null;
  readonly draft: ReturnType<typeof useDraftFacts>;
  readonly isDraft: boolean;
  readonly lay: (sheetId: string) => void;
}) {
  const own = useWords().compareApp.sheets;
  const titleOf = useSheetTitle();
  const [all, setAll] = useState(false);
  return (
    <section>
      <h3>
        {own.title}
        {sheets !== null && ` (${sheets.length})`}
      </h3>
      {isDraft && <AskDraft draft={draft} isKnown={sheets !== null} />}
      {sheets !== null && sheets.length === 0 && <p>{own.none}</p>}
      {sheets !== null && (
        <ul className="compare-sheets">
          {(all ? sheets : sheets.slice(0, SHOWN))
            .map((sheet) => ({ ...sheet, title: titleOf(sheet) }))
            .map(({ id, title, number, what, pages }) => (
              <li key={id}>
                <span>
                  {title} <span className="dim">{number}</span>
                </span>
                <span>
                  {own.what[what]}
                  {what === "changed" && pages.length > 0 && `: ${own.pages(pageRanges(pages))}`}
                </span>
                {what === "changed" && (
                  <button
                    type="button"
                    className="on-demand"
                    onClick={() => lay(id)}
                    aria-label={`${own.lay}: ${title}`}
                  >
                    {own.lay}
                  </button>
                )}
              </li>
            ))}
        </ul>
      )}
      {sheets !== null && !all && sheets.length > SHOWN && (
        <Button variant="default" size="compact-sm" onClick={() => setAll(true)}>
          {own.more(sheets.length)}
        </Button>
      )}
    </section>
  );
}

/** The draft's sheets have to be composed first: asks for that, and shows how far it is. */
function AskDraft({
  draft: { job, failed, changeNo: madeOf, ask, stop },
  isKnown,
}: {
  readonly draft: ReturnType<typeof useDraftFacts>;
  readonly isKnown: boolean;
}) {
  const own = useWords().compareApp.sheets;
  const desk = useDesk();
  const changeNo = useSyncExternalStore(desk.subscribe, () => desk.changeNo);
  const isGoing = job?.state === "waiting" || job?.state === "running";
  if (job !== null && isGoing) {
    const text = job.total === 0 ? own.preparing : own.progress(job.done, job.total);
    return (
      <div className="compare-progress">
        <Progress value={job.total === 0 ? 0 : (100 * job.done) / job.total} aria-label={text} />
        <span>{text}</span>
        <Button variant="default" size="compact-sm" onClick={stop}>
          {own.stop}
        </Button>
      </div>
    );
  }
  const isOld = isKnown && madeOf !== changeNo;
  return (
    <>
      {failed !== "" && <p className="error-text">{own.failed(failed)}</p>}
      {isOld && <p className="amber-text">{own.old}</p>}
      {(!isKnown || isOld) && (
        <>
          <Button variant="default" size="compact-md" onClick={ask}>
            {own.ask}
          </Button>
          <p className="dim">{own.askAbout}</p>
        </>
      )}
    </>
  );
}
