import type { KeptDefect } from "@pinwright/contract";
import { Link } from "wouter";
import { useDesk, useView } from "../../book/desk.tsx";
import { DataTable } from "../../harnesses/data-table.tsx";
import { usePick, useWords } from "../../words.tsx";
import { unitAddress } from "../address.ts";
import { useNames, usePeople, useWhen } from "../names.tsx";
import { useDefectWords } from "../unit/unit-defects.tsx";

const FIRST = 10;

/** Defects one a row: what, where, why, and whether the tests since were passed. */
export function DefectList({ defects }: { readonly defects: readonly KeptDefect[] }) {
  const { benchQuality } = useWords();
  const own = benchQuality.defects;
  const { bookId } = useDesk();
  const names = useNames();
  const personOf = usePeople();
  const when = useWhen();
  const says = useDefectWords();
  const placeText = usePlaceText();
  return (
    <DataTable
      caption={own.list}
      rows={defects}
      rowKey={({ unit, defect }) => `${unit} ${defect}`}
      first={FIRST}
      columns={[
        {
          key: "unit",
          header: own.unit,
          value: ({ unit }) => unit,
          cell: ({ unit, defect, what, type }) => (
            <>
              <Link className="quality-unit" href={`${unitAddress(bookId, unit)}#defect-${defect}`}>
                {unit}
              </Link>
              <small className="dim quality-under">{names.type(what, type)}</small>
            </>
          ),
        },
        {
          key: "what",
          header: own.what,
          value: ({ kind, says: words }) => `${says.what(kind)} ${words}`.trim(),
          cell: (defect) => (
            <>
              {defect.mended === null && <b className="amber-text">{own.open}: </b>}
              {says.what(defect.kind)}
              {defect.says !== "" && <small className="dim quality-under">{defect.says}</small>}
            </>
          ),
        },
        { key: "where", header: own.where, value: placeText },
        {
          key: "found",
          header: own.found,
          value: ({ at }) => at,
          text: ({ at, person }) => `${at} ${personOf(person)}`,
          cell: ({ at, person }) => (
            <>
              {when(at)}
              <small className="dim quality-under">{personOf(person)}</small>
            </>
          ),
        },
        { key: "station", header: own.station, value: ({ station }) => names.station(station), minor: true },
        {
          key: "cause",
          header: own.cause,
          value: ({ mended }) => (mended === null ? "" : says.cause(mended.cause)),
        },
        {
          key: "mend",
          header: own.mend,
          value: ({ mended }) => mended?.minutes ?? 0,
          text: ({ mended }) => (mended === null ? "" : `${mended.at} ${mended.says}`),
          cell: ({ mended }) =>
            mended !== null && (
              <>
                {when(mended.at)}
                <small className="dim quality-under">
                  {[
                    personOf(mended.person),
                    mended.minutes === null ? "" : own.minutes(mended.minutes),
                    mended.says,
                  ]
                    .filter((text) => text !== "")
                    .join(" · ")}
                </small>
              </>
            ),
        },
        {
          key: "retest",
          header: own.retest,
          value: ({ retest }) => (retest === null ? "" : own.retests[retest]),
          cell: ({ retest }) =>
            retest !== null && (
              <span className={retest === "passed" ? undefined : "amber-text"}>{own.retests[retest]}</span>
            ),
        },
      ]}
    />
  );
}

/** Where a defect is, in words. */
function usePlaceText(): (defect: KeptDefect) => string {
  const { defects: own } = useWords().benchQuality;
  const pick = usePick();
  const names = useNames();
  const panels = useView("layoutPanels", null);
  return ({ where: { panel, item, point, xMm, yMm } }) => {
    const at =
      point ??
      (item === undefined
        ? xMm === undefined || yMm === undefined
          ? ""
          : own.at(Math.round(xMm), Math.round(yMm))
        : names.place(item));
    if (panel === undefined) return at === "" ? own.noPlace : at;
    const of = panels?.get(panel);
    const name = of === undefined ? panel : pick(of.label, of.labelZh) || panel;
    return at === "" ? name : own.onPanel(name, at);
  };
}
