import type { BookRow } from "@pinwright/book";
import { compareText, decimal, divideDecimal, timesDecimal } from "@pinwright/kernel";
import {
  type DayNumber,
  type Finding,
  labelsOf,
  type Missing,
  type PartSource,
  type RunsPlan,
  rowsById,
} from "../model/index.ts";
import { rollUp } from "../parts/index.ts";
import { BeforeLots } from "./buy/before-lots.ts";
import { ordersOf } from "./buy/orders.ts";
import { type PlannedLots, Sourcing } from "./buy/sourcing.ts";
import { articlesOf, toolsOf } from "./buy/tools.ts";
import { WorkCalendar } from "./calendar.ts";
import { planFindings } from "./checks/plan-findings.ts";
import { dayNumber } from "./days.ts";
import type { MachineVariant, PlanInput } from "./input.ts";
import { mixFindings, openRuns, runMixes } from "./mixes.ts";
import { cashWeeks } from "./money/cash.ts";
import { machineCosts } from "./money/machine-cost.ts";
import { unitPrices } from "./money/unit-prices.ts";
import { madeCosts, unorderedOf } from "./money/unordered.ts";
import type { NeedingRun, Needs } from "./needs/demand.ts";
import { explodeNeeds, type NeedQuestion } from "./needs/explode.ts";
import type { Supply } from "./needs/net.ts";
import { type Tree, treeOf } from "./needs/tree.ts";
import {
  blocksOf,
  minuteCosts,
  type RunWithWork,
  type Scheduled,
  scheduleAll,
  timingOf,
} from "./plan-schedule.ts";
import { type PlannedStage, stagesOf } from "./schedule/stage.ts";
import { openReceipts } from "./stock/receipts.ts";
import { supplies } from "./stock/supplies.ts";
import { workAt } from "./work.ts";

/** All that is read once for a plan. */
interface Planning {
  readonly input: PlanInput;
  readonly parts: ReadonlyMap<string, BookRow<"parts">>;
  readonly calendar: WorkCalendar;
  readonly stages: readonly PlannedStage[];
  readonly variants: readonly MachineVariant[];
  readonly runs: readonly RunWithWork[];
  readonly tree: Tree;
  readonly sources: ReadonlyMap<string, PartSource>;
  readonly sourcing: Sourcing;
  readonly before: BeforeLots;
  readonly supplyOf: (partId: string) => Supply;
}

/**
 * Everything that follows from the runs of a shop, its stock and its prices: what they need of every part, from whom and
 * in which lots it comes, orders, days at every stage, money by week and the cost of a machine.
 *
 * Runs are built as late as their ship days allow; one that lacks time or parts for that, as early as can be, and it is
 * told what holds it. A run of another machine than the book's is left out.
 */
export function planRuns(input: PlanInput): RunsPlan {
  const { planning, findings } = prepare(input);
  const { stages, runs, sourcing, before, calendar } = planning;
  const { shop, today, book } = input;
  const first = scheduleAll(shop, calendar, stages, runs);
  const needsFirst = needsOf(planning, first);
  const arrivals = arrivalsOf(planning, needsFirst);
  const waits = mustWait(planning, first, arrivals.days);
  const scheduled = waits ? scheduleAll(shop, calendar, stages, runs, arrivals.days) : first;
  const needs = waits ? needsOf(planning, scheduled) : needsFirst;
  const lots = sourcing.allLots(needs.net);
  const own = sourcing.prices.own;
  const orders = ordersOf(shop, lots, own);
  const tools = toolsOf(lots, sourcing, before, calendar, today);
  const articles = articlesOf(lots, before, calendar, today);
  const blocks = runs.flatMap((run, r) => {
    const found = scheduled.runs[r];
    return found === undefined ? [] : blocksOf(stages, run, found);
  });
  const minuteCost = minuteCosts(shop, stages);
  const overhead = decimal(1) + divideDecimal(decimal(shop.numbers.overhead_pct), decimal(100));
  const loadedCost = new Map([...minuteCost].map(([id, cost]) => [id, timesDecimal(cost, overhead)]));
  const uses = needs.tookMade ? needsOf(planning, scheduled, false).uses : needs.uses;
  const timings = runs.flatMap((run, r) => {
    const found = scheduled.runs[r];
    return found === undefined
      ? []
      : [timingOf(stages, run, found, arrivals.heldBy.get(run.row.id) ?? new Map())];
  });
  const result = {
    currency: own,
    runs: timings,
    needs: needs.needs,
    sources: chosenSources(planning, lots),
    lots: lots.flatMap(({ found }) => (found === null ? [] : [found.lots])),
    orders,
    tools,
    articles,
    stages: blocks,
    cash: cashWeeks(shop, own, {
      orders,
      receipts: openReceipts(shop, today),
      unordered: [...lots.flatMap(unorderedOf), ...madeCosts(sourcing, needs.made)],
      tools,
      stages: blocks,
      minuteCost: loadedCost,
      today,
    }),
    costs: machineCosts({
      runs: runs.map(({ row }) => ({ id: row.id, machines: row.machines })),
      uses,
      prices: unitPrices(lots, sourcing, uses),
      parts: planning.parts,
      shop,
      stages,
      blocks,
      minuteCost,
      tools,
      toolLabels: new Map(book.tables.tooling.map((row) => [row.id, labelsOf(row, row.id)])),
      orders,
      missing: alwaysMissing(planning.variants),
    }),
  };
  return { ...result, findings: [...findings, ...planFindings(input, stages, result, lots)] };
}

function prepare(input: PlanInput): { readonly planning: Planning; readonly findings: readonly Finding[] } {
  const { book, shop, today, variants: known } = input;
  const mixes = runMixes(book, shop).filter(({ key }) => known.has(key));
  const keys = [...new Set(mixes.map(({ key }) => key))].sort(compareText);
  const variants = keys.flatMap((key) => known.get(key) ?? []);
  const calendar = new WorkCalendar(shop);
  const { stages, findings } = stagesOf(shop);
  const withDay = openRuns(book, shop).map((row) => ({ row, shipDay: dayNumber(row.ship) }));
  const runs = withDay
    .filter(({ row }) => mixes.some(({ runId }) => runId === row.id))
    .sort((a, b) => (a.shipDay ?? Infinity) - (b.shipDay ?? Infinity) || compareText(a.row.id, b.row.id))
    .map(({ row, shipDay }): RunWithWork => {
      const counts = keys.map(
        (key) => mixes.find((mix) => mix.runId === row.id && mix.key === key)?.machines ?? 0,
      );
      const beginDay = Math.max(today, dayNumber(row.begin) ?? today);
      return { row, counts, shipDay, beginDay, work: workAt(stages, variants, counts, shop.numbers) };
    });
  const parts = rowsById(book.tables.parts);
  const before = new BeforeLots(book, shop, parts);
  const rows = runs.map(({ row }) => row);
  return {
    planning: {
      input,
      parts,
      calendar,
      stages,
      variants,
      runs,
      tree: treeOf(variants),
      sources: sourcesOf(input, variants, rows),
      sourcing: new Sourcing(book, shop, rows, today, calendar, before),
      before,
      supplyOf: supplies(shop, parts, rows, today),
    },
    findings: [...mixFindings(book, shop), ...findings],
  };
}

/** How everything is got at the quantity of all runs together; variants agree with the one that has most machines. */
function sourcesOf(
  { book, shop }: PlanInput,
  variants: readonly MachineVariant[],
  runs: readonly { readonly machines: number }[],
): ReadonlyMap<string, PartSource> {
  const machines = runs.reduce((sum, run) => sum + run.machines, 0);
  const sources = new Map<string, PartSource>();
  if (machines === 0) return sources;
  for (const { bill } of variants)
    for (const [id, { source }] of rollUp({ book, shop }, bill, { machines }).nodes)
      if (source !== null && !sources.has(id)) sources.set(id, source);
  return sources;
}

function needsOf(planning: Planning, { buckets }: Scheduled, net = true): Needs {
  const { input, parts, calendar, stages, variants, runs, tree, sources, supplyOf } = planning;
  const { shop, today } = input;
  const kitDay = (s: number, day: DayNumber): DayNumber =>
    Math.max(today, calendar.before(stages[s]?.siteId ?? null, day, Math.round(shop.numbers.kit_days)));
  const question: NeedQuestion = {
    tree,
    runs: runs.map(
      (run, r): NeedingRun => ({
        row: run.row,
        counts: run.counts,
        shipDay: run.shipDay ?? today,
        kits: (buckets[r] ?? []).map((own, s) =>
          own.map(({ startDay, to }) => ({ day: kitDay(s, startDay), to })),
        ),
      }),
    ),
    parts,
    shop,
    sources,
    supplyOf: net ? supplyOf : () => ({ stock: 0n, issued: new Map(), receipts: [] }),
    stageFor: (kind) => stages.findIndex((stage) => stage.kind === kind),
    stageIds: stages.map((stage) => stage.id),
    totals: variants.map(({ bill }) => bill.totals),
  };
  return explodeNeeds(question);
}

/** When parts can be there for each stage of each run, and the part that comes last. */
interface Arrivals {
  readonly days: ReadonlyMap<string, readonly DayNumber[]>;
  readonly heldBy: ReadonlyMap<string, ReadonlyMap<number, string>>;
}

function arrivalsOf({ input, sourcing, stages, calendar }: Planning, { net }: Needs): Arrivals {
  const days = new Map<string, DayNumber[]>();
  const heldBy = new Map<string, Map<number, string>>();
  const kitDays = Math.round(input.shop.numbers.kit_days);
  for (const demand of net) {
    const seen = new Set<string>();
    for (const { runId, stage } of demand.demands) {
      const name = `${runId} ${stage}`;
      if (stage < 0 || seen.has(name)) continue;
      seen.add(name);
      const arrival = sourcing.firstArrival(demand, runId);
      if (arrival === null) continue;
      const siteId = stages[stage]?.siteId ?? null;
      // What comes on a day off is kitted from the next working day on, so that kitting takes as long forward as backward.
      const ready = calendar.before(siteId, calendar.workDayFrom(siteId, arrival), -kitDays);
      const own = days.get(runId) ?? stages.map(() => 0);
      const held = heldBy.get(runId) ?? new Map<number, string>();
      days.set(runId, own);
      heldBy.set(runId, held);
      if (ready <= (own[stage] ?? 0)) continue;
      own[stage] = ready;
      held.set(stage, demand.partId);
    }
  }
  return { days, heldBy };
}

/** Whether a stage of some run would begin before its parts can be there. */
function mustWait(
  { runs }: Planning,
  { runs: scheduled }: Scheduled,
  days: ReadonlyMap<string, readonly DayNumber[]>,
): boolean {
  return runs.some(({ row }, r) =>
    (scheduled[r]?.schedule ?? []).some(
      ({ batches }, s) => (batches[0]?.startDay ?? 0) < (days.get(row.id)?.[s] ?? 0),
    ),
  );
}

/** Sources with the supplier that the lots come from. */
function chosenSources({ sources }: Planning, lots: readonly PlannedLots[]): ReadonlyMap<string, PartSource> {
  const chosen = new Map<string, PartSource>();
  for (const source of sources.values()) chosen.set(source.partId, source);
  for (const { demand, found } of lots) {
    if (found === null) continue;
    const { way, supplierId } = found.offer;
    chosen.set(demand.partId, { partId: demand.partId, wayId: way.wayId, kind: way.kind, supplierId });
  }
  return new Map([...chosen].sort(([a], [b]) => compareText(a, b)));
}

/** What no quantity changes: things for which the book names no part, and what runs in a circle. */
function alwaysMissing(variants: readonly MachineVariant[]): readonly Missing[] {
  const missing = new Map<string, Missing>();
  for (const { bill } of variants) {
    for (const [id, quantity] of bill.totals)
      if (quantity > 0n && bill.nodes.get(id)?.kind === "unnamed") missing.set(id, { lack: "no-part", id });
    for (const circle of bill.circles) for (const id of circle) missing.set(id, { lack: "circle", id });
  }
  return [...missing.values()];
}
