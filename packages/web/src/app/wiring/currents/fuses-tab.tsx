import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useView } from "../../book/desk.tsx";
import { DataTable } from "../../harnesses/data-table.tsx";
import { usePick, useWords } from "../../words.tsx";
import { WiringLink } from "../links.tsx";
import { fuseSteps } from "./calc.ts";
import { CalcTable } from "./calc-table.tsx";
import { a2sText, ampsText, percentText, secondsText } from "./figures.ts";
import { FilterField, hasWords } from "./filter-field.tsx";
import { ShareMark, ShareScale } from "./share-mark.tsx";
import { TabEmpty, TabHead } from "./tab-head.tsx";
import { useCurrents } from "./use-currents.ts";

type FuseLine = ViewEntry<"electricFuses">;

/** Every fuse: what it carries, what its pulses ask of it, and what it does in a short circuit. */
export function FusesTab() {
  const { electric: words, common } = useWords();
  const pick = usePick();
  const address = useCurrents();
  const fuses = useView("electricFuses", null);
  const [filter, setFilter] = useState("");
  if (fuses === null) return <p className="dim">{common.loading}</p>;
  if (fuses.size === 0) return <TabEmpty tab="fuses" table="fuses" />;
  const { col, fuse } = words;
  const rows = [...fuses.values()].filter((one) =>
    hasWords(
      `${one.id} ${one.rating.fuseId ?? ""} ${one.label.en} ${one.label.zh} ${one.rating.supplyId}`,
      filter,
    ),
  );
  return (
    <>
      <TabHead tab="fuses" />
      <ShareScale />
      <DataTable
        caption={words.tabs.fuses}
        rows={rows}
        rowKey={(one) => one.id}
        first={60}
        tools={<FilterField value={filter} onChange={setFilter} />}
        columns={[
          {
            key: "fuse",
            header: col.fuse,
            value: (one) => one.rating.fuseId ?? one.id,
            cell: (one) => (
              <>
                <Link href={address("fuses", one.id)}>{pick(one.label.en, one.label.zh) || one.id}</Link>
                <small>{one.rating.fuseId ?? one.id}</small>
              </>
            ),
          },
          {
            key: "rated",
            header: `${col.rated}, A`,
            align: "end",
            value: (one) => one.rating.ratedA,
            cell: (one) => ampsText(one.rating.ratedA),
          },
          {
            key: "speed",
            header: col.speed,
            minor: true,
            value: (one) => fuse.speeds[one.rating.speed],
          },
          {
            key: "share",
            header: col.share,
            value: (one) => one.share,
            text: (one) => percentText(one.share),
            cell: (one) => <ShareMark share={one.share} />,
          },
          {
            key: "pulses",
            header: `${col.pulses}, A²s`,
            minor: true,
            align: "end",
            value: (one) => one.rating.neededA2s ?? -1,
            text: (one) => String(one.rating.neededA2s ?? ""),
            cell: ({ rating: { neededA2s, meltingA2s } }) =>
              neededA2s === null ? (
                "–"
              ) : (
                <>
                  <span className={meltingA2s !== null && neededA2s > meltingA2s ? "error-text" : undefined}>
                    {a2sText(neededA2s)}
                  </span>
                  {meltingA2s !== null && (
                    <small>
                      {fuse.has} {a2sText(meltingA2s)}
                    </small>
                  )}
                </>
              ),
          },
          {
            key: "far",
            header: col.far,
            align: "end",
            value: (one) => one.rating.far?.opensS ?? -1,
            text: (one) => (one.rating.far === null ? "" : secondsText(one.rating.far.opensS)),
            cell: (one) => <FarText one={one} />,
          },
          {
            key: "weakest",
            header: col.weakest,
            value: (one) => one.rating.weakest?.used ?? -1,
            text: (one) => one.weakest ?? "",
            cell: (one) =>
              one.rating.weakest === null || one.weakest === null ? (
                "–"
              ) : (
                <>
                  <WiringLink id={one.rating.weakest.wireId} text={one.weakest} />{" "}
                  <ShareMark share={one.rating.weakest.used} />
                </>
              ),
          },
        ]}
        detail={{
          label: words.showCorners,
          of: (one) => <CalcTable caption={words.computation} steps={fuseSteps(words, one.rating)} />,
        }}
      />
    </>
  );
}

function FarText({ one: { rating } }: { readonly one: FuseLine }) {
  const { fuse } = useWords().electric;
  if (rating.far === null) return "–";
  const { opensS, heldA } = rating.far;
  return (
    <>
      {Number.isFinite(opensS) ? secondsText(opensS) : <b>{fuse.shortNever}</b>}
      <small>{ampsText(heldA)}</small>
    </>
  );
}
