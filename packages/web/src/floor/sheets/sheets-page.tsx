import { IconArrowLeft, IconArrowRight } from "@tabler/icons-react";
import { useState } from "react";
import { useView } from "../../app/book/desk.tsx";
import { usePick, useWords } from "../../app/words.tsx";
import { useBench } from "../tasks/bench-context.tsx";
import { PagePicture } from "../tasks/page-picture.tsx";
import { useKeptPages, useKeptSheets } from "./use-kept-sheets.ts";

/** Screens of kept sheets: `sheets`, `sheets/<id>`; of steps `sheets/step-cards?step=<id>`. */
export const sheetsView = (sheet = "", step = ""): string =>
  `/sheets${sheet === "" ? "" : `/${encodeURIComponent(sheet)}`}${step === "" ? "" : `?step=${encodeURIComponent(step)}`}`;

/** Sheets as the release of the units keeps them: a list, or the pages of one. */
export function SheetsPage({
  release,
  sheet,
  step,
}: {
  readonly release: string;
  /** Id or kind of a sheet; blank: the list. */
  readonly sheet: string;
  /** A step whose page is opened first; blank: none. */
  readonly step: string;
}) {
  const { floor, floorRevision: own } = useWords();
  const { show } = useBench();
  const { found, failed } = useKeptSheets(release);
  const one = sheet === "" ? undefined : found?.find(({ id, kind }) => id === sheet || kind === sheet);
  return (
    <>
      <div className="floor-body">
        <h1>
          {one === undefined ? own.sheets(release) : one.title}{" "}
          <small className="dim">{one === undefined ? own.about : own.rev(release)}</small>
        </h1>
        {failed !== "" && (
          <p className="error-text" role="alert">
            {own.failed} {failed}
          </p>
        )}
        {found === null && failed === "" && (
          <p className="dim" role="status">
            {floor.loading}
          </p>
        )}
        {found !== null && one === undefined && (
          <>
            {(sheet !== "" || found.length === 0) && <p>{own.noSheet}</p>}
            <ul className="floor-ticks">
              {found.map(({ id, title, number, pages }) => (
                <li key={id}>
                  <button type="button" onClick={() => show(sheetsView(id))}>
                    <b className="floor-count">{pages}</b>
                    <span>
                      {title} <small>{number}</small>
                    </span>
                  </button>
                </li>
              ))}
            </ul>
          </>
        )}
        {one !== undefined && <SheetPages key={one.id} release={release} sheet={one} step={step} />}
      </div>
      <footer className="floor-foot">
        <button type="button" className="floor-plain" onClick={() => show(one === undefined ? "/list" : "")}>
          {floor.back}
        </button>
        {one !== undefined && (
          <button type="button" className="floor-plain" onClick={() => show(sheetsView())}>
            {own.sheets(release)}
          </button>
        )}
      </footer>
    </>
  );
}

/** The pages of a kept sheet, one at a time. */
function SheetPages({
  release,
  sheet,
  step,
}: {
  readonly release: string;
  readonly sheet: NonNullable<ReturnType<typeof useKeptSheets>["found"]>[number];
  readonly step: string;
}) {
  const { floor, floorRevision: own } = useWords();
  const pick = usePick();
  const lines = useView("stepLines", null);
  const { found, failed } = useKeptPages(release, sheet);
  const [turned, setTurned] = useState<number | null>(null);
  if (failed !== "")
    return (
      <p className="error-text" role="alert">
        {own.failed} {failed}
      </p>
    );
  if (found === null)
    return (
      <p className="dim" role="status">
        {floor.loading}
      </p>
    );
  const line = lines?.get(step);
  const name = line === undefined ? "" : pick(line.label, line.labelZh);
  const ofStep =
    name === ""
      ? 0
      : Math.max(
          0,
          found.findIndex(({ text }) => text.includes(name)),
        );
  const at = turned ?? ofStep;
  const page = found[at];
  const says = own.page(at + 1, found.length);
  const turn = (by: number): void => setTurned(Math.min(Math.max(at + by, 0), found.length - 1));
  return (
    <>
      <p className="floor-pages">
        <button
          type="button"
          className="floor-square"
          aria-label={own.before}
          disabled={at === 0}
          onClick={() => turn(-1)}
        >
          <IconArrowLeft size={30} />
        </button>
        <b role="status">{says}</b>
        <button
          type="button"
          className="floor-square"
          aria-label={own.after}
          disabled={at + 1 >= found.length}
          onClick={() => turn(1)}
        >
          <IconArrowRight size={30} />
        </button>
      </p>
      {page !== undefined && <PagePicture svg={page.svg} says={`${sheet.title}. ${says}`} />}
    </>
  );
}
