import { sheetWords } from "@pinwright/words";
import type { ViewEntry } from "../../worker/protocol.ts";
import { usePick, useSpeech, useWords } from "../words.tsx";

type Face = ViewEntry<"boardPlacements">;

/** The parts of a stage in the order in which they go in; like parts one after the other stand together. */
export function StageParts({
  references,
  face,
  boxes,
  picked,
  point,
  pick,
}: {
  readonly references: readonly string[];
  readonly face: Face;
  readonly boxes: readonly string[];
  readonly picked: string | null;
  readonly point: (reference: string | null) => void;
  readonly pick: (reference: string | null) => void;
}) {
  const own = useWords().boards;
  const pickLabel = usePick();
  const { language } = useSpeech();
  const marks: Readonly<Record<string, string>> = sheetWords(language).boards.marks;
  const parts = new Map(face.parts.map((part) => [part.reference, part]));
  let before = "";
  return (
    <ol className="stage-parts" onPointerLeave={() => point(null)}>
      {references.map((reference) => {
        const part = parts.get(reference);
        if (part === undefined) return null;
        const box = boxes.indexOf(part.partId) + 1;
        const name = pickLabel(part.part, part.partZh) || part.partId;
        const isLike = part.partId === before;
        before = part.partId;
        const notes = [
          marks[part.polarity] ?? part.polarity,
          ...(part.isHidden ? [own.hidden] : []),
          ...(part.masks > 0 ? [own.masked(part.masks)] : []),
        ].filter((text) => text !== "");
        return (
          <li key={reference} className={isLike ? "like" : ""}>
            <button
              type="button"
              aria-pressed={reference === picked}
              onClick={() => pick(reference === picked ? null : reference)}
              onPointerEnter={(event) => event.pointerType === "mouse" && point(reference)}
            >
              <b>{reference}</b>
              <span>
                {isLike ? (
                  <span className="dim">″</span>
                ) : (
                  <>
                    {own.box(box)}: {name}
                    {part.value !== "" && !name.includes(part.value) && (
                      <span className="dim"> {part.value}</span>
                    )}
                  </>
                )}
                {notes.length > 0 && (
                  <small>
                    {part.polarity !== "" && <i className="polar-sign" aria-hidden />}
                    {notes.join(" · ")}
                  </small>
                )}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

/** What the fillings of the picture mean. */
export function StageLegend() {
  const { legend } = useWords().boards;
  return (
    <ul className="chart-legend">
      {(["now", "before", "later"] as const).map((state) => (
        <li key={state}>
          <svg width="22" height="14" aria-hidden="true" className="board-drawing">
            <g className={`part ${state}`}>
              <path d="M1 1H21V13H1z" />
            </g>
          </svg>
          {legend[state]}
        </li>
      ))}
      <li>
        <svg width="22" height="14" aria-hidden="true" className="board-drawing">
          <g className="part now">
            <path d="M1 1H21V13H1z" />
            <path className="polar-bar" d="M4 2V12" />
          </g>
        </svg>
        {legend.polar}
      </li>
    </ul>
  );
}
