import type { ElectricSolution, Machine, SupplyRating } from "../../model/index.ts";

/** Head-room of every supply: its rated current less the larger of rms and hold, each at its worst corner. */
export function rateSupplies(
  machine: Machine,
  solution: Pick<ElectricSolution, "supplies">,
): ReadonlyMap<string, SupplyRating> {
  const rows = new Map(machine.book.tables.supplies.map((supply) => [supply.id, supply]));
  return new Map(
    [...solution.supplies.values()].map((budget): [string, SupplyRating] => {
      const { supplyId, ratedA } = budget;
      const [rmsA, holdA] = [budget.rmsA.most, budget.holdA.most];
      return [
        supplyId,
        {
          supplyId,
          ratedA,
          limitA: rows.get(supplyId)?.limit_a ?? null,
          steadyA: budget.steadyA.most,
          rmsA,
          holdA,
          worstA: budget.worstA.most,
          headroomA: ratedA - Math.max(rmsA, holdA),
        },
      ];
    }),
  );
}
