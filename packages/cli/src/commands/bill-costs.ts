import {
  addTotals,
  type CostRollUp,
  type LineResult,
  MACHINE_NODE,
  type NodeCost,
  type Total,
} from "@pinwright/engine";
import { compareText, currencyPlaces, type Decimal, roundDecimal, textOfDecimal } from "@pinwright/kernel";
import { textTable } from "../text-table.ts";

/** Leftovers that are told one by one. */
const MOST_LEFT = 5;

const KINDS = { make: "make", "have-made": "have made", buy: "buy" } as const;

/** A sum with what it lacks: `12.50 +?` is 12.50 and something that nobody knows. */
export const moneyText = ({ value, missing }: Total, currency: string): string =>
  `${textOfDecimal(value, currencyPlaces(currency))}${missing.length > 0 ? " +?" : ""}`;

/** A quantity as it is counted: metres to the millimetre, areas to 10 cm². */
export const quantityText = (quantity: Decimal): string => textOfDecimal(roundDecimal(quantity, 3));

/** How something is got: `have made (bent and welded), springs at 8.2 EUR`. */
export function sourceText({ source, cost }: NodeCost, name: string): string {
  if (source === null || cost === null) return "";
  const { purchase, way } = cost;
  const how = way.labels.en === "" || way.labels.en === name ? "" : ` (${way.labels.en})`;
  const by = source.supplierId === null ? "" : ` ${source.supplierId}`;
  const from = purchase === null ? "" : ` at ${textOfDecimal(purchase.price)} ${purchase.currency}`;
  return `${KINDS[source.kind]}${how}${by === "" ? "" : `,${by}`}${from}`;
}

/** What one machine or one part costs, what is left over of packs, and what the figure lacks. */
export function totalText(cost: CostRollUp, nodeId: string): string {
  const places = currencyPlaces(cost.currency);
  const found = cost.nodes.get(nodeId);
  const each = found?.each ?? addTotals([cost.each]);
  const what = nodeId === MACHINE_NODE ? "one machine" : `one ${nodeId}`;
  const work = textOfDecimal(found?.work ?? 0n, places);
  const lines = [
    `${what}: ${moneyText(each, cost.currency)} ${cost.currency} at ${cost.machines} machines, of which ${work} own work; without saw, paint, test, packing, overhead, scrap and carriage, which are in "pinwright run"`,
  ];
  if (nodeId === MACHINE_NODE) lines.push(leftOverText(cost));
  for (const { lack, id } of each.missing) lines.push(`  not in it: ${id} (${lack})`);
  return lines.join("\n");
}

function leftOverText({ nodes, currency, leftOver }: CostRollUp): string {
  const places = currencyPlaces(currency);
  const most = [...nodes.values()]
    .flatMap(({ id, cost }) => (cost === null || cost.leftOver === 0n ? [] : [{ id, left: cost.leftOver }]))
    .sort((a, b) => Number(b.left - a.left) || compareText(a.id, b.id))
    .slice(0, MOST_LEFT)
    .map(({ id, left }) => `${id} ${textOfDecimal(left, places)}`);
  const named = most.length === 0 ? "" : `, most of it ${most.join(", ")}`;
  return `left over in packs after the run: ${textOfDecimal(leftOver, places)} ${currency}${named}`;
}

/** Every part that is got from somewhere, added up over all levels, the dearest in one machine first. */
export function partsText({ parts: { bill } }: LineResult, cost: CostRollUp | null): string {
  const rows = [...bill.totals]
    .flatMap(([id, quantity]) => {
      const node = bill.nodes.get(id);
      return node?.kind === "part" || node?.kind === "unnamed"
        ? [{ node, quantity, found: cost?.nodes.get(id) }]
        : [];
    })
    // What comes within something that is bought whole is not got by itself.
    .filter(({ found }) => cost === null || (found !== undefined && found.needed > 0n))
    .sort(
      (a, b) =>
        Number((b.found?.ofMachine.value ?? 0n) - (a.found?.ofMachine.value ?? 0n)) ||
        compareText(a.node.id, b.node.id),
    )
    .map(({ node, quantity, found }) => [
      node.id,
      quantityText(quantity),
      node.unit,
      ...(cost === null || found === undefined ? [] : costCells(found, cost.currency, node.labels.en)),
      node.labels.en,
    ]);
  const heads = cost === null ? [] : ["in the run", "each", "in all", "how"];
  return textTable(
    [["part", "quantity", "unit", ...heads, "name"], ...rows],
    new Set([1, 3, 4, 5].slice(0, cost === null ? 1 : 4)),
  );
}

const costCells = (found: NodeCost, currency: string, name: string): readonly string[] => [
  quantityText(found.needed),
  moneyText(found.each, currency),
  moneyText(found.ofMachine, currency),
  sourceText(found, name),
];
