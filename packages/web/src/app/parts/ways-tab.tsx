import { numberOfDecimal } from "@pinwright/kernel";
import { useState } from "react";
import { Link, useSearchParams } from "wouter";
import type { ViewEntry } from "../../worker/protocol.ts";
import { CountField } from "../book/count-field.tsx";
import { useDesk, useView } from "../book/desk.tsx";
import { useAskedCount } from "../book/use-asked-count.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { FilterField, hasWords } from "../wiring/currents/filter-field.tsx";
import { usePick, useWords } from "../words.tsx";
import { tabAddress } from "./address.ts";
import { priceText, quantityText } from "./amounts.ts";
import { MOST_MACHINES, USUAL_MACHINES } from "./machines.ts";
import { NodeName } from "./node-name.tsx";
import { OnePart } from "./one-part-ways.tsx";
import { useWayName } from "./use-way-name.ts";

type Ways = ViewEntry<"partWays">;

/** Parts that can be got in more than one way, and what each way costs against the quantity. */
export function WaysTab() {
  const words = useWords();
  const own = words.parts;
  const { bookId } = useDesk();
  const [params] = useSearchParams();
  const [machines, setMachines] = useAskedCount("machines", USUAL_MACHINES, MOST_MACHINES);
  const parts = useView("partWays", { machines });
  const id = params.get("id");
  if (parts === null) return <p className="dim">{words.common.loading}</p>;
  const chosen = parts.get(id ?? "");
  const count = (
    <CountField label={own.machines} value={machines} most={MOST_MACHINES} onCount={setMachines} />
  );
  return (
    <>
      <h2>{own.waysTitle}</h2>
      <p>{own.waysAbout}</p>
      {parts.size === 0 ? (
        <p>
          {own.waysEmpty} <Link href={`/b/${bookId}/tables/ways`}>{words.tableNames.tables.ways}</Link>
        </p>
      ) : (
        <>
          <div className="question">{count}</div>
          {id !== null && (
            <p>
              {chosen === undefined && `${own.oneWay(id)} `}
              <Link href={tabAddress(bookId, "ways", { machines: params.get("machines") ?? undefined })}>
                {own.allWays}
              </Link>
            </p>
          )}
          {chosen === undefined ? (
            <PartList parts={[...parts.values()]} />
          ) : (
            <OnePart key={chosen.id} part={chosen} machines={machines} />
          )}
        </>
      )}
    </>
  );
}

/** The cheapest way beside the one that counts; null: there is no other whose cost is known. */
function nextBest({ figures, current }: Ways): number | null {
  let best: number | null = null;
  for (const [i, { value, missing }] of figures.each.entries())
    if (i !== current && missing.length === 0 && (best === null || value < (figures.each[best]?.value ?? 0n)))
      best = i;
  return best;
}

function PartList({ parts }: { readonly parts: readonly Ways[] }) {
  const words = useWords().parts;
  const pick = usePick();
  const { bookId } = useDesk();
  const wayName = useWayName();
  const [params] = useSearchParams();
  const [filter, setFilter] = useState("");
  const rows = parts.filter(
    (part) => filter.trim() === "" || hasWords(`${part.id} ${part.label} ${part.labelZh}`, filter),
  );
  const current = (part: Ways): string => {
    const way = part.current === null ? undefined : part.ways[part.current];
    return way === undefined ? "–" : wayName(way);
  };
  const nameAt = (part: Ways, at: number): string => {
    const way = part.ways[at];
    return way === undefined ? "" : wayName(way);
  };
  const eachText = ({ figures, currency }: Ways, at: number | null): string => {
    const each = figures.each[at ?? -1];
    return each === undefined || each.missing.length > 0 ? "–" : priceText(each.value, currency);
  };
  const nextText = (part: Ways): string => {
    const next = nextBest(part);
    return next === null ? "" : `${eachText(part, next)} ${nameAt(part, next)}`;
  };
  const changeText = (part: Ways): string => {
    const { change } = part.figures;
    return change === null ? words.noChange : words.changeAt(change.machines, nameAt(part, change.way));
  };
  return (
    <DataTable
      caption={words.waysTitle}
      rows={rows}
      rowKey={(part) => part.id}
      tools={<FilterField value={filter} onChange={setFilter} />}
      columns={[
        {
          key: "part",
          header: words.part,
          value: (part) => pick(part.label, part.labelZh) || part.id,
          text: (part) => `${pick(part.label, part.labelZh)} ${part.id}`.trim(),
          cell: (part) => (
            <Link
              href={tabAddress(bookId, "ways", {
                id: part.id,
                machines: params.get("machines") ?? undefined,
              })}
            >
              <NodeName {...part} />
            </Link>
          ),
        },
        {
          key: "quantity",
          header: words.inMachine,
          value: (part) => numberOfDecimal(part.inMachine),
          text: (part) => quantityText(part.inMachine, part.unit),
          cell: (part) => quantityText(part.inMachine, part.unit),
          align: "end",
          minor: true,
        },
        {
          key: "each",
          header: words.costEach,
          value: (part) => numberOfDecimal(part.figures.each[part.current ?? -1]?.value ?? 0n),
          text: (part) => eachText(part, part.current),
          cell: (part) => eachText(part, part.current),
          align: "end",
        },
        {
          key: "next",
          header: words.nextBest,
          value: (part) => numberOfDecimal(part.figures.each[nextBest(part) ?? -1]?.value ?? 0n),
          text: (part) => nextText(part),
          cell: (part) => {
            const next = nextBest(part);
            return next === null ? (
              ""
            ) : (
              <>
                {eachText(part, next)}
                <small>{nameAt(part, next)}</small>
              </>
            );
          },
          align: "end",
          minor: true,
        },
        {
          key: "change",
          header: words.changes,
          value: (part) => part.figures.change?.machines ?? Number.POSITIVE_INFINITY,
          text: changeText,
          cell: changeText,
          minor: true,
        },
        {
          key: "ways",
          header: words.waysCount,
          value: (part) => part.ways.map(wayName).join(", "),
          minor: true,
        },
        {
          key: "current",
          header: words.chosen,
          value: current,
          text: (part) => `${current(part)} (${part.isDecided ? words.byPerson : words.byProgram})`,
          cell: (part) => (
            <>
              {current(part)}
              <small>{part.isDecided ? words.byPerson : words.byProgram}</small>
            </>
          ),
        },
      ]}
    />
  );
}
