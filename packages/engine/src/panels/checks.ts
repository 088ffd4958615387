import type { ShopRow } from "@pinwright/book";
import { roundTo } from "@pinwright/kernel";
import { type Finding, type Machine, makeFinding, type PanelCut, type PanelsResult } from "../model/index.ts";
import type { SheetGoods } from "./goods.ts";

/** Sizes that differ by less are one on the fence. */
const SAME_MM = 0.05;
/** A slot that is drawn this far from the nominal thickness of its panel is drawn for another one. */
const DRAWN_FAR_MM = 1;
/** Grain is called out when without it so many times as many pieces would come from a sheet. */
const GRAIN_COSTS = 1.5;

/**
 * Tolerance of the thickness of sanded plywood, +(0.2 + 0.03 t) and −(0.4 + 0.03 t) mm: EN 315:2000, the formula from
 * memory; a maker's table (18 mm +0.7 −0.9, 12 mm +0.5 −0.7) agrees with it.
 */
const thicknessWindow = (nominalMm: number): { readonly leastMm: number; readonly mostMm: number } => ({
  leastMm: roundTo(nominalMm - 0.4 - 0.03 * nominalMm, 0.01),
  mostMm: roundTo(nominalMm + 0.2 + 0.03 * nominalMm, 0.01),
});

/** What is wrong with panels, their sheets, sizes, slots and fits. */
export function checkPanels(
  machine: Machine,
  goods: ReadonlyMap<string, SheetGoods>,
  panels: PanelsResult,
): readonly Finding[] {
  return [
    ...panels.cuts.flatMap((cut) => checkSheet(cut, goods)),
    ...checkSettings(panels.cuts),
    ...checkThickness(machine, goods, panels.cuts),
    ...checkSlots(machine, panels),
    ...checkFits(panels),
  ];
}

/** Length along and across the grain of a panel as it lies on a sheet. */
const lying = ({ grain, widthMm, heightMm }: PanelCut): readonly [alongMm: number, acrossMm: number] =>
  grain === "y" ? [heightMm, widthMm] : [widthMm, heightMm];

/** How many pieces of a size come from a sheet in rows and columns. */
function fromSheet(
  alongMm: number,
  acrossMm: number,
  sheet: ShopRow<"stock_sheets">,
  kerfMm: number,
): number {
  const inside = (whole: number): number => whole - 2 * sheet.trim_mm + kerfMm;
  return (
    Math.max(0, Math.floor(inside(sheet.length_mm) / (alongMm + kerfMm) + 1e-9)) *
    Math.max(0, Math.floor(inside(sheet.width_mm) / (acrossMm + kerfMm) + 1e-9))
  );
}

function checkSheet(cut: PanelCut, goods: ReadonlyMap<string, SheetGoods>): Finding[] {
  const own = cut.sheetPartId === null ? undefined : goods.get(cut.sheetPartId);
  const largest = own?.stock.reduce<ShopRow<"stock_sheets"> | null>(
    (best, row) =>
      best === null || row.width_mm * row.length_mm > best.width_mm * best.length_mm ? row : best,
    null,
  );
  if (largest == null) {
    const subjects = [cut.panelId, ...(cut.sheetPartId === null ? [] : [cut.sheetPartId])];
    return [makeFinding("panel-no-sheet", "warning", subjects, { thickness_mm: cut.nominalThicknessMm })];
  }
  const stock = own?.stock ?? [];
  const most = (alongMm: number, acrossMm: number): number =>
    Math.max(...stock.map((row) => fromSheet(alongMm, acrossMm, row, 0)));
  const [along, across] = lying(cut);
  const straight = most(along, across);
  const turned = most(across, along);
  const fits = cut.grain === "none" ? Math.max(straight, turned) : straight;
  const found: Finding[] = [];
  if (fits === 0)
    found.push(
      makeFinding("panel-too-big", "error", [cut.panelId, largest.id], {
        along_mm: along,
        across_mm: across,
        sheet_along_mm: largest.length_mm - 2 * largest.trim_mm,
        sheet_across_mm: largest.width_mm - 2 * largest.trim_mm,
      }),
    );
  if (cut.grain !== "none" && turned > 0 && turned >= GRAIN_COSTS * straight)
    found.push(
      makeFinding("panel-grain", "note", [cut.panelId], {
        pieces_with_grain: straight,
        pieces_turned: turned,
      }),
    );
  return found;
}

/** Sizes with one name are cut at one setting of the fence, so they must be the same. */
function checkSettings(cuts: readonly PanelCut[]): Finding[] {
  const bySetting = new Map<string, { readonly panelId: string; readonly mm: number }[]>();
  const add = (setting: string | null, panelId: string, mm: number): void => {
    if (setting !== null) bySetting.set(setting, [...(bySetting.get(setting) ?? []), { panelId, mm }]);
  };
  for (const cut of cuts) {
    add(cut.settingX, cut.panelId, cut.widthMm);
    add(cut.settingY, cut.panelId, cut.heightMm);
  }
  return [...bySetting].flatMap(([setting, sizes]) => {
    const least = Math.min(...sizes.map(({ mm }) => mm));
    const most = Math.max(...sizes.map(({ mm }) => mm));
    if (most - least <= SAME_MM) return [];
    const ids = [...new Set(sizes.map(({ panelId }) => panelId))];
    return [makeFinding("panel-setting", "error", ids, { setting, least_mm: least, most_mm: most })];
  });
}

function checkThickness(
  { shop }: Machine,
  goods: ReadonlyMap<string, SheetGoods>,
  cuts: readonly PanelCut[],
): Finding[] {
  const used = new Set(cuts.map((cut) => cut.sheetPartId));
  const found: Finding[] = [];
  for (const own of goods.values()) {
    if (!used.has(own.partId)) continue;
    for (const row of own.stock) {
      if (row.measured_mm === null) continue;
      const { leastMm, mostMm } = thicknessWindow(row.thickness_mm);
      if (row.measured_mm < leastMm || row.measured_mm > mostMm)
        found.push(
          makeFinding("thickness-far", "warning", [row.id, own.partId], {
            measured_mm: row.measured_mm,
            least_mm: leastMm,
            most_mm: mostMm,
          }),
        );
      else if (Math.abs(row.measured_mm - own.thicknessMm) > shop.numbers.thickness_tolerance_mm + 1e-9)
        found.push(
          makeFinding("thickness-mixed", "warning", [row.id, own.partId], {
            measured_mm: row.measured_mm,
            cut_for_mm: own.thicknessMm,
            tolerance_mm: shop.numbers.thickness_tolerance_mm,
          }),
        );
    }
  }
  return found;
}

function checkSlots({ panels, shop }: Machine, { slots, cuts }: PanelsResult): Finding[] {
  const thickness = new Map(cuts.map((cut) => [cut.panelId, cut.thicknessMm] as const));
  return slots.flatMap((slot) => {
    const nominal = panels.get(slot.takesId)?.thickness_mm ?? 0;
    const most = (thickness.get(slot.takesId) ?? nominal) + shop.numbers.thickness_tolerance_mm;
    const tight = slot.widthMm < most - SAME_MM;
    const otherPanel = Math.abs(slot.drawnMm - nominal) > DRAWN_FAR_MM;
    if (!tight && !otherPanel) return [];
    return [
      makeFinding(
        "slot-thickness",
        otherPanel ? "error" : "warning",
        [slot.panelId, slot.takesId, slot.cutoutId],
        {
          drawn_mm: slot.drawnMm,
          nominal_mm: nominal,
          slot_mm: slot.widthMm,
          most_mm: most,
        },
      ),
    ];
  });
}

function checkFits({ fits }: PanelsResult): Finding[] {
  return fits.flatMap((fit) => {
    const below = (mm: number): boolean => fit.minMm !== null && mm < fit.minMm - 1e-6;
    const above = (mm: number): boolean => fit.maxMm !== null && mm > fit.maxMm + 1e-6;
    const likely = below(fit.rssMinMm) || above(fit.rssMaxMm);
    if (!likely && !below(fit.worstMinMm) && !above(fit.worstMaxMm)) return [];
    const ids = [fit.fitId, ...new Set(fit.terms.flatMap(({ panelId }) => panelId ?? []))];
    const asked = {
      asked_min_mm: fit.minMm ?? "–",
      asked_max_mm: fit.maxMm ?? "–",
    };
    return likely
      ? [makeFinding("fit-likely", "error", ids, { from_mm: fit.rssMinMm, to_mm: fit.rssMaxMm, ...asked })]
      : [
          makeFinding("fit-worst", "warning", ids, {
            from_mm: fit.worstMinMm,
            to_mm: fit.worstMaxMm,
            ...asked,
          }),
        ];
  });
}
