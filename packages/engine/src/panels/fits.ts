import type { BookRow } from "@pinwright/book";
import { compareText, roundTo } from "@pinwright/kernel";
import type { FitResult, FitTermValue, Machine, PanelCut } from "../model/index.ts";
import { type SheetGoods, thicknessOf } from "./goods.ts";

const STEP_MM = 0.01;
const round = (mm: number): number => roundTo(mm, STEP_MM);

/** What is known of one size of a panel. */
type Size = Pick<FitTermValue, "valueMm" | "minusMm" | "plusMm">;

/**
 * What every fit of the book comes to. Worst case: the sum with every term at the end of its tolerance that hurts.
 * Likely: the middle ± the root of the sum of the squares of half the tolerances, each times how often it counts; it
 * supposes terms that are independent. Terms of one size of one panel are one term.
 */
export function fitResults(
  machine: Machine,
  goods: ReadonlyMap<string, SheetGoods>,
  cuts: readonly PanelCut[],
): readonly FitResult[] {
  const cutOf = new Map(cuts.map((cut) => [cut.panelId, cut] as const));
  const rowsOf = new Map<string, BookRow<"fit_terms">[]>();
  for (const row of machine.book.tables.fit_terms) {
    // A panel that this machine has not is no part of its box.
    if (row.panel !== null && !machine.panels.has(row.panel)) continue;
    const rows = rowsOf.get(row.fit);
    if (rows === undefined) rowsOf.set(row.fit, [row]);
    else rows.push(row);
  }
  const fits = [...machine.book.tables.fits].sort((a, b) => compareText(a.id, b.id));
  return fits.flatMap((fit): FitResult[] => {
    const rows = (rowsOf.get(fit.id) ?? []).sort((a, b) => compareText(a.term, b.term));
    const terms = rows.map((row) => termOf(machine, goods, cutOf, row));
    if (terms.length === 0) return [];
    return [
      {
        fitId: fit.id,
        labels: { en: fit.label, zh: fit.label_zh },
        terms,
        ...stackOf(terms),
        minMm: fit.min_mm,
        maxMm: fit.max_mm,
      },
    ];
  });
}

/** Limits of a sum of terms. */
export function stackOf(
  terms: readonly FitTermValue[],
): Pick<FitResult, "nominalMm" | "worstMinMm" | "worstMaxMm" | "rssMinMm" | "rssMaxMm"> {
  let nominal = 0;
  let worstMin = 0;
  let worstMax = 0;
  let squares = 0;
  for (const { times, valueMm, minusMm, plusMm } of merged(terms)) {
    nominal += times * valueMm;
    worstMin += times * valueMm - Math.abs(times) * (times > 0 ? minusMm : plusMm);
    worstMax += times * valueMm + Math.abs(times) * (times > 0 ? plusMm : minusMm);
    squares += ((times * (minusMm + plusMm)) / 2) ** 2;
  }
  const middle = (worstMin + worstMax) / 2;
  const half = Math.sqrt(squares);
  return {
    nominalMm: round(nominal),
    worstMinMm: round(worstMin),
    worstMaxMm: round(worstMax),
    rssMinMm: round(middle - half),
    rssMaxMm: round(middle + half),
  };
}

/** Terms of the same size of the same panel vary together: they count once, as often as both. */
function merged(terms: readonly FitTermValue[]): readonly FitTermValue[] {
  const byPanel = new Map<string, FitTermValue>();
  for (const term of terms) {
    const own = term.panelId === null || term.dimension === "other";
    const key = own
      ? `term ${term.term}`
      : `${term.panelId} ${term.dimension} ${term.minusMm} ${term.plusMm}`;
    const known = byPanel.get(key);
    const times = term.times + (known?.times ?? 0);
    byPanel.set(key, { ...term, times });
  }
  return [...byPanel.values()];
}

function termOf(
  machine: Machine,
  goods: ReadonlyMap<string, SheetGoods>,
  cutOf: ReadonlyMap<string, PanelCut>,
  row: BookRow<"fit_terms">,
): FitTermValue {
  const panel = row.panel === null ? undefined : machine.panels.get(row.panel);
  const size =
    panel === undefined || row.dimension === "other"
      ? { valueMm: 0, minusMm: 0, plusMm: 0 }
      : sizeOf(machine, goods, panel, cutOf.get(panel.id), row.dimension);
  return {
    term: row.term,
    panelId: row.panel,
    dimension: row.dimension,
    times: row.times,
    valueMm: round(row.nominal_mm ?? size.valueMm),
    minusMm: row.minus_mm ?? size.minusMm,
    plusMm: row.plus_mm ?? size.plusMm,
  };
}

function sizeOf(
  { shop }: Machine,
  goods: ReadonlyMap<string, SheetGoods>,
  panel: BookRow<"panels">,
  cut: PanelCut | undefined,
  dimension: "width" | "height" | "thickness",
): Size {
  const usual = shop.numbers.panel_tolerance_mm;
  const thick = shop.numbers.thickness_tolerance_mm;
  switch (dimension) {
    case "width":
      return {
        valueMm: cut?.widthMm ?? panel.width_mm,
        minusMm: cut?.minusXMm ?? usual,
        plusMm: cut?.plusXMm ?? usual,
      };
    case "height":
      return {
        valueMm: cut?.heightMm ?? panel.height_mm,
        minusMm: cut?.minusYMm ?? usual,
        plusMm: cut?.plusYMm ?? usual,
      };
    case "thickness":
      return { valueMm: thicknessOf(panel, goods), minusMm: thick, plusMm: thick };
  }
}
