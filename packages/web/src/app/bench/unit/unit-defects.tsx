import { pathTo } from "@pinwright/contract";
import type { DefectRecord, UnitState } from "@pinwright/engine";
import { useState } from "react";
import { Link } from "wouter";
import { boardAddress } from "../../boards/address.ts";
import { useDesk } from "../../book/desk.tsx";
import { useWords } from "../../words.tsx";
import { usePeople, useWhen } from "../names.tsx";

/** What a defect, or a cause of one, is called; floors may write others than the app has words for. */
export function useDefectWords(): {
  readonly what: (what: string) => string;
  readonly cause: (cause: string) => string;
} {
  const { floor } = useWords();
  const whats: Readonly<Record<string, string>> = floor.defect.whats;
  const causes: Readonly<Record<string, string>> = floor.mend.causes;
  return { what: (what) => whats[what] ?? what, cause: (cause) => causes[cause] ?? cause };
}

/** Where the place of a defect is drawn; null: nobody said where it is. */
function placeAddress(
  bookId: string,
  { what, type }: NonNullable<UnitState["begun"]>,
  { panel, item, point }: DefectRecord["where"],
): string | null {
  if (what === "board") return item === undefined ? null : boardAddress(bookId, type);
  if (point !== undefined) return `/b/${bookId}/wiring?id=${encodeURIComponent(point)}`;
  if (item !== undefined) return `/b/${bookId}/layout?id=${encodeURIComponent(item)}`;
  return panel === undefined ? null : `/b/${bookId}/layout/${encodeURIComponent(panel)}/top`;
}

/** Every defect that was found on a unit: where, its picture, and how it was mended. */
export function UnitDefects({ state }: { readonly state: UnitState }) {
  const { benchUnit: own } = useWords();
  return (
    <section aria-labelledby="unit-defects">
      <h3 id="unit-defects">{own.defects.title}</h3>
      {state.defects.size === 0 ? (
        <p className="dim">{own.defects.none}</p>
      ) : (
        <ul className="unit-defects">
          {[...state.defects.values()].map((defect) => (
            <li key={defect.defect} id={`defect-${defect.defect}`}>
              <Defect state={state} defect={defect} />
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Defect({ state, defect }: { readonly state: UnitState; readonly defect: DefectRecord }) {
  const { benchUnit: own } = useWords();
  const { bookId } = useDesk();
  const says = useDefectWords();
  const nameOf = usePeople();
  const when = useWhen();
  const [isMissing, setMissing] = useState(false);
  const { where, mended, found, picture } = defect;
  const place = state.begun === null ? null : placeAddress(bookId, state.begun, where);
  const at = where.point ?? where.item ?? where.panel ?? "";
  const what = says.what(defect.what);
  return (
    <>
      {picture !== "" &&
        (isMissing ? (
          <span className="dim unit-photo">{own.defects.noPicture}</span>
        ) : (
          <a
            className="unit-photo"
            href={pathTo("picture", { sha256: picture })}
            target="_blank"
            rel="noreferrer"
          >
            <img
              src={pathTo("picture", { sha256: picture })}
              alt={own.defects.picture(what)}
              onError={() => setMissing(true)}
            />
          </a>
        ))}
      <div>
        <b>{what}</b> {at !== "" && <span>{at}</span>}{" "}
        {mended === null && <span className="amber-text">{own.defects.open}</span>}
        {defect.says !== "" && <p>{defect.says}</p>}
        <small className="dim">
          {own.defects.found(nameOf(found.person), when(found.at))}
          {mended !== null && (
            <>
              {"; "}
              {own.defects.mended(
                says.cause(mended.cause),
                nameOf(mended.source.person),
                when(mended.source.at),
              )}
              {mended.minutes > 0 && `, ${own.minutes(mended.minutes)}`}
              {mended.says !== "" && ` – ${mended.says}`}
            </>
          )}
        </small>
        {place !== null && (
          <Link className="unit-place" href={place}>
            {own.defects.where}
          </Link>
        )}
      </div>
    </>
  );
}
