import { Switch } from "@mantine/core";
import { divideDecimal, numberOfDecimal, textOfDecimal } from "@pinwright/kernel";
import { useState } from "react";
import { Link, useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useDesk, useOne, useView } from "../book/desk.tsx";
import type { Entries } from "../book/desk-client.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { useMay } from "../session/session.tsx";
import { FilterField, hasWords } from "../wiring/currents/filter-field.tsx";
import { usePick, useWords } from "../words.tsx";
import { partAddress, tabAddress } from "./address.ts";
import { grouped, moneyText, quantityText } from "./amounts.ts";
import { MovementForm } from "./movement-form.tsx";
import { NodeName } from "./node-name.tsx";
import { StockHistory } from "./stock-history.tsx";
import { TotalText } from "./total-text.tsx";

type Line = ViewEntry<"stock">;

const FIRST = 100;

/** What lies on the shelf, how it came to that, and the form for what happens next. */
export function StockTab() {
  const words = useWords();
  const own = words.parts.stock;
  const lines = useView("stock", null);
  const names = useOne("stockNames", null);
  const [params, setParams] = useSearchParams();
  const mayEdit = useMay("designer");
  const id = params.get("id");
  if (lines === null || names === undefined) return <p className="dim">{words.common.loading}</p>;
  const choosePart = (chosen: string | null): void =>
    setParams(chosen === null ? {} : { id: chosen }, { replace: true });
  const line = lines.get(id ?? "");
  return (
    <>
      <h2>{own.title}</h2>
      <p>{own.about}</p>
      <div className={id === null ? "stock-and-form form-first" : "stock-and-form"}>
        <div>
          {id === null ? (
            <StockList lines={lines} currency={names.currency} />
          ) : (
            <OnePart id={id} line={line} />
          )}
        </div>
        {mayEdit && <MovementForm lines={lines} names={names} partId={id} choosePart={choosePart} />}
      </div>
    </>
  );
}

function OnePart({ id, line }: { readonly id: string; readonly line: Line | undefined }) {
  const words = useWords().parts;
  const pick = usePick();
  const { bookId } = useDesk();
  const name = line === undefined ? id : pick(line.label, line.labelZh) || id;
  return (
    <>
      <p>
        <Link href={tabAddress(bookId, "stock")}>{words.stock.allParts}</Link>
        {" · "}
        <Link href={partAddress(bookId, id)}>{words.tabs.bill}</Link>
      </p>
      <h3>
        {name} <span className="dim">{id}</span>
      </h3>
      {line !== undefined && (
        <dl className="facts">
          <div>
            <dt>{words.stock.count}</dt>
            <dd>
              <b>{line.count === null ? "–" : quantityText(line.count, line.unit)}</b>
            </dd>
          </div>
          {line.revisions.length > 1 &&
            line.revisions.map(({ revision, count }) => (
              <div key={revision}>
                <dt>
                  {words.facts.revision} {revision || "–"}
                </dt>
                <dd>{quantityText(count, line.unit)}</dd>
              </div>
            ))}
          <div>
            <dt>{words.inMachine}</dt>
            <dd>{quantityText(line.inMachine, line.unit)}</dd>
          </div>
        </dl>
      )}
      <StockHistory id={id} unit={line?.unit ?? "each"} name={name} />
    </>
  );
}

function StockList({ lines, currency }: { readonly lines: Entries<"stock">; readonly currency: string }) {
  const words = useWords();
  const own = words.parts.stock;
  const pick = usePick();
  const { bookId } = useDesk();
  const [filter, setFilter] = useState("");
  const [isAll, setAll] = useState(false);
  const moved = [...lines.values()].filter(({ count }) => count !== null);
  const rows = (isAll ? [...lines.values()] : moved).filter(
    (line) => filter.trim() === "" || hasWords(`${line.id} ${line.label} ${line.labelZh}`, filter),
  );
  const lasts = (line: Line): string =>
    line.count === null || line.count <= 0n || line.inMachine === 0n
      ? ""
      : own.machines(grouped(textOfDecimal(divideDecimal(line.count, line.inMachine), 0)));
  return (
    <>
      {moved.length === 0 && <p>{own.empty}</p>}
      {(moved.length > 0 || isAll) && (
        <DataTable
          caption={own.title}
          rows={rows}
          rowKey={({ id }) => id}
          first={FIRST}
          tools={
            <>
              <FilterField value={filter} onChange={setFilter} />
              <Switch
                label={own.alsoNone}
                checked={isAll}
                onChange={(event) => setAll(event.currentTarget.checked)}
              />
            </>
          }
          columns={[
            {
              key: "part",
              header: words.parts.part,
              value: (line) => pick(line.label, line.labelZh) || line.id,
              text: (line) => `${pick(line.label, line.labelZh)} ${line.id}`.trim(),
              cell: (line) => (
                <Link href={tabAddress(bookId, "stock", { id: line.id })}>
                  <NodeName {...line} />
                  {!line.isInBook && <small className="amber-text">{own.notInBook}</small>}
                </Link>
              ),
            },
            {
              key: "count",
              header: own.count,
              value: (line) => (line.count === null ? 0 : numberOfDecimal(line.count)),
              text: (line) => (line.count === null ? "" : quantityText(line.count, line.unit)),
              cell: (line) =>
                line.count === null ? (
                  "–"
                ) : line.count < 0n ? (
                  <span className="amber-text">
                    {quantityText(line.count, line.unit)}
                    <small>{own.below}</small>
                  </span>
                ) : (
                  <b>{quantityText(line.count, line.unit)}</b>
                ),
              align: "end",
            },
            {
              key: "machine",
              header: own.inBill,
              value: (line) => numberOfDecimal(line.inMachine),
              text: (line) => quantityText(line.inMachine, line.unit),
              cell: (line) => quantityText(line.inMachine, line.unit),
              align: "end",
              minor: true,
            },
            { key: "lasts", header: own.lastsFor, value: lasts, align: "end", minor: true },
            {
              key: "worth",
              header: own.value,
              value: (line) => numberOfDecimal(line.worth?.value ?? 0n),
              text: (line) => (line.worth === null ? "" : moneyText(line.worth.value, currency)),
              cell: (line) =>
                line.worth === null ? "" : <TotalText total={line.worth} currency={currency} />,
              align: "end",
              minor: true,
            },
            {
              key: "last",
              header: own.last,
              value: (line) => line.lastDay,
              cell: (line) => <span className="amount">{line.lastDay}</span>,
            },
          ]}
        />
      )}
      {moved.length === 0 && !isAll && lines.size > 0 && (
        <button type="button" className="link-button" onClick={() => setAll(true)}>
          {own.alsoNone}
        </button>
      )}
    </>
  );
}
