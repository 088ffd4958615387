import { pathTo, type SheetCode } from "@pinwright/contract";
import { afterOf } from "@pinwright/words";
import { IconAlertTriangle, IconCircleCheck, IconHelpCircle, IconPencil } from "@tabler/icons-react";
import { useTrouble } from "../trouble.ts";
import { useWords } from "../words.tsx";
import { PrintChanges } from "./print-changes.tsx";
import { type FoundPrint, isOfChange, usePrint } from "./use-print.ts";
import "./print.css";

const SIGNS = {
  current: IconCircleCheck,
  superseded: IconAlertTriangle,
  draft: IconPencil,
  unknown: IconHelpCircle,
};

/** Whether a print still holds, in big words; which revision is the newest, and what changed on the sheet since. */
export function PrintCard({ code }: { readonly code: SheetCode }) {
  const { printPage, common } = useWords();
  const { found, failed } = usePrint(code);
  const trouble = useTrouble();
  if (failed !== null) return <p className="error-text">{trouble(failed)}</p>;
  if (found === null)
    return (
      <p className="dim" role="status">
        {common.loading}
      </p>
    );
  const is = found.state?.is ?? "unknown";
  const Sign = SIGNS[is];
  return (
    <article className="print-card" data-is={is}>
      <p className="print-is" role="status">
        <Sign size={44} aria-hidden /> {printPage.is[is]}
      </p>
      <p className="print-says">
        <Verdict found={found} />
      </p>
      <Facts found={found} />
      <Links found={found} />
      {is === "superseded" && <PrintChanges found={found} />}
    </article>
  );
}

function Verdict({ found: { code, state } }: { readonly found: FoundPrint }) {
  const own = useWords().printPage;
  const printed = usePrinted(code.revision);
  if (state === null) return own.says.nowhere;
  if (state.is === "unknown") return own.says.unknown;
  if (state.is === "draft") return own.says.draft;
  const newest = state.newest?.name ?? "";
  if (isOfChange(code.sheet) && state.is === "current") return own.says.change(newest);
  if (state.is === "superseded")
    return state.now === null ? own.says.withdrawn(newest) : own.says.superseded(newest);
  return (
    <>
      {own.says.current(newest)}
      {code.revision !== newest && <> {own.same(printed, newest)}</>}
    </>
  );
}

/** What a print says of its revision, in words. */
function usePrinted(revision: string): string {
  const { bar } = useWords().revisionsApp;
  const after = afterOf(revision);
  return after === null ? bar.unit(revision) : after === "" ? bar.draft : bar.after(after);
}

function Facts({ found: { code, state } }: { readonly found: FoundPrint }) {
  const own = useWords().printPage.facts;
  const printed = usePrinted(code.revision);
  return (
    <dl className="print-facts">
      <Line name={own.machine}>{code.machine}</Line>
      <Line name={own.sheet}>
        {state?.now == null ? (
          code.sheet
        ) : (
          <>
            {state.now.title} <span className="dim">{state.now.number}</span>
          </>
        )}
      </Line>
      <Line name={own.revision}>{code.revision === "" ? "–" : printed}</Line>
      {state !== null && (
        <Line name={own.newest}>
          <b>{state.newest?.name ?? own.none}</b>{" "}
          {state.newest !== null && <span className="dim">{own.draftSince(state.changesSince)}</span>}
        </Line>
      )}
      {state !== null && state.releases.length > 0 && (
        <Line name={own.releases}>{state.releases.join(", ")}</Line>
      )}
    </dl>
  );
}

function Line({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Links({ found: { code, state } }: { readonly found: FoundPrint }) {
  const own = useWords().printPage;
  if (state === null) return null;
  const address = (release: string): string =>
    pathTo("releaseSheet", { book: code.machine, release, sheet: code.sheet });
  const kept = state.releases[0];
  return (
    <p className="print-links">
      {state.newest !== null && state.now !== null && (
        <a className="print-main" href={address(state.newest.name)} target="_blank" rel="noreferrer">
          {own.current}
        </a>
      )}
      {state.is === "superseded" && kept !== undefined && (
        <a href={address(kept)} target="_blank" rel="noreferrer">
          {own.asPrinted(kept)}
        </a>
      )}
    </p>
  );
}
