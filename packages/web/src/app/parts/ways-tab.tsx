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
import { quantityText } from "./amounts.ts";
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
