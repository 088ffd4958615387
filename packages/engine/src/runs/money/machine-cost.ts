import type { BookRow, Shop } from "@pinwright/book";
import { compareText, type Decimal, decimal, divideDecimal, timesDecimal } from "@pinwright/kernel";
import {
  type CostKind,
  type Languages,
  labelsOf,
  type MachineCost,
  type Missing,
  type ProposedOrder,
  type StageBlock,
  type ToolPurchase,
} from "../../model/index.ts";
import { addTotals } from "../../parts/index.ts";
import type { Use } from "../needs/demand.ts";
import { nodeOfKey } from "../needs/tree.ts";
import type { PlannedStage } from "../schedule/stage.ts";
import { costKind } from "./kinds.ts";
import type { UnitPrices } from "./unit-prices.ts";

/** All that the cost of a machine is added up from. */
export interface CostInput {
  readonly runs: readonly { readonly id: string; readonly machines: number }[];
  readonly uses: readonly Use[];
  readonly prices: UnitPrices;
  readonly parts: ReadonlyMap<string, BookRow<"parts">>;
  readonly shop: Shop;
  readonly stages: readonly PlannedStage[];
  readonly blocks: readonly StageBlock[];
  /** Cost of a minute at each stage, without overhead, by its id. */
  readonly minuteCost: ReadonlyMap<string, Decimal>;
  readonly tools: readonly ToolPurchase[];
  readonly toolLabels: ReadonlyMap<string, Languages>;
  readonly orders: readonly ProposedOrder[];
  /** What is missing whatever the quantity: things without a part, circles. */
  readonly missing: readonly Missing[];
}

interface Contributor {
  readonly id: string;
  readonly kind: CostKind;
  readonly labels: Languages;
  amount: Decimal;
}

const NO_LABELS: Languages = { en: "", zh: "" };
const HUNDRED = decimal(100);

/** Amounts of one run by what they are for. */
class Contributors {
  readonly #byId = new Map<string, Contributor>();

  add(id: string, kind: CostKind, labels: Languages, amount: Decimal): void {
    if (amount === 0n) return;
    const known = this.#byId.get(`${id}\n${kind}`);
    if (known !== undefined) known.amount += amount;
    else this.#byId.set(`${id}\n${kind}`, { id, kind, labels, amount });
  }

  costs(machines: number): Pick<MachineCost, "kinds" | "contributors"> & { readonly value: Decimal } {
    const contributors = [...this.#byId.values()]
      .map(({ id, kind, labels, amount }) => ({
        id,
        kind,
        labels,
        each: divideDecimal(amount, decimal(machines)),
      }))
      .sort((a, b) => descending(a.each, b.each) || compareText(a.id, b.id));
    const kinds = new Map<CostKind, Decimal>();
    for (const { kind, each } of contributors) kinds.set(kind, (kinds.get(kind) ?? 0n) + each);
    return {
      contributors,
      kinds: [...kinds]
        .map(([kind, each]) => ({ kind, each }))
        .sort((a, b) => descending(a.each, b.each) || compareText(a.kind, b.kind)),
      value: contributors.reduce((sum, { each }) => sum + each, 0n),
    };
  }
}

const descending = (a: Decimal, b: Decimal): number => (a > b ? -1 : a < b ? 1 : 0);

/**
 * What one machine of each run costs: its parts at the mean price of their lots, what gets spoilt, tools, carriage, and
 * its work with overhead. Spares for the field and what is left over of packs are no cost of the machines.
 */
export function machineCosts(input: CostInput): readonly MachineCost[] {
  const byRun = new Map<string, Use[]>();
  for (const use of input.uses) {
    const own = byRun.get(use.runId);
    if (own === undefined) byRun.set(use.runId, [use]);
    else own.push(use);
  }
  const carriage = carriageShares(input.orders);
  return input.runs.map((run) => costOf(input, run, byRun.get(run.id) ?? [], carriage));
}

function costOf(
  input: CostInput,
  { id, machines }: { readonly id: string; readonly machines: number },
  uses: readonly Use[],
  carriage: ReadonlyMap<string, Decimal>,
): MachineCost {
  const sums = new Contributors();
  const missing = new Map<string, Missing>();
  const lack = (of: Missing): void => void missing.set(`${of.id} ${of.lack}`, of);
  for (const of of input.missing) lack(of);
  const bySupplier = addParts(input, uses, sums, lack);
  for (const [supplierId, amount] of bySupplier)
    sums.add("carriage", "carriage", NO_LABELS, timesDecimal(amount, carriage.get(supplierId) ?? 0n));
  addTools(input, id, sums, lack);
  addWork(input, id, sums, lack);
  const { kinds, contributors, value } = sums.costs(machines);
  const each = addTotals([
    { value, missing: [] },
    { value: 0n, missing: sorted(missing) },
  ]);
  return { runId: id, machines, each, kinds, contributors };
}

const sorted = (missing: ReadonlyMap<string, Missing>): readonly Missing[] =>
  [...missing.values()].sort((a, b) => compareText(a.id, b.id) || compareText(a.lack, b.lack));

/** Adds what parts cost; what of it is paid to each supplier. */
function addParts(
  { prices, parts, stages }: CostInput,
  uses: readonly Use[],
  sums: Contributors,
  lack: (of: Missing) => void,
): ReadonlyMap<string, Decimal> {
  const bySupplier = new Map<string, Decimal>();
  for (const use of uses) {
    const { key, partId, stage, build, scrap } = use;
    const unit = prices(use);
    for (const of of unit.missing) lack(of);
    const part = parts.get(partId);
    const labels = part === undefined ? { en: partId, zh: partId } : labelsOf(part, partId);
    const used = timesDecimal(build, unit.price);
    const spoilt = timesDecimal(scrap, unit.price);
    sums.add(nodeOfKey(key), costKind(part, stages[stage]?.kind, unit.kind), labels, used);
    sums.add("scrap", "scrap", NO_LABELS, spoilt);
    if (unit.supplierId !== null)
      bySupplier.set(unit.supplierId, (bySupplier.get(unit.supplierId) ?? 0n) + used + spoilt);
  }
  return bySupplier;
}

/** Tools by the share of the run in all parts that they make. */
function addTools(
  { tools, toolLabels, uses }: CostInput,
  runId: string,
  sums: Contributors,
  lack: (of: Missing) => void,
): void {
  for (const tool of tools) {
    let all = 0n;
    let own = 0n;
    for (const use of uses) {
      if (use.partId !== tool.partId) continue;
      all += use.build;
      if (use.runId === runId) own += use.build;
    }
    if (own === 0n || all === 0n) continue;
    if (tool.cost === null) lack({ lack: "no-tool-cost", id: tool.toolingId });
    const labels = toolLabels.get(tool.toolingId) ?? { en: tool.toolingId, zh: tool.toolingId };
    sums.add(`tooling:${tool.toolingId}`, "tooling", labels, ((tool.cost ?? 0n) * own) / all);
  }
}

function addWork(
  { stages, blocks, minuteCost, shop }: CostInput,
  runId: string,
  sums: Contributors,
  lack: (of: Missing) => void,
): void {
  if (stages.length === 0) lack({ lack: "no-minutes", id: "stages" });
  let all = 0n;
  for (const { runId: of, stageId, labels, days, isKnown } of blocks) {
    if (of !== runId) continue;
    if (!isKnown) lack({ lack: "no-minutes", id: stageId });
    const minutes = days.reduce((sum, day) => sum + day.minutes, 0);
    const amount = timesDecimal(decimal(minutes.toFixed(6)), minuteCost.get(stageId) ?? 0n);
    sums.add(`stage:${stageId}`, "work", labels, amount);
    all += amount;
  }
  const overhead = divideDecimal(decimal(shop.numbers.overhead_pct), HUNDRED);
  sums.add("overhead", "overhead", NO_LABELS, timesDecimal(all, overhead));
}

/** Carriage of each supplier over the value of what it brings. */
function carriageShares(orders: readonly ProposedOrder[]): ReadonlyMap<string, Decimal> {
  const sums = new Map<string, { carriage: Decimal; value: Decimal }>();
  for (const { supplierId, shipping, total } of orders) {
    const own = sums.get(supplierId) ?? { carriage: 0n, value: 0n };
    sums.set(supplierId, own);
    own.carriage += shipping;
    own.value += total.value - shipping;
  }
  return new Map(
    [...sums].map(([id, { carriage, value }]) => [id, value === 0n ? 0n : divideDecimal(carriage, value)]),
  );
}
