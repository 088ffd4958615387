import { compareText } from "@pinwright/kernel";
import type { SupplyBudget } from "../../model/index.ts";
import type { SourcePart } from "../network/parts.ts";
import { spreadOf } from "./corners.ts";
import { heldMean, rmsAt } from "./heating.ts";
import { loadAmps, loadRows } from "./island-loads.ts";
import { baseAt, negated, type Rows } from "./rows.ts";
import type { SolvedIsland } from "./solved-island.ts";
import { type UnitSet, valueAt } from "./worst.ts";

/** What each supply of an island delivers. Sources within boards that no row of `supplies` is about have none. */
export function supplyBudgets(solved: SolvedIsland): ReadonlyMap<string, SupplyBudget> {
  const { joins, sources } = solved.task.network;
  const byJoin = solved.joinRows;
  return new Map(
    sources.flatMap((source) => {
      const into = byJoin[joins.indexOf(source)];
      // A join's current enters the source at its positive end; what it delivers flows the other way.
      return source.supply === null || into === undefined
        ? []
        : [[source.supply.id, budgetOf(solved, source, source.supply, negated(into))] as const];
    }),
  );
}

function budgetOf(
  solved: SolvedIsland,
  source: SourcePart,
  supply: NonNullable<SourcePart["supply"]>,
  rows: Rows,
): SupplyBudget {
  const { worst, currents } = solved;
  const { set } = worst.heaviest(worst.weights(rows));
  const holds = currents.map((units, c) => units.map((unit) => heldMean(rows, c, unit)));
  const held = worst.heaviest(Float64Array.from(holds[0] ?? [])).set;
  return {
    supplyId: supply.id,
    ratedA: supply.rated_a,
    steadyA: spreadOf((c) => baseAt(rows, c)),
    rmsA: spreadOf((c) => rmsAt(rows, c, currents[c] ?? [])),
    holdA: spreadOf((c) => held.units.reduce((sum, u) => sum + (holds[c]?.[u] ?? 0), baseAt(rows, c))),
    worstA: spreadOf((c) => valueAt(rows, c, set)),
    momentId: solved.momentOf(set, supply.id),
    parts: partsOf(solved, source, set),
  };
}

/** What each load of a source draws in a moment at the nominal corner, largest first. */
function partsOf(solved: SolvedIsland, source: SourcePart, set: UnitSet): SupplyBudget["parts"] {
  const { network } = solved.task;
  return [...network.steady, ...set.units.flatMap((u) => network.units[u]?.unit.loads ?? [])]
    .flatMap((feed) => {
      const rows = feed.source.id === source.id ? loadRows(solved, feed) : null;
      if (rows === null) return [];
      return [{ loadId: feed.load.id, amps: loadAmps(solved, feed, 0, valueAt(rows, 0, set)) }];
    })
    .sort((a, b) => b.amps - a.amps || compareText(a.loadId, b.loadId));
}
