import { compareText, type Decimal } from "@pinwright/kernel";
import { type DayNumber, type Languages, labelsOf, type RunsPlan, rowsById } from "../model/index.ts";
import type { PlanInput } from "./input.ts";

/** What a stage of a run lacks of a part today. */
export interface Shortage {
  readonly runId: string;
  /** Null: spares, which leave with the run, or the shop has no such stage. */
  readonly stageId: string | null;
  readonly partId: string;
  readonly colour: string;
  readonly labels: Languages;
  readonly unit: "each" | "m" | "m2" | "kg" | "l";
  readonly needed: Decimal;
  readonly onHand: Decimal;
  /** Placed and coming in time. */
  readonly ordered: Decimal;
  /** Still to be ordered or made. */
  readonly short: Decimal;
  /** By which the first of what is short must be there; of all of it where nothing is. */
  readonly neededDay: DayNumber;
  /** Last day to order what is short; null: nobody says how it comes, or it is made here. */
  readonly orderDay: DayNumber | null;
}

/**
 * What each stage of a run still lacks: by stage in the order of the shop, then by the day on which it is needed. Parts
 * that are there or on their way in full are left out unless all are asked for.
 */
export function shortages(
  { book, shop }: Pick<PlanInput, "book" | "shop">,
  plan: Pick<RunsPlan, "needs" | "lots">,
  runId: string,
  all = false,
): readonly Shortage[] {
  const parts = rowsById(book.tables.parts);
  const places = new Map(shop.tables.stages.map((stage, s) => [stage.id, s]));
  const firstOrder = new Map<string, DayNumber>();
  for (const { partId, colour, supplierId, orders } of plan.lots) {
    const own = orders.find((lot) => lot.runIds.includes(runId));
    if (own !== undefined && supplierId !== null) firstOrder.set(`${partId}\n${colour}`, own.orderDay);
  }
  return plan.needs
    .filter((need) => need.runId === runId && (all || need.net > 0n))
    .map((need): Shortage => {
      const part = parts.get(need.partId);
      return {
        runId,
        stageId: need.stageId,
        partId: need.partId,
        colour: need.colour,
        labels: part === undefined ? { en: need.partId, zh: need.partId } : labelsOf(part, part.id),
        unit: part?.unit ?? "each",
        needed: need.gross,
        onHand: need.fromStock,
        ordered: need.fromOrders,
        short: need.net,
        neededDay: need.shortDay ?? need.neededDay,
        orderDay: firstOrder.get(`${need.partId}\n${need.colour}`) ?? null,
      };
    })
    .sort(
      (a, b) =>
        placeOf(places, a) - placeOf(places, b) ||
        a.neededDay - b.neededDay ||
        compareText(a.partId, b.partId) ||
        compareText(a.colour, b.colour),
    );
}

const placeOf = (places: ReadonlyMap<string, number>, { stageId }: Shortage): number =>
  stageId === null ? places.size : (places.get(stageId) ?? 0);
