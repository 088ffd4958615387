import { SegmentedControl, Switch } from "@mantine/core";
import { useState } from "react";
import { Link, useSearchParams } from "wouter";
import type { ViewEntry } from "../../../worker/protocol.ts";
import { useDesk, useView } from "../../book/desk.tsx";
import { addressOf } from "../../book/place-of.ts";
import { type DataColumn, DataTable } from "../../harnesses/data-table.tsx";
import { usePick, useWords } from "../../words.tsx";
import { HarnessLink, WiringLink } from "../links.tsx";
import { contactSteps, dropStep, wireSteps } from "./calc.ts";
import { CalcTable } from "./calc-table.tsx";
import { CornerTable, WorstOf } from "./corner-table.tsx";
import { ampsText, ohmText, percentText, voltsText } from "./figures.ts";
import { FilterField, hasWords } from "./filter-field.tsx";
import { ShareMark, ShareScale } from "./share-mark.tsx";
import { TabEmpty, TabHead } from "./tab-head.tsx";
import { OnDemand, WorkedCurrentTable } from "./worked.tsx";

export type Conductor = ViewEntry<"electricConductors">;
const KINDS = ["all", "wire", "contact"] as const;
type Kind = (typeof KINDS)[number];

/** Every wire and contact by how near it is to its limit. */
export function ConductorsTab() {
  const { electric: words, common } = useWords();
  const [search] = useSearchParams();
  const conductors = useView("electricConductors", { of: "all", id: "" });
  const [kind, setKind] = useState<Kind>("all");
  const [filter, setFilter] = useState(search.get("id") ?? "");
  const [carrying, setCarrying] = useState(true);
  if (conductors === null) return <p className="dim">{common.loading}</p>;
  if (conductors.size === 0) return <TabEmpty tab="conductors" table="nets" />;
  const rows = [...conductors.values()].filter(
    (one) =>
      (kind === "all" || one.kind === kind) &&
      (!carrying || one.carried.peakA.most > 1e-6) &&
      hasWords(`${one.id} ${one.printed} ${one.netId ?? ""} ${one.what.en} ${one.what.zh}`, filter),
  );
  const labels = { all: words.all, wire: words.onlyWires, contact: words.onlyContacts };
  return (
    <>
      <TabHead tab="conductors" />
      <ShareScale />
      <ConductorTable
        caption={words.tabs.conductors}
        rows={rows}
        tools={
          <>
            <SegmentedControl
              aria-label={words.col.kind}
              value={kind}
              data={KINDS.map((value) => ({ value, label: labels[value] }))}
              onChange={(value) => setKind(KINDS.find((one) => one === value) ?? "all")}
            />
            <FilterField value={filter} onChange={setFilter} />
            <Switch
              label={words.onlyCarrying}
              checked={carrying}
              onChange={(event) => setCarrying(event.currentTarget.checked)}
            />
          </>
        }
      />
    </>
  );
}

/** Wires and contacts with what they carry; each unfolds to its corners and its computation. */
export function ConductorTable({
  caption,
  rows,
  tools,
}: {
  readonly caption: string;
  readonly rows: readonly Conductor[];
  readonly tools?: React.ReactNode;
}) {
  const { electric: words } = useWords();
  const pick = usePick();
  const { col } = words;
  const columns: readonly DataColumn<Conductor>[] = [
    {
      key: "what",
      header: col.what,
      value: (one) => one.printed,
      cell: (one) => (
        <>
          <WiringLink id={one.id} text={one.printed} />
          <small>
            {words.kinds[one.kind]} · {pick(one.what.en, one.what.zh)}
          </small>
        </>
      ),
    },
    {
      key: "net",
      header: col.net,
      value: (one) => one.netId ?? "",
      cell: (one) => (one.netId === null ? "" : <WiringLink id={one.netId} />),
      minor: true,
    },
    {
      key: "share",
      header: col.share,
      value: (one) => one.share ?? -1,
      text: (one) => (one.share === null ? "" : percentText(one.share)),
      cell: (one) => <ShareMark share={one.share} />,
    },
    {
      key: "rms",
      header: `${col.rms}, A`,
      align: "end",
      value: (one) => one.carried.rmsA.most,
      cell: (one) => <WorstOf spread={one.carried.rmsA} text={ampsText} />,
    },
    {
      key: "limit",
      header: `${col.limit}, A`,
      align: "end",
      value: (one) => limitOf(one) ?? -1,
      text: (one) => String(limitOf(one) ?? ""),
      cell: (one) => {
        const limit = limitOf(one);
        return limit === null ? "–" : ampsText(limit);
      },
    },
    {
      key: "peak",
      header: `${col.peak}, A`,
      align: "end",
      minor: true,
      value: (one) => one.carried.peakA.most,
      cell: (one) => <WorstOf spread={one.carried.peakA} text={ampsText} />,
    },
    {
      key: "drop",
      header: `${col.drop}, V`,
      align: "end",
      minor: true,
      value: (one) => one.carried.dropV.most,
      cell: (one) => <WorstOf spread={one.carried.dropV} text={voltsText} />,
    },
  ];
  return (
    <DataTable
      caption={caption}
      columns={columns}
      rows={rows}
      rowKey={(one) => one.id}
      first={60}
      tools={tools}
      detail={{ label: words.showCorners, of: (one) => <ConductorDetail one={one} /> }}
    />
  );
}

const limitOf = ({ wire, contact }: Conductor): number | null => wire?.limitA ?? contact?.limitA ?? null;

/** A conductor at its corners, its moment, and how its limit comes about. */
export function ConductorDetail({ one }: { readonly one: Conductor }) {
  const { electric: words } = useWords();
  const { bookId } = useDesk();
  const { carried, wire, contact } = one;
  const limitSteps =
    wire !== null ? wireSteps(words, wire) : contact !== null ? contactSteps(words, contact) : [];
  return (
    <div className="figures-detail">
      <p className="figure-links">
        {one.harness !== null && <HarnessLink harness={one.harness} />}
        <Link href={addressOf(bookId, { kind: "item", id: one.id })}>{words.onLayout}</Link>
        <Link href={`/b/${bookId}/findings?text=${encodeURIComponent(one.id)}`}>{words.findings}</Link>
      </p>
      <CornerTable
        caption={words.corners}
        rows={[
          { name: words.col.steady, spread: carried.steadyA, text: ampsText },
          { name: words.col.rms, spread: carried.rmsA, text: ampsText },
          { name: words.col.peak, spread: carried.peakA, text: ampsText },
          { name: words.col.drop, spread: carried.dropV, text: voltsText },
          { name: words.col.ohm, spread: carried.ohm, text: ohmText },
        ]}
      />
      <MomentText momentId={carried.momentId} />
      <CalcTable caption={words.computation} steps={[...limitSteps, dropStep(words, carried)]} />
      <OnDemand label={words.worked.showCurrent}>{() => <WorkedCurrentTable partId={one.id} />}</OnDemand>
    </div>
  );
}

/** The moment of a largest current, by the loads that are on in it. */
export function MomentText({ momentId }: { readonly momentId: string }) {
  const { electric: words } = useWords();
  const pick = usePick();
  const { bookId } = useDesk();
  const moment = useView("electricMoment", momentId);
  if (moment === null) return null;
  const loads = [...moment.values()];
  return (
    <details className="moment">
      <summary>
        {words.moment}: {loads.length === 0 ? words.always : words.momentOf(loads.length)}
      </summary>
      <ul>
        {loads.map(({ id, itemId, label }) => (
          <li key={id}>
            {itemId === null ? (
              id
            ) : (
              <Link href={addressOf(bookId, { kind: "item", id: itemId })}>
                {pick(label.en, label.zh) || id}
              </Link>
            )}
          </li>
        ))}
      </ul>
      {loads.length > 0 && (
        <Link
          href={layoutOf(
            bookId,
            loads.flatMap(({ itemId }) => itemId ?? []),
          )}
        >
          {words.onLayout}
        </Link>
      )}
    </details>
  );
}

/** Layout with several things selected; the first names the panel. */
export const layoutOf = (bookId: string, ids: readonly string[]): string =>
  `/b/${bookId}/layout?${[...new Set(ids)].map((id) => `id=${encodeURIComponent(id)}`).join("&")}`;
