import { useState } from "react";
import { Link } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { addressOf } from "../../book/place-of.ts";
import { DataTable } from "../../harnesses/data-table.tsx";
import { usePick, useWords } from "../../words.tsx";
import { MomentText } from "./conductors-tab.tsx";
import { CornerTable, WorstOf } from "./corner-table.tsx";
import { ampsText, figure, percentText, voltsText } from "./figures.ts";
import { FilterField, hasWords } from "./filter-field.tsx";
import { TabEmpty, TabHead } from "./tab-head.tsx";
import { useCurrents } from "./use-currents.ts";
import { OnDemand, WorkedLoadTable } from "./worked.tsx";

type Load = ViewEntry<"electricLoads">;

/** Every load with the volts that reach it. */
export function LoadsTab() {
  const { electric: words, common } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const address = useCurrents();
  const loads = useView("electricLoads", null);
  const [filter, setFilter] = useState("");
  if (loads === null) return <p className="dim">{common.loading}</p>;
  if (loads.size === 0)
    return (
      <>
        <TabEmpty tab="loads" table="elements" />
        <Unfed />
      </>
    );
  const { col } = words;
  const rows = [...loads.values()].filter((one) =>
    hasWords(`${one.id} ${one.label.en} ${one.label.zh} ${one.supply.id} ${words.kinds[one.kind]}`, filter),
  );
  return (
    <>
      <TabHead tab="loads" />
      <Unfed />
      <DataTable
        caption={words.tabs.loads}
        rows={rows}
        rowKey={(one) => one.id}
        first={60}
        tools={<FilterField value={filter} onChange={setFilter} />}
        columns={[
          {
            key: "load",
            header: col.load,
            value: (one) => pick(one.label.en, one.label.zh) || one.id,
            cell: (one) => (
              <>
                <Link href={addressOf(bookId, { kind: "item", id: one.itemId ?? one.id })}>
                  {pick(one.label.en, one.label.zh) || one.id}
                </Link>
                <small>{one.id}</small>
              </>
            ),
          },
          { key: "kind", header: col.kind, value: (one) => words.kinds[one.kind], minor: true },
          {
            key: "supply",
            header: col.supply,
            minor: true,
            value: (one) => pick(one.supply.label.en, one.supply.label.zh) || one.supply.id,
            cell: (one) => (
              <Link href={address("supplies", one.supply.id)}>
                {pick(one.supply.label.en, one.supply.label.zh) || one.supply.id}
              </Link>
            ),
          },
          {
            key: "volts",
            header: `${words.nominal}, V`,
            align: "end",
            value: (one) => one.volts.nominalV,
            cell: (one) => figure(one.volts.nominalV),
          },
          {
            key: "alone",
            header: `${col.alone}, V`,
            align: "end",
            value: (one) => one.volts.aloneV.least,
            cell: (one) => <WorstOf spread={one.volts.aloneV} text={voltsText} worst="least" />,
          },
          {
            key: "worst",
            header: `${col.worst}, V`,
            align: "end",
            value: (one) => one.volts.worstV.least,
            cell: (one) => <WorstOf spread={one.volts.worstV} text={voltsText} worst="least" />,
          },
          {
            key: "missing",
            header: col.missing,
            align: "end",
            value: (one) => one.missing,
            text: (one) => percentText(one.missing),
            cell: (one) => <b>{percentText(one.missing)}</b>,
          },
          {
            key: "amps",
            header: `${col.amps}, A`,
            align: "end",
            minor: true,
            value: (one) => one.volts.amps.most,
            cell: (one) => <WorstOf spread={one.volts.amps} text={ampsText} />,
          },
        ]}
        detail={{ label: words.showCorners, of: (one) => <LoadDetail one={one} /> }}
      />
    </>
  );
}

function LoadDetail({ one: { volts } }: { readonly one: Load }) {
  const { electric: words } = useWords();
  return (
    <div className="figures-detail">
      <CornerTable
        caption={words.corners}
        rows={[
          { name: `${words.col.volts}, ${words.col.alone}`, spread: volts.aloneV, text: voltsText },
          { name: `${words.col.volts}, ${words.col.worst}`, spread: volts.worstV, text: voltsText },
          { name: words.col.amps, spread: volts.amps, text: ampsText },
        ]}
      />
      <MomentText momentId={volts.momentId} />
      <OnDemand label={words.worked.showLoad}>{() => <WorkedLoadTable loadId={volts.loadId} />}</OnDemand>
    </div>
  );
}

/** Loads that nothing feeds, each with a link to where it is. */
function Unfed() {
  const { electric: words } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const unfed = useView("electricUnfed", null);
  if (unfed === null || unfed.size === 0) return null;
  const all = [...unfed.values()];
  return (
    <p>
      <b className="amber-text">{words.unfed(all.length)}</b>{" "}
      {all.map(({ id, itemId, label }, i) => (
        <span key={id}>
          {i > 0 && ", "}
          <Link href={addressOf(bookId, { kind: "connector", id: itemId ?? id })}>
            {pick(label.en, label.zh) || id}
          </Link>
        </span>
      ))}
    </p>
  );
}
