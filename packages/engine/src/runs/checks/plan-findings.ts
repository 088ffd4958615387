import { compareText, numberOfDecimal } from "@pinwright/kernel";
import { type Finding, makeFinding, type RunsPlan, rowsById } from "../../model/index.ts";
import type { PlannedLots } from "../buy/sourcing.ts";
import { dayText } from "../days.ts";
import type { PlanInput } from "../input.ts";
import type { PlannedStage } from "../schedule/stage.ts";
import { stockLedger } from "../stock/stock.ts";

/** What is wrong with a plan of runs, or should be looked at. */
export function planFindings(
  input: PlanInput,
  stages: readonly PlannedStage[],
  plan: Omit<RunsPlan, "findings">,
  lots: readonly PlannedLots[],
): readonly Finding[] {
  return [
    ...otherBooks(input),
    ...lateRuns(input, plan),
    ...capacity(input, stages, plan),
    ...calendarSites(input, stages),
    ...smallOrders(input, plan),
    ...negativeStock(input),
    ...unsourced(lots),
    ...notApproved(plan),
  ];
}

function otherBooks({ book, shop }: PlanInput): readonly Finding[] {
  return shop.tables.runs
    .filter((run) => run.book !== book.machine.id && run.state !== "done")
    .map((run) => makeFinding("run-other-book", "note", [run.id, run.book], {}));
}

/** A run whose ship day has passed, or that cannot be ready by it; what holds it is named. */
function lateRuns({ today }: PlanInput, { runs }: Omit<RunsPlan, "findings">): readonly Finding[] {
  return runs.flatMap(({ runId, shipDay, readyDay, isLate, heldBy }) => {
    if (shipDay === null) return [];
    if (shipDay < today)
      return [makeFinding("run-past", "error", [runId], { ship: dayText(shipDay), today: dayText(today) })];
    if (!isLate) return [];
    const numbers = {
      ship: dayText(shipDay),
      ready: readyDay === null ? "-" : dayText(readyDay),
      late_days: readyDay === null ? 0 : readyDay - shipDay,
    };
    return [makeFinding("run-late", "error", [runId, ...(heldBy === null ? [] : [heldBy])], numbers)];
  });
}

/** Stages that have work but nobody to do it, or no room for a run at all. */
function capacity(
  { shop }: PlanInput,
  stages: readonly PlannedStage[],
  { stages: blocks, runs }: Omit<RunsPlan, "findings">,
): readonly Finding[] {
  if (runs.length === 0) return [];
  if (stages.length === 0)
    return [makeFinding("stage-capacity", "warning", [runs[0]?.runId ?? ""], { people: 0 })];
  return stages.flatMap((stage) => {
    const own = blocks.filter((block) => block.stageId === stage.id);
    const works = own.some((block) => block.minutesPerMachine > 0);
    const hours = stage.benches.reduce((sum, b) => sum + (shop.tables.benches[b]?.hours_day ?? 0), 0);
    const isFull = own.length < runs.length;
    if (!isFull && (!works || (stage.people > 0 && hours > 0))) return [];
    return [makeFinding("stage-capacity", "error", [stage.id], { people: stage.people })];
  });
}

/** Benches of a stage that stand at several sites, whose calendars differ. */
function calendarSites({ shop }: PlanInput, stages: readonly PlannedStage[]): readonly Finding[] {
  return stages.flatMap((stage) => {
    const sites = [...new Set(stage.benches.flatMap((b) => shop.tables.benches[b]?.site ?? []))].sort(
      compareText,
    );
    const differ = sites.some((site) => shop.tables.calendars.some((row) => row.site === site));
    return sites.length > 1 && differ ? [makeFinding("calendar-site", "note", [stage.id, ...sites], {})] : [];
  });
}

function smallOrders({ shop }: PlanInput, { orders }: Omit<RunsPlan, "findings">): readonly Finding[] {
  const suppliers = rowsById(shop.tables.suppliers);
  return orders.flatMap(({ id, supplierId, total, shipping, currency, orderDay }) => {
    const least = suppliers.get(supplierId)?.least_order ?? 0;
    const value = numberOfDecimal(total.value - shipping);
    if (value >= least) return [];
    return [
      makeFinding("order-least", "warning", [supplierId, id], {
        value,
        least,
        currency,
        day: dayText(orderDay),
      }),
    ];
  });
}

/** Movements that leave less than nothing and give no reason. */
function negativeStock({ shop }: PlanInput): readonly Finding[] {
  return stockLedger(shop)
    .filter(
      ({ isBelowZero, movement }) => isBelowZero && movement.reason === "" && movement.kind !== "received",
    )
    .map(({ movement, balance }) =>
      makeFinding("stock-negative", "error", [movement.part, movement.id], {
        balance: numberOfDecimal(balance),
        day: movement.day,
      }),
    );
}

/** Parts that runs need and of which nobody says how they come; one finding for a part. */
function unsourced(lots: readonly PlannedLots[]): readonly Finding[] {
  const found = new Map<string, { quantity: bigint; runs: Set<string> }>();
  for (const { demand, demands, found: offer } of lots) {
    if (offer !== null) continue;
    const own = found.get(demand.partId) ?? { quantity: 0n, runs: new Set<string>() };
    found.set(demand.partId, own);
    for (const { quantity, runId } of demands) {
      own.quantity += quantity;
      own.runs.add(runId);
    }
  }
  return [...found]
    .sort(([a], [b]) => compareText(a, b))
    .map(([partId, { quantity, runs }]) =>
      makeFinding("need-unsourced", "error", [partId, ...runs], { quantity: numberOfDecimal(quantity) }),
    );
}

function notApproved({ articles }: Omit<RunsPlan, "findings">): readonly Finding[] {
  return articles.map(({ partId, revision, askDay }) =>
    makeFinding("run-not-approved", "warning", [partId], { revision, day: dayText(askDay) }),
  );
}
