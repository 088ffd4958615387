import type { BookRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import type { Machine, PanelCut, SlotCut } from "../model/index.ts";
import { appliesTo } from "../model/index.ts";
import { isSawn, type SheetGoods, sawMm, thicknessOf } from "./goods.ts";

type SizeRow = BookRow<"panel_sizes">;

/**
 * The size that every sawn panel is cut to. A size that follows the thickness of another panel differs from the drawn one
 * by the difference of that panel's measured and nominal thickness, as often as the book says: drawings are made with
 * nominal thickness.
 */
export function panelCuts(machine: Machine, goods: ReadonlyMap<string, SheetGoods>): readonly PanelCut[] {
  const rows = new Map(
    machine.book.tables.panel_sizes.map((row) => [`${row.panel} ${row.direction}`, row] as const),
  );
  const sawn = [...machine.panels.values()]
    .filter((panel) => isSawn(panel, goods))
    .sort((a, b) => compareText(a.id, b.id));
  return sawn.map((panel): PanelCut => {
    const x = rows.get(`${panel.id} x`);
    const y = rows.get(`${panel.id} y`);
    const tolerance = machine.shop.numbers.panel_tolerance_mm;
    return {
      panelId: panel.id,
      labels: { en: panel.label, zh: panel.label_zh },
      sheetPartId: panel.part,
      drawnWidthMm: panel.width_mm,
      drawnHeightMm: panel.height_mm,
      widthMm: sawMm(panel.width_mm + growth(machine, goods, x)),
      heightMm: sawMm(panel.height_mm + growth(machine, goods, y)),
      nominalThicknessMm: panel.thickness_mm,
      thicknessMm: thicknessOf(panel, goods),
      grain: panel.grain,
      settingX: nameOf(x),
      settingY: nameOf(y),
      minusXMm: x?.minus_mm ?? tolerance,
      plusXMm: x?.plus_mm ?? tolerance,
      minusYMm: y?.minus_mm ?? tolerance,
      plusYMm: y?.plus_mm ?? tolerance,
    };
  });
}

const nameOf = (row: SizeRow | undefined): string | null =>
  row === undefined || row.setting === "" ? null : row.setting;

function growth(machine: Machine, goods: ReadonlyMap<string, SheetGoods>, row: SizeRow | undefined): number {
  const followed = row?.thickness_of == null ? undefined : machine.panels.get(row.thickness_of);
  if (row === undefined || followed === undefined) return 0;
  return row.times * (thicknessOf(followed, goods) - followed.thickness_mm);
}

/**
 * Widths of slots and grooves that say which panel stands in them: that panel's measured thickness and the shop's play.
 * The width is the smaller extent of the cut, as it is drawn. Circles and outlines have none.
 */
export function slotCuts(machine: Machine, goods: ReadonlyMap<string, SheetGoods>): readonly SlotCut[] {
  const slots = machine.book.tables.cutouts.flatMap((row): SlotCut[] => {
    const takes = row.takes === null ? undefined : machine.panels.get(row.takes);
    if (takes === undefined || row.width_mm === null || row.height_mm === null) return [];
    if (!machine.panels.has(row.panel) || !appliesTo(row, machine.options)) return [];
    const across = row.width_mm <= row.height_mm ? "width" : "height";
    return [
      {
        cutoutId: row.id,
        panelId: row.panel,
        takesId: takes.id,
        across,
        drawnMm: Math.min(row.width_mm, row.height_mm),
        widthMm: sawMm(thicknessOf(takes, goods) + machine.shop.numbers.groove_play_mm),
      },
    ];
  });
  return slots.sort((a, b) => compareText(a.cutoutId, b.cutoutId));
}
