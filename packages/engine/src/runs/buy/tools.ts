import { compareText, type Decimal } from "@pinwright/kernel";
import type { DayNumber, FirstArticle, ToolPurchase } from "../../model/index.ts";
import type { WorkCalendar } from "../calendar.ts";
import type { BeforeLots } from "./before-lots.ts";
import type { PlannedLots, Sourcing } from "./sourcing.ts";

/** Tools that have to be ordered, each once for all runs, in time for its first article and lot; by day, then tool. */
export function toolsOf(
  lots: readonly PlannedLots[],
  sourcing: Sourcing,
  before: BeforeLots,
  calendar: WorkCalendar,
  today: DayNumber,
): readonly ToolPurchase[] {
  const tools = new Map<string, ToolPurchase>();
  for (const { demand, demands, found } of lots) {
    const tool = found?.offer.tool ?? null;
    const first = found?.lots.orders[0];
    if (found === null || first === undefined || tool === null) continue;
    if (!before.lacksTool(demand.partId, found.offer)) continue;
    const runId = demands[0]?.runId ?? "";
    const needed = first.orderDay - before.articleDays(demand.partId, found.offer, today);
    const orderDay = Math.max(sourcing.begin(runId), calendar.workDayUpTo(null, needed - tool.leadDays));
    const known = tools.get(tool.id);
    const quantity = found.lots.orders.reduce((sum, lot) => sum + lot.quantity, 0n);
    const count = (known?.count ?? 0) + toolCount(quantity, tool.life);
    tools.set(tool.id, {
      toolingId: tool.id,
      partId: known?.partId ?? demand.partId,
      runId: known?.runId ?? runId,
      count,
      orderDay: Math.min(orderDay, known?.orderDay ?? orderDay),
      dueDay: Math.min(orderDay, known?.orderDay ?? orderDay) + tool.leadDays,
      cost: tool.cost === null ? null : tool.cost * BigInt(count),
    });
  }
  return [...tools.values()].sort((a, b) => a.orderDay - b.orderDay || compareText(a.toolingId, b.toolingId));
}

const BILLION = 1_000_000_000n;

/** Tools that so many parts wear out or begin. */
function toolCount(quantity: Decimal, life: number | null): number {
  if (life === null) return 1;
  const each = BigInt(Math.round(life)) * BILLION;
  return Number(quantity / each + (quantity % each > 0n ? 1n : 0n));
}

/** Samples that have to be asked for and approved before the first lot; by day, then part. */
export function articlesOf(
  lots: readonly PlannedLots[],
  before: BeforeLots,
  calendar: WorkCalendar,
  today: DayNumber,
): readonly FirstArticle[] {
  const articles = new Map<string, FirstArticle>();
  for (const { demand, found } of lots) {
    const first = found?.lots.orders[0];
    if (found === null || first === undefined || !before.lacksApproval(demand.partId)) continue;
    const days = before.articleDays(demand.partId, found.offer, today);
    const askDay = Math.max(today, calendar.workDayUpTo(null, first.orderDay - days));
    const known = articles.get(demand.partId);
    if (known !== undefined && known.askDay <= askDay) continue;
    articles.set(demand.partId, {
      partId: demand.partId,
      revision: demand.part?.revision ?? "",
      supplierId: found.lots.supplierId,
      askDay,
      dueDay: Math.max(askDay, askDay + days - 1),
    });
  }
  return [...articles.values()].sort((a, b) => a.askDay - b.askDay || compareText(a.partId, b.partId));
}
