import type { PanelCut } from "@pinwright/engine";
import { view } from "./view.ts";

/** A row of the shop's stock sheets. */
interface StockSheet {
  readonly id: string;
  readonly partId: string;
  /** Across the grain. */
  readonly widthMm: number;
  /** Along the grain. */
  readonly lengthMm: number;
  readonly thicknessMm: number;
  readonly measuredMm: number | null;
  /** Null: bought as wanted. */
  readonly count: number | null;
  readonly isOffcut: boolean;
}

/** What cutting plans are about: whenever this is another, they are worked out anew. */
export interface CuttingBasis {
  readonly kerfMm: number;
  readonly stages: number;
  readonly cuts: readonly PanelCut[];
  readonly stock: readonly StockSheet[];
  /** The shop's other figures that a plan hangs on. */
  readonly settings: readonly number[];
}

export const cuttingBasis = view<null, CuttingBasis>({
  uses: ({ line, shop }) => [line.panels, shop.tables.stock_sheets, shop.numbers],
  entries: ({ line, shop }) => {
    const { saw_kerf_mm, saw_stages, offcut_min_mm, fence_setting_min, saw_cut_s } = shop.numbers;
    return new Map([
      [
        "",
        {
          kerfMm: saw_kerf_mm,
          stages: saw_stages,
          cuts: line.panels.cuts,
          stock: shop.tables.stock_sheets.map((row) => ({
            id: row.id,
            partId: row.part,
            widthMm: row.width_mm,
            lengthMm: row.length_mm,
            thicknessMm: row.thickness_mm,
            measuredMm: row.measured_mm,
            count: row.count,
            isOffcut: row.offcut,
          })),
          settings: [offcut_min_mm, fence_setting_min, saw_cut_s],
        },
      ],
    ]);
  },
  restsInPreview: true,
});
