import type { Shop } from "@pinwright/book";
import { type Decimal, decimal, divideDecimal, timesDecimal } from "@pinwright/kernel";
import type { Bill, BillLine, BillNode, Machine, Missing, PartSource, Total } from "../../model/index.ts";
import { MACHINE_NODE } from "../bill/nodes.ts";
import { PriceBook, priceBook } from "../prices/price-book.ts";
import { byCost, costOfWay, type Sourced, sourceOf, type WayCost, workCost } from "../prices/source.ts";
import { addTotals, joinMissing, lacking, total } from "../prices/totals.ts";
import { explode, linesByParent } from "./explode.ts";

export interface CostQuestion {
  /** Machines of the run: what breaks, packs and tools are reckoned with. */
  readonly machines: number;
  /**
   * Gross quantities of the run where they are more than what is in its machines: scrap, spares, whole sheets. They
   * decide the price, not how often it is paid.
   */
  readonly needs?: ReadonlyMap<string, Decimal>;
  /** Own work in minutes for one, by node, beside what the ways of making say. */
  readonly minutes?: ReadonlyMap<string, number>;
  /** Run whose frozen prices count. */
  readonly runId?: string;
  /** Another shop than the machine's, for what-if. */
  readonly shop?: Shop;
}

export interface NodeCost {
  readonly id: string;
  /** In one machine, whoever brings it. */
  readonly quantity: Decimal;
  /** In the run, without what comes within something that is bought or had made. */
  readonly needed: Decimal;
  /** One of it with its contents, in the shop's own currency. */
  readonly each: Total;
  /** The own work in `each`, that of its contents included. */
  readonly work: Decimal;
  /** What of it is got for one machine, at `each`. */
  readonly ofMachine: Total;
  /** How it is got; null: nothing has to be decided. */
  readonly source: PartSource | null;
  readonly cost: WayCost | null;
  /** Other ways at this quantity, the cheapest first. */
  readonly others: readonly WayCost[];
}

export interface CostRollUp {
  /** ISO 4217; blank: nobody has said. */
  readonly currency: string;
  readonly machines: number;
  /** One machine: material, tools over the run, and the work that is known. */
  readonly each: Total;
  /** Of packs that are not used up in the run, for the whole run. */
  readonly leftOver: Decimal;
  readonly nodes: ReadonlyMap<string, NodeCost>;
}

interface Rolling {
  readonly bill: Bill;
  readonly prices: PriceBook;
  readonly question: CostQuestion;
  readonly byParent: ReadonlyMap<string, readonly BillLine[]>;
  readonly ranked: ReadonlySet<string>;
}

interface Rolled {
  readonly each: Total;
  readonly work: Decimal;
  readonly sourced: Sourced | null;
}

/**
 * What everything in a bill costs at the quantity of a run, from the leaves up, exactly: the price that holds for what
 * is ordered in whole packs, tools over the run, own work at the shop's rate. How each part is got is decided with what
 * all machines contain; then what comes within bought assemblies is taken off, and prices are read again.
 */
export function rollUp(
  machine: Pick<Machine, "book" | "shop">,
  bill: Bill,
  question: CostQuestion,
): CostRollUp {
  const shop = question.shop ?? machine.shop;
  const { book } = machine;
  const prices =
    question.runId === undefined ? priceBook({ book, shop }) : new PriceBook({ book, shop }, question.runId);
  const rolling: Rolling = {
    bill,
    prices,
    question,
    byParent: linesByParent(bill),
    ranked: new Set(bill.order),
  };
  const machines = decimal(question.machines);
  const all = new Map([...bill.totals].map(([id, quantity]) => [id, timesDecimal(quantity, machines)]));
  const first = rollNodes(rolling, all, new Map());
  const sources = new Map(
    [...first].flatMap(([id, { sourced }]) => (sourced === null ? [] : [[id, sourced.source] as const])),
  );
  const needed = explode(bill, sources, new Map([[MACHINE_NODE, machines]]));
  const rolled = needsAgain(bill, all, needed) ? rollNodes(rolling, merged(all, needed), first) : first;
  const nodes = new Map<string, NodeCost>();
  let leftOver = 0n;
  for (const id of bill.nodes.keys()) {
    const found = rolled.get(id);
    if (found === undefined) continue;
    const own = needed.get(id) ?? 0n;
    leftOver += own > 0n ? (found.sourced?.cost.leftOver ?? 0n) : 0n;
    nodes.set(id, nodeCost(id, bill.totals.get(id) ?? 0n, own, machines, found));
  }
  const each = rolled.get(MACHINE_NODE)?.each ?? lacking("circle", MACHINE_NODE);
  return { currency: prices.own, machines: question.machines, each, leftOver, nodes };
}

function nodeCost(
  id: string,
  quantity: Decimal,
  needed: Decimal,
  machines: Decimal,
  rolled: Rolled,
): NodeCost {
  const { each, work, sourced } = rolled;
  const inOne = machines === 0n ? 0n : divideDecimal(needed, machines);
  return {
    id,
    quantity,
    needed,
    each,
    work,
    ofMachine: { ...each, value: timesDecimal(inOne, each.value) },
    source: sourced?.source ?? null,
    cost: sourced?.cost ?? null,
    others: sourced?.others ?? [],
  };
}

/** Whether something comes within what is bought, so that less of it is needed. */
const needsAgain = (
  { order }: Bill,
  all: ReadonlyMap<string, Decimal>,
  needed: ReadonlyMap<string, Decimal>,
): boolean => order.some((id) => (all.get(id) ?? 0n) !== (needed.get(id) ?? 0n));

/** What is not needed by itself keeps the price of all that the machines contain. */
const merged = (
  all: ReadonlyMap<string, Decimal>,
  needed: ReadonlyMap<string, Decimal>,
): ReadonlyMap<string, Decimal> =>
  new Map([...all].map(([id, quantity]) => [id, needed.get(id) || quantity]));

/** Costs of all nodes, leaves first; a way that is known from before is kept. */
function rollNodes(
  rolling: Rolling,
  quantities: ReadonlyMap<string, Decimal>,
  before: ReadonlyMap<string, Rolled>,
): ReadonlyMap<string, Rolled> {
  const { bill, question } = rolling;
  const rolled = new Map<string, Rolled>();
  for (const id of bill.order) {
    const node = bill.nodes.get(id);
    if (node === undefined) continue;
    const quantity = question.needs?.get(id) ?? quantities.get(id) ?? 0n;
    const kept = before.get(id)?.sourced?.cost ?? null;
    rolled.set(id, rollNode(rolling, node, quantity, rolled, kept));
  }
  return rolled;
}

function rollNode(
  { prices, question, byParent, ranked }: Rolling,
  node: BillNode,
  quantity: Decimal,
  rolled: ReadonlyMap<string, Rolled>,
  kept: WayCost | null,
): Rolled {
  if (node.kind === "unnamed") return { each: lacking("no-part", node.id), work: 0n, sourced: null };
  const lines = byParent.get(node.id) ?? [];
  const inside = contentsOf(lines, rolled, ranked);
  const own = workCost(prices, decimal(question.minutes?.get(node.id) ?? 0));
  const made = { each: addTotals([inside.each, total(own)]), work: inside.work + own };
  if (node.partId === null || !prices.parts.has(node.partId)) {
    const told = lines.length > 0 || node.kind === "machine";
    return { ...(told ? made : { ...made, each: lacking("no-part", node.id) }), sourced: null };
  }
  const contents = lines.length > 0 ? made.each : null;
  const sourced =
    kept === null
      ? sourceOf(prices, node.partId, quantity, contents)
      : keptSource(prices, kept, quantity, contents);
  if (sourced === null) return { ...made, sourced: null };
  const { way, each } = sourced.cost;
  const work = workCost(prices, way.minutes) + (way.kind === "make" ? made.work : 0n);
  return { each, work, sourced };
}

/** The same way at another quantity. */
function keptSource(
  prices: PriceBook,
  { way }: WayCost,
  quantity: Decimal,
  contents: Total | null,
): Sourced | null {
  const costs = prices.waysOf(way.partId).map((w) => costOfWay(prices, w, quantity, contents));
  const cost = costs.find((c) => c.way.wayId === way.wayId && c.way.kind === way.kind);
  if (cost === undefined) return null;
  const supplierId = cost.purchase?.supplierId ?? way.supplierId;
  return {
    source: { partId: way.partId, wayId: way.wayId, kind: way.kind, supplierId },
    cost,
    others: costs.filter((c) => c !== cost).sort(byCost),
  };
}

/** What is in one of a node. A child in a circle has no cost. */
function contentsOf(
  lines: readonly BillLine[],
  rolled: ReadonlyMap<string, Rolled>,
  ranked: ReadonlySet<string>,
): { readonly each: Total; readonly work: Decimal } {
  let value = 0n;
  let work = 0n;
  const missing: (readonly Missing[])[] = [];
  for (const { childId, quantity } of lines) {
    const child = rolled.get(childId);
    if (child === undefined || !ranked.has(childId)) {
      missing.push([{ lack: "circle", id: childId }]);
      continue;
    }
    value += timesDecimal(quantity, child.each.value);
    work += timesDecimal(quantity, child.work);
    missing.push(child.each.missing);
  }
  return { each: { value, missing: joinMissing(missing) }, work };
}
