import type { Decimal } from "@pinwright/kernel";
import { decimal, numberOfDecimal } from "@pinwright/kernel";
import type { ViewEntry } from "../../worker/protocol.ts";
import { useView } from "../book/desk.tsx";
import { DataTable } from "../harnesses/data-table.tsx";
import { useWords } from "../words.tsx";
import { quantityText } from "./amounts.ts";

type Movement = ViewEntry<"stockHistory">;

/** Every movement of one part, the newest first, with what lay there afterwards. */
export function StockHistory({
  id,
  unit,
  name,
}: {
  readonly id: string;
  readonly unit: string;
  readonly name: string;
}) {
  const words = useWords();
  const own = words.parts.stock;
  const movements = useView("stockHistory", { id });
  if (movements === null) return <p className="dim">{words.common.loading}</p>;
  if (movements.size === 0) return <p className="dim">{own.noHistory}</p>;
  const signed = (row: Movement): string => {
    const text = quantityText(decimal(row.quantity), unit);
    return row.kind === "received" ? `+${text}` : row.kind === "counted" ? `= ${text}` : `−${text}`;
  };
  const left = (value: Decimal): string => quantityText(value, unit);
  return (
    <DataTable
      caption={own.history(name)}
      rows={[...movements.values()].reverse()}
      rowKey={(row) => row.id}
      columns={[
        {
          key: "day",
          header: own.day,
          value: (row) => row.day,
          cell: (row) => <span className="amount">{row.day}</span>,
        },
        { key: "kind", header: own.kind, value: (row) => own.kinds[row.kind] },
        {
          key: "quantity",
          header: own.quantity,
          value: (row) => row.quantity,
          text: signed,
          cell: signed,
          align: "end",
        },
        { key: "revision", header: words.parts.facts.revision, value: (row) => row.revision, minor: true },
        {
          key: "balance",
          header: own.balance,
          value: (row) => numberOfDecimal(row.balance),
          text: (row) => left(row.balance),
          cell: (row) =>
            row.isBelowZero ? (
              <span className="amber-text">
                {left(row.balance)}
                <small>{own.below}</small>
              </span>
            ) : (
              left(row.balance)
            ),
          align: "end",
        },
        {
          key: "for",
          header: own.forRun,
          value: (row) => [row.run, row.stage, row.order, row.site].filter((one) => one !== null).join(" · "),
          minor: true,
        },
        { key: "reason", header: own.reason, value: (row) => row.reason },
        { key: "by", header: own.by, value: (row) => row.by, minor: true },
      ]}
    />
  );
}
