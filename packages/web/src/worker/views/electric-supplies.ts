import type { Corner, LineResult, Spread, SupplyBudget } from "@pinwright/engine";
import { type LoadKind, loadKindOf, type Named, namedElement, namedSupply } from "../electric/naming.ts";
import { electricOf } from "../electric/of-line.ts";
import { view } from "./view.ts";

/** A supply with what it gives, against what it can. */
export interface SupplyLine extends Named {
  readonly volts: number;
  readonly tolerancePct: number;
  readonly limitMode: "none" | "constant" | "fold-back" | "hiccup" | "latch";
  readonly limitA: number | null;
  readonly storedJ: number | null;
  readonly budget: Omit<SupplyBudget, "parts">;
  /** Rated current less what flows all the time, at every corner: the larger of rms and hold. */
  readonly headroomA: Spread;
  /** Part of its rated current that flows all the time, at the worst corner. */
  readonly share: number;
  /** Loads that it feeds. */
  readonly loads: number;
}

/** What one load takes in a supply's worst moment. */
interface SupplyPart extends Named {
  readonly kind: LoadKind;
  readonly amps: number;
}

/** A supply with its worst moment, load by load. */
export interface SupplyFigures extends SupplyLine {
  readonly parts: readonly SupplyPart[];
}

type Row = LineResult["machine"]["book"]["tables"]["supplies"][number];

/** Rated current less the larger of two, each at its own worst corner. */
function headroom(ratedA: number, a: Spread, b: Spread): Spread {
  const pick = (x: number, y: number, xAt: Corner, yAt: Corner): readonly [number, Corner] =>
    x >= y ? [ratedA - x, xAt] : [ratedA - y, yAt];
  const [least, leastAt] = pick(a.most, b.most, a.mostAt, b.mostAt);
  const [most, mostAt] = pick(a.least, b.least, a.leastAt, b.leastAt);
  return { nominal: ratedA - Math.max(a.nominal, b.nominal), least, leastAt, most, mostAt };
}

function lineOf(line: LineResult, row: Row, loads: number): SupplyLine | null {
  const budget = electricOf(line).solution.supplies.get(row.id);
  if (budget === undefined) return null;
  const { parts: _, ...totals } = budget;
  const lasting = Math.max(budget.rmsA.most, budget.holdA.most);
  return {
    ...namedSupply(line, row.id),
    volts: row.volts,
    tolerancePct: row.tolerance_pct,
    limitMode: row.limit_mode,
    limitA: row.limit_a,
    storedJ: row.stored_j,
    budget: totals,
    headroomA: headroom(row.rated_a, budget.rmsA, budget.holdA),
    share: row.rated_a > 0 ? lasting / row.rated_a : lasting > 0 ? Number.POSITIVE_INFINITY : 0,
    loads,
  };
}

function loadsBySupply(line: LineResult): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { supplyId } of electricOf(line).solution.loads.values())
    counts.set(supplyId, (counts.get(supplyId) ?? 0) + 1);
  return counts;
}

/** Every supply that feeds something, in the order of the book. */
export const electricSupplies = view<null, SupplyLine>({
  uses: ({ line }) => [electricOf(line), line.machine.book.tables.supplies],
  entries: ({ line }) => {
    const loads = loadsBySupply(line);
    return new Map(
      line.machine.book.tables.supplies.flatMap((row) => {
        const found = lineOf(line, row, loads.get(row.id) ?? 0);
        return found === null ? [] : [[row.id, found] as const];
      }),
    );
  },
  restsInPreview: true,
});

/** One supply with its worst moment; nothing when there is none of this id, or it feeds nothing. */
export const electricSupply = view<string, SupplyFigures>({
  uses: ({ line }) => [electricOf(line), line.machine.book.tables.supplies, line.machine.items],
  entries: ({ line }, id) => {
    const row = line.machine.book.tables.supplies.find((supply) => supply.id === id);
    const found = row === undefined ? null : lineOf(line, row, loadsBySupply(line).get(id) ?? 0);
    if (found === null) return new Map();
    const parts = electricOf(line).solution.supplies.get(id)?.parts ?? [];
    return new Map([
      [
        "",
        {
          ...found,
          parts: parts.map(({ loadId, amps }) => ({
            ...namedElement(line, loadId),
            kind: loadKindOf(line, loadId),
            amps,
          })),
        },
      ],
    ]);
  },
  restsInPreview: true,
});
