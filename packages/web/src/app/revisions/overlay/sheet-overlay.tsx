import { NativeSelect, SegmentedControl } from "@mantine/core";
import { pathTo } from "@pinwright/contract";
import { useEffect, useState } from "react";
import type { AskAnswer, AskParam } from "../../../worker/protocol.ts";
import { useDesk } from "../../book/desk.tsx";
import { PaperView } from "../../harnesses/paper-view.tsx";
import { today } from "../../runs/today.ts";
import { useTrouble } from "../../trouble.ts";
import { useSpeech } from "../../words.tsx";
import { DRAFT } from "../address.ts";
import "./overlay.css";

type Laid = AskAnswer<"overlay">;
type Side = AskParam<"overlay">["before"];

const SHOWN = ["both", "old", "fresh"] as const;
type Shown = (typeof SHOWN)[number];

/** What a revision has of a sheet; a release that has none of this name has nothing. */
async function sideOf(book: string, revision: string, sheetId: string): Promise<Side> {
  if (revision === DRAFT) return "draft";
  const response = await fetch(
    pathTo("releaseSheet", { book, release: revision, sheet: sheetId }, { format: "json" }),
    { credentials: "same-origin" },
  );
  if (response.status === 404) return "none";
  if (!response.ok) throw new Error(response.statusText);
  return { kept: await response.text() };
}

/** A sheet of two revisions laid over each other: moved about and enlarged, old, new, or both. */
export function SheetOverlay({
  sheetId,
  title,
  from,
  to,
  pages,
}: {
  readonly sheetId: string;
  readonly title: string;
  readonly from: string;
  readonly to: string;
  /** Pages that differ, from 1; none: not known. */
  readonly pages: readonly number[];
}) {
  const { words, language } = useSpeech();
  const own = words.compareApp.overlay;
  const desk = useDesk();
  const trouble = useTrouble();
  const [page, setPage] = useState((pages[0] ?? 1) - 1);
  const [shown, setShown] = useState<Shown>("both");
  const [laid, setLaid] = useState<Laid | null>(null);
  const [failed, setFailed] = useState("");
  useEffect(() => {
    let wanted = true;
    setLaid(null);
    setFailed("");
    void Promise.all([sideOf(desk.bookId, from, sheetId), sideOf(desk.bookId, to, sheetId)])
      .then(([before, after]) =>
        desk.ask("overlay", { sheetId, page, before, after, language, date: today() }),
      )
      .then(
        (answer) => wanted && setLaid(answer),
        (error: unknown) => wanted && setFailed(trouble(error)),
      );
    return () => {
      wanted = false;
    };
  }, [desk, sheetId, from, to, page, language, trouble]);
  if (failed !== "") return <p className="error-text">{failed}</p>;
  if (laid === null)
    return (
      <p className="dim" role="status">
        {own.working}
      </p>
    );
  const tools = (
    <>
      <SegmentedControl
        size="sm"
        aria-label={own.show}
        value={shown}
        data={SHOWN.map((value) => ({ value, label: own.shown[value] }))}
        onChange={(value) => setShown(SHOWN.find((one) => one === value) ?? "both")}
      />
      {laid.pages > 1 && (
        <NativeSelect
          aria-label={own.page}
          value={String(page)}
          onChange={(event) => setPage(Number(event.currentTarget.value))}
          data={Array.from({ length: laid.pages }, (_, i) => ({
            value: String(i),
            label: own.pageOf(i + 1, laid.pages, pages.includes(i + 1)),
          }))}
        />
      )}
      <Legend from={from} to={to} laid={laid} />
    </>
  );
  return (
    <div className="sheet-overlay" data-shown={shown}>
      {laid.oldMarks + laid.freshMarks === 0 && <p>{own.same}</p>}
      <PaperView
        label={`${title}: ${own.label}`}
        widthMm={laid.widthMm}
        heightMm={laid.heightMm}
        svg={svgOf(laid)}
        tools={tools}
      />
    </div>
  );
}

/** The three layers as one drawing; style says which of them are seen. */
const svgOf = ({ widthMm, heightMm, same, old, fresh }: Laid): string =>
  [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${widthMm} ${heightMm}">`,
    `<rect width="100%" height="100%" fill="#ffffff"/>`,
    `<g class="overlay-same">${same}</g>`,
    `<g class="overlay-old">${old}</g>`,
    `<g class="overlay-fresh">${fresh}</g>`,
    "</svg>",
  ].join("");

function Legend({ from, to, laid }: { readonly from: string; readonly to: string; readonly laid: Laid }) {
  const { words } = useSpeech();
  const own = words.compareApp;
  const name = (revision: string): string => (revision === DRAFT ? own.draft : revision);
  return (
    <ul className="overlay-legend" aria-label={own.overlay.legend}>
      <li>
        <svg viewBox="0 0 32 10" width="32" height="10" aria-hidden="true">
          <line x1="0" y1="5" x2="32" y2="5" stroke="#d55e00" strokeWidth="3" strokeDasharray="7 4" />
        </svg>
        {own.overlay.onlyOld(name(from), laid.oldMarks)}
      </li>
      <li>
        <svg viewBox="0 0 32 10" width="32" height="10" aria-hidden="true">
          <line x1="0" y1="5" x2="32" y2="5" stroke="#0072b2" strokeWidth="4" />
        </svg>
        {own.overlay.onlyNew(name(to), laid.freshMarks)}
      </li>
    </ul>
  );
}
