import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import {
  fastenerBill,
  Line,
  type LineResult,
  planStations,
  stationKits,
  USUAL_QUESTION,
} from "@pinwright/engine";
import { beforeAll, describe, expect, it } from "vitest";

const TIDEWATCH = join(import.meta.dirname, "../../../examples/tidewatch");

let line: LineResult;
beforeAll(async () => {
  const { book, shop } = await readBook(TIDEWATCH);
  line = new Line().run(book, shop ?? emptyShop());
}, 60_000);

const itemsOf = (isFastener: boolean): readonly string[] =>
  [...line.machine.items.values()]
    .filter((item) => (item.kind === "fastener") === isFastener && (isFastener || item.parentId === null))
    .map((item) => item.id)
    .sort();

describe("the steps of Tidewatch", () => {
  it("hold every item and every fastener exactly once", () => {
    const { steps } = line.steps;
    expect(steps.flatMap((step) => step.fastenerIds).sort()).toEqual(itemsOf(true));
    expect(steps.flatMap((step) => step.itemIds).sort()).toEqual(itemsOf(false));
    const harnesses = steps.flatMap((step) => step.harnessId ?? []);
    expect(harnesses.sort()).toEqual([...line.harnesses.keys()].sort());
  });

  it("keep a card readable, and keep to every edge", () => {
    const { steps, edges } = line.steps;
    const most = line.machine.shop.numbers.step_most_fasteners;
    for (const step of steps)
      if (step.kind !== "own" && step.itemIds.length > 1)
        expect(step.fastenerIds.length).toBeLessThanOrEqual(most);
    const numbers = new Map(steps.map((step) => [step.id, step.number]));
    for (const { beforeId, afterId } of edges)
      expect(numbers.get(beforeId)).toBeLessThan(numbers.get(afterId) ?? 0);
  });

  it("give kits that add up to the bill, whoever does them", () => {
    const bill = fastenerBill(line);
    for (const ask of [{ kind: "book-stations" }, { kind: "least-takt", places: 7 }] as const) {
      const plan = planStations(line, { ...USUAL_QUESTION, ask });
      expect(plan.unplaced).toEqual([]);
      expect(plan.taktS / plan.lowerBound - 1).toBeLessThanOrEqual(0.02);
      const counts = new Map<string, number>();
      for (const { fasteners } of stationKits(line, plan))
        for (const { typeId, count } of fasteners) counts.set(typeId, (counts.get(typeId) ?? 0) + count);
      expect(counts).toEqual(new Map(bill.map(({ typeId, count }) => [typeId, count])));
    }
  });
});
