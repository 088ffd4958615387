import {
  addTotals,
  allLevels,
  type Bill,
  type BillLine,
  type CostRollUp,
  economicQuantity,
  type LineResult,
  MACHINE_NODE,
  makeOrBuy,
  type NodeCost,
  ownMinutes,
  priceBook,
  rollUp,
  type Total,
  whereUsed,
} from "@pinwright/engine";
import {
  currencyPlaces,
  type Decimal,
  numberOfDecimal,
  textOfDecimal,
  timesDecimal,
} from "@pinwright/kernel";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import { countOption } from "../number-option.ts";
import { STATUS, UsageError } from "../terminal.ts";
import { textTable } from "../text-table.ts";
import { moneyText, partsText, quantityText, sourceText, totalText } from "./bill-costs.ts";

/** Quantities that ways are held against each other at, beside the run's own. */
const WAY_QUANTITIES: readonly number[] = [1, 10, 25, 50, 100, 250, 500, 1000, 2500, 5000, 10000];

const plain = (value: Decimal): string => textOfDecimal(value);

const nameOf = (bill: Bill, id: string): string => bill.nodes.get(id)?.labels.en ?? id;

/** Columns that stand right: quantity, cost of one, cost in one machine. */
const FIGURES: ReadonlySet<number> = new Set([1, 3, 4]);

function levelsText(line: LineResult, nodeId: string, cost: CostRollUp | null, isOne: boolean): string {
  const { bill } = line.parts;
  const heads = ["what", "quantity", "unit", ...(cost === null ? [] : ["each", "in all", "how"]), "name"];
  const rows = allLevels(bill, nodeId)
    .filter(({ level }) => !isOne || level === 1)
    .map(({ level, node, line: { why, colour }, quantity, circle }) => {
      const found = cost?.nodes.get(node.id);
      const figures = cost === null ? [] : costCells(found, quantity, cost.currency, node.labels.en);
      const what = `${"  ".repeat(level - 1)}${node.id}${colour === "" ? "" : ` ${colour}`}`;
      const note = circle ? ", contains itself" : "";
      return [what, quantityText(quantity), node.unit, ...figures, `${node.labels.en} (${why}${note})`];
    });
  return textTable([heads, ...rows], FIGURES);
}

function costCells(
  found: NodeCost | undefined,
  quantity: Decimal,
  currency: string,
  name: string,
): readonly string[] {
  if (found === undefined) return ["?", "?", ""];
  const all = { ...found.each, value: timesDecimal(found.each.value, quantity) };
  return [moneyText(found.each, currency), moneyText(all, currency), sourceText(found, name)];
}

function whereText(bill: Bill, nodeId: string): string {
  const atOf = (lines: readonly BillLine[]): string =>
    lines.map(({ why, at }) => `${why}${at.length > 0 ? `: ${at.join(" ")}` : ""}`).join("; ");
  const rows = whereUsed(bill, nodeId).map(({ node, lines, quantity }) => [
    node.id,
    quantityText(quantity),
    lines.length === 0 ? "further down" : atOf(lines),
  ]);
  return textTable([["in one", "quantity", "as"], ...rows], new Set([1]));
}

function waysText({ machine, parts: { bill } }: LineResult, partId: string, cost: CostRollUp): string {
  const contents = bill.lines.some(({ parentId }) => parentId === partId);
  const inside = contents ? addTotals(contentTotals(bill, partId, cost)) : null;
  const found = makeOrBuy(priceBook(machine), partId, WAY_QUANTITIES, inside);
  const nameAt = (i: number): string => found.ways[i]?.wayId ?? found.ways[i]?.kind ?? "?";
  const heads = ["outlay for", ...found.ways.map((_, i) => nameAt(i)), "cheapest"];
  const rows = found.quantities.map((quantity, i) => [
    String(quantity),
    ...found.ways.map(({ costs }) => moneyText(costs[i] ?? { value: 0n, missing: [] }, cost.currency)),
    nameAt(found.cheapest[i] ?? -1),
  ]);
  const changes = found.changes.map(
    ({ from, fromWay, toWay }) => `from ${from} on ${nameAt(toWay)} is cheaper than ${nameAt(fromWay)}`,
  );
  return [textTable([heads, ...rows], new Set(heads.keys())), ...changes].join("\n");
}

const contentTotals = (bill: Bill, id: string, { nodes }: CostRollUp): readonly Total[] =>
  bill.lines
    .filter(({ parentId }) => parentId === id)
    .map(({ childId, quantity }) => {
      const each = nodes.get(childId)?.each ?? { value: 0n, missing: [] };
      return { ...each, value: timesDecimal(each.value, quantity) };
    });

/** How many of a part to order at a time from each supplier, when so many are used in a year. */
function yearlyText({ machine }: LineResult, partId: string, yearly: number): string {
  const prices = priceBook(machine);
  const { order_cost, holding_pct } = machine.shop.numbers;
  const orderCosts = new Map(machine.shop.tables.suppliers.map((row) => [row.id, row.order_cost]));
  const rows = prices.offersOf(partId).map(({ supplierId, rate, breaks }) => {
    const inOwn = (price: Decimal): number => numberOfDecimal(timesDecimal(price, rate ?? 0n));
    const found = economicQuantity({
      yearly,
      orderCost: orderCosts.get(supplierId) ?? order_cost,
      holdingPct: holding_pct,
      breaks: breaks.map(({ from, price }) => ({ from: numberOfDecimal(from), price: inOwn(price) })),
      pack: numberOfDecimal(breaks[0]?.pack ?? 0n),
    });
    const best = found?.best;
    return best === undefined
      ? [supplierId, "?", "?", "?", "?", "?"]
      : [
          supplierId,
          String(best.quantity),
          (yearly / best.quantity).toFixed(1),
          ...[best.purchase, best.ordering + best.holding, best.total].map((n) =>
            n.toFixed(currencyPlaces(prices.own)),
          ),
        ];
  });
  const heads = ["supplier", "at a time", "orders", "parts", "orders and holding", "in a year"];
  return textTable([heads, ...rows], new Set([1, 2, 3, 4, 5]));
}

/** Everything as JSON; decimals as text, so that none is rounded. */
function asJson({ machine, parts: { bill } }: LineResult, cost: CostRollUp | null): string {
  const { id, revision } = machine.book.machine;
  const exact = (_key: string, value: unknown): unknown => {
    if (typeof value === "bigint") return plain(value);
    return value instanceof Map ? Object.fromEntries(value) : value;
  };
  return `${JSON.stringify({ machine: id, revision, ...bill, cost }, exact, 2)}\n`;
}

/** The node that is asked about. */
function askedNode(bill: Bill, asked: string | undefined): string {
  if (asked === undefined) return MACHINE_NODE;
  if (bill.nodes.has(asked)) return asked;
  const stocked = [...bill.nodes.values()].find(
    ({ id, partId }) => partId === asked || id.endsWith(`:${asked}`),
  );
  if (stocked !== undefined) return stocked.id;
  const near = [...bill.nodes.keys()].filter((id) => id.includes(asked)).slice(0, 5);
  throw new UsageError(
    `${asked}: nothing in the bill has this id${near.length > 0 ? `; near it are ${near.join(", ")}` : ""}`,
  );
}

function costAsked(call: CommandCall, line: LineResult): CostRollUp | null {
  const machines = countOption(call, "machines");
  if (machines === undefined && !call.flag("ways")) return null;
  const of = machines ?? 1;
  return rollUp(line.machine, line.parts.bill, { machines: of, minutes: ownMinutes(line, of) });
}

/** Tells what a machine is made of, where a part is used, and what it costs at a quantity. */
export const billCommand: Command = {
  name: "bill",
  operands: "BOOK [ID]",
  about: "tell what a machine or one part of it is made of, where it is used, and what it costs",
  count: [1, 2],
  options: {
    ...BOOK_OPTIONS,
    machines: {
      type: "string",
      value: "N",
      about: "with costs, at the prices that hold for so many machines",
    },
    one: { type: "boolean", about: "one level only" },
    parts: {
      type: "boolean",
      about: "every part once, added up over all levels; with costs the dearest first",
    },
    where: { type: "boolean", about: "tell where ID is used" },
    ways: { type: "boolean", about: "make, have made or buy ID: the ways held against each other" },
    yearly: {
      type: "string",
      value: "N",
      about: "how many of ID to order at a time, when N are used a year",
    },
    json: { type: "boolean", about: "write all of it as JSON, decimals as text" },
  },
  run: async (call, terminal) => {
    const yearly = countOption(call, "yearly");
    const isAboutOne = call.flag("where") || call.flag("ways") || yearly !== undefined;
    if (isAboutOne && call.positionals.length < 2)
      throw new UsageError("--where, --ways and --yearly: expected an ID");
    const loaded = await loadBook(call);
    for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const line = runLine(loaded);
    const { bill } = line.parts;
    const nodeId = askedNode(bill, call.positionals[1]);
    const partId = bill.nodes.get(nodeId)?.partId ?? nodeId;
    const cost = costAsked(call, line);
    if (call.flag("json")) terminal.out(asJson(line, cost));
    else if (call.flag("where"))
      terminal.out(`${nodeId}: ${nameOf(bill, nodeId)}\n${whereText(bill, nodeId)}\n`);
    else if (yearly !== undefined) terminal.out(`${yearlyText(line, partId, yearly)}\n`);
    else if (call.flag("ways") && cost !== null) terminal.out(`${waysText(line, partId, cost)}\n`);
    else if (call.flag("parts")) {
      terminal.out(`${partsText(line, cost)}\n`);
      if (cost !== null) terminal.out(`\n${totalText(cost, MACHINE_NODE)}\n`);
    } else {
      terminal.out(`${levelsText(line, nodeId, cost, call.flag("one"))}\n`);
      if (cost !== null) terminal.out(`\n${totalText(cost, nodeId)}\n`);
    }
    return STATUS.good;
  },
};
