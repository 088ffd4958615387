import { Switch } from "@mantine/core";
import { type Decimal, numberOfDecimal } from "@pinwright/kernel";
import { useMemo, useState } from "react";
import { Link } from "wouter";
import { useDesk } from "../book/desk.tsx";
import { DataTable } from "../harnesses/data-table.tsx";
import { partAddress } from "../parts/address.ts";
import { quantityText } from "../parts/amounts.ts";
import { NodeName } from "../parts/node-name.tsx";
import { FilterField, hasWords } from "../wiring/currents/filter-field.tsx";
import { WireColour } from "../wiring/wire-colour.tsx";
import { usePick, useWords } from "../words.tsx";
import { DayText } from "./day.tsx";
import { dayText } from "./days.ts";
import { type NeedRow, needRows } from "./needs-rows.ts";
import type { Plan, RunTab } from "./run-tab.ts";

const FIRST = 150;

/** Whatever a run needs, why so much, what of it is there, and what is still to get. */
export function NeedsTab({ plan }: RunTab) {
  const words = useWords();
  const own = words.runs.needs;
  const pick = usePick();
  const { bookId } = useDesk();
  const [filter, setFilter] = useState("");
  const [isNet, setNet] = useState(false);
  const all = useMemo(() => needRows(plan?.needs ?? []), [plan]);
  if (plan === null) return null;
  if (all.length === 0) return <p>{own.none}</p>;
  const partOf = ({ partId }: NeedRow) => plan.parts.get(partId);
  const nameOf = (row: NeedRow): string =>
    pick(partOf(row)?.label ?? "", partOf(row)?.labelZh ?? "") || row.partId;
  const rows = all.filter(
    (row) =>
      (!isNet || row.net > 0n) &&
      (filter.trim() === "" ||
        hasWords(`${row.partId} ${partOf(row)?.label} ${partOf(row)?.labelZh} ${row.colour}`, filter)),
  );
  const sourceOf = ({ partId }: NeedRow): string => {
    const source = plan.sources.get(partId);
    if (source === undefined) return "";
    const supplier = source.supplierId === null ? undefined : plan.suppliers.get(source.supplierId);
    return supplier === undefined
      ? words.parts.sources[source.kind]
      : pick(supplier.label, supplier.labelZh) || supplier.id;
  };
  const column = (key: string, header: string, of: (row: NeedRow) => Decimal, minor = false) => ({
    key,
    header,
    value: (row: NeedRow) => numberOfDecimal(of(row)),
    text: (row: NeedRow) => (of(row) === 0n ? "" : quantityText(of(row), partOf(row)?.unit ?? "each")),
    cell: (row: NeedRow) => (of(row) === 0n ? "" : quantityText(of(row), partOf(row)?.unit ?? "each")),
    align: "end" as const,
    minor,
  });
  return (
    <>
      <p>{own.about}</p>
      <DataTable
        caption={words.runs.tabs.needs}
        rows={rows}
        rowKey={({ key }) => key}
        first={FIRST}
        detail={{ label: own.unfold, of: (row) => <Stages row={row} plan={plan} /> }}
        tools={
          <>
            <FilterField value={filter} onChange={setFilter} />
            <Switch
              label={own.onlyNet}
              checked={isNet}
              onChange={(event) => setNet(event.currentTarget.checked)}
            />
          </>
        }
        columns={[
          {
            key: "part",
            header: own.part,
            value: nameOf,
            text: (row) => `${nameOf(row)} ${row.partId} ${row.colour}`.trim(),
            cell: (row) => (
              <>
                <Link href={partAddress(bookId, row.partId)}>
                  <NodeName
                    id={row.partId}
                    label={partOf(row)?.label ?? ""}
                    labelZh={partOf(row)?.labelZh ?? ""}
                  />
                </Link>
                {row.colour !== "" && <WireColour code={row.colour} />}
              </>
            ),
          },
          column("gross", own.gross, ({ gross }) => gross),
          column("build", own.build, ({ build }) => build, true),
          column("scrap", own.scrap, ({ scrap }) => scrap, true),
          column("spares", own.spares, ({ spares }) => spares, true),
          column("stock", own.stock, ({ fromStock }) => fromStock, true),
          column("orders", own.orders, ({ fromOrders }) => fromOrders, true),
          column("net", own.net, ({ net }) => net),
          {
            key: "day",
            header: own.day,
            value: ({ neededDay }) => dayText(neededDay),
            cell: ({ neededDay }) => <DayText day={neededDay} />,
            minor: true,
          },
          { key: "source", header: own.source, value: sourceOf, minor: true },
        ]}
      />
    </>
  );
}

function Stages({ row, plan }: { readonly row: NeedRow; readonly plan: Plan }) {
  const own = useWords().runs.needs;
  const pick = usePick();
  const unit = plan.parts.get(row.partId)?.unit ?? "each";
  const stageName = (id: string | null, spares: Decimal): string => {
    if (id === null) return spares > 0n ? own.spareStage : own.noStage;
    const stage = plan.stageNames.get(id);
    return pick(stage?.label ?? "", stage?.labelZh ?? "") || id;
  };
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{own.stage}</th>
          <th scope="col">{own.day}</th>
          <th scope="col" className="end">
            {own.build}
          </th>
          <th scope="col" className="end">
            {own.scrap}
          </th>
          <th scope="col" className="end">
            {own.spares}
          </th>
          <th scope="col" className="end">
            {own.net}
          </th>
        </tr>
      </thead>
      <tbody>
        {row.stages.map((need) => (
          <tr key={`${need.stageId} ${need.spares > 0n}`}>
            <th scope="row">{stageName(need.stageId, need.spares)}</th>
            <td>{dayText(need.neededDay)}</td>
            <td className="end">{quantityText(need.build, unit)}</td>
            <td className="end">{quantityText(need.scrap, unit)}</td>
            <td className="end">{quantityText(need.spares, unit)}</td>
            <td className="end">{quantityText(need.net, unit)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
