import { numberOfDecimal } from "@pinwright/kernel";
import type { ViewEntry } from "../../worker/protocol.ts";
import { DataTable } from "../harnesses/data-table.tsx";
import { usePick, useWords } from "../words.tsx";
import { moneyText, priceText, quantityText } from "./amounts.ts";
import { type BillEntry, type BillNodes, ROOT } from "./bill-rows.ts";
import { Flags } from "./flags.tsx";
import { NodeName } from "./node-name.tsx";
import { TotalText } from "./total-text.tsx";

const FIRST = 150;

/** Everything in one machine, each thing once, with its cost and where it comes from. */
export function BillList({
  nodes,
  costs,
  flags,
  fits,
  chosenId,
  choose,
}: {
  readonly nodes: BillNodes;
  readonly costs: ReadonlyMap<string, ViewEntry<"billCosts">> | null;
  readonly flags: ReadonlyMap<string, ViewEntry<"partFlags">> | null;
  readonly fits: ((node: BillEntry) => boolean) | null;
  readonly chosenId: string | null;
  readonly choose: (id: string) => void;
}) {
  const words = useWords().parts;
  const pick = usePick();
  const rows = [...nodes.values()].filter((node) => node.id !== ROOT && (fits === null || fits(node)));
  const nameOf = (node: BillEntry): string => pick(node.label, node.labelZh) || node.id;
  const supplierOf = (node: BillEntry): string => {
    const source = costs?.get(node.id)?.source;
    if (source == null) return "";
    return source.supplier === null
      ? words.sources[source.kind]
      : pick(source.supplier.label, source.supplier.labelZh) || source.supplier.id;
  };
  const flagsOf = (node: BillEntry): string =>
    (flags?.get(node.id)?.flags ?? []).map(({ rule }) => words.flagNames[rule]).join(", ");
  return (
    <DataTable
      caption={words.billTitle}
      rows={rows}
      rowKey={({ id }) => id}
      isCurrent={({ id }) => id === chosenId}
      first={FIRST}
      columns={[
        {
          key: "part",
          header: words.part,
          value: nameOf,
          text: (node) => `${nameOf(node)} ${node.id}`,
          cell: (node) => (
            <button
              type="button"
              className="bill-pick"
              aria-pressed={node.id === chosenId}
              onClick={() => choose(node.id)}
            >
              <span>
                <NodeName {...node} />
              </span>
            </button>
          ),
        },
        {
          key: "kind",
          header: words.kind,
          value: (node) => words.kinds[node.kind],
          minor: true,
        },
        {
          key: "total",
          header: words.inMachine,
          value: (node) => (node.total === null ? 0 : numberOfDecimal(node.total)),
          text: (node) => (node.total === null ? "" : quantityText(node.total, node.unit)),
          cell: (node) => (node.total === null ? words.circle : quantityText(node.total, node.unit)),
          align: "end",
        },
        {
          key: "each",
          header: words.costEach,
          value: (node) => numberOfDecimal(costs?.get(node.id)?.each.value ?? 0n),
          text: (node) => {
            const cost = costs?.get(node.id);
            return cost === undefined ? "" : priceText(cost.each.value, cost.currency);
          },
          cell: (node) => {
            const cost = costs?.get(node.id);
            return cost === undefined ? "" : <TotalText total={cost.each} currency={cost.currency} isPrice />;
          },
          align: "end",
          minor: true,
        },
        {
          key: "machine",
          header: words.costMachine,
          value: (node) => numberOfDecimal(costs?.get(node.id)?.ofMachine.value ?? 0n),
          text: (node) => {
            const cost = costs?.get(node.id);
            return cost === undefined ? "" : moneyText(cost.ofMachine.value, cost.currency);
          },
          cell: (node) => {
            const cost = costs?.get(node.id);
            return cost === undefined ? "" : <TotalText total={cost.ofMachine} currency={cost.currency} />;
          },
          align: "end",
        },
        { key: "source", header: words.source, value: supplierOf, minor: true },
        {
          key: "flags",
          header: words.flags,
          value: flagsOf,
          cell: (node) => <Flags flagged={flags?.get(node.id)} />,
        },
      ]}
    />
  );
}
