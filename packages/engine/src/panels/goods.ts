import type { BookRow, Shop, ShopRow } from "@pinwright/book";
import { compareText, roundTo } from "@pinwright/kernel";

/** Lengths of panels are set on a fence to this. */
const SIZE_STEP_MM = 0.1;

/** A length as a fence can be set to it. */
export const sawMm = (mm: number): number => roundTo(mm, SIZE_STEP_MM);

/** Stock sheets of one kind of sheet goods, and how thick they are. */
export interface SheetGoods {
  readonly partId: string;
  readonly thicknessMm: number;
  /** Whether that thickness was measured. */
  readonly measured: boolean;
  /** In code-point order of their ids. */
  readonly stock: readonly ShopRow<"stock_sheets">[];
}

/**
 * The shop's sheet goods by part. Their thickness is the one that was measured on whole sheets, of several the first
 * in code-point order, else on an offcut, else the nominal one.
 */
export function sheetGoods(shop: Shop): ReadonlyMap<string, SheetGoods> {
  const byPart = new Map<string, ShopRow<"stock_sheets">[]>();
  const rows = [...shop.tables.stock_sheets].sort((a, b) => compareText(a.id, b.id));
  for (const row of rows) byPart.set(row.part, [...(byPart.get(row.part) ?? []), row]);
  return new Map(
    [...byPart].map(([partId, stock]) => {
      const whole = stock.filter((row) => !row.offcut);
      const known =
        whole.find((row) => row.measured_mm !== null) ?? stock.find((row) => row.measured_mm !== null);
      const thicknessMm = known?.measured_mm ?? whole[0]?.thickness_mm ?? stock[0]?.thickness_mm ?? 0;
      return [partId, { partId, thicknessMm, measured: known !== undefined, stock }];
    }),
  );
}

/** Thickness of a panel: of its sheet goods as measured, else as drawn. */
export function thicknessOf(
  panel: BookRow<"panels">,
  goods: ReadonlyMap<string, Pick<SheetGoods, "thicknessMm" | "measured">>,
): number {
  const own = panel.part === null ? undefined : goods.get(panel.part);
  return own?.measured === true ? own.thicknessMm : panel.thickness_mm;
}

/** Whether a panel is something that the saw makes: wood, or cut from sheets that the shop stocks. */
export const isSawn = (panel: BookRow<"panels">, goods: ReadonlyMap<string, unknown>): boolean =>
  panel.wood !== "none" || (panel.part !== null && goods.has(panel.part));
