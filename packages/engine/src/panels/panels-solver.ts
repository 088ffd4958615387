import { deepEqual, Query } from "@pinwright/kernel";
import type { Finding, Machine, PanelsResult } from "../model/index.ts";
import { checkPanels } from "./checks.ts";
import { fitResults } from "./fits.ts";
import { type SheetGoods, sheetGoods } from "./goods.ts";
import { panelCuts, slotCuts } from "./sizes.ts";

export interface Panelled {
  readonly panels: PanelsResult;
  readonly findings: readonly Finding[];
}

/** No panels yet. */
export const NO_PANELS: PanelsResult = { cuts: [], fits: [], slots: [] };

/**
 * The sizes that panels are cut to, the slots that they stand in and the fits of their box, with a memory: nothing is
 * found anew while no panel, size, fit, cutout or sheet of the shop is another.
 */
export class PanelsSolver {
  readonly #goods = new Query<ReadonlyMap<string, SheetGoods>>(deepEqual);
  readonly #result = new Query<PanelsResult>(deepEqual);
  readonly #findings = new Query<readonly Finding[]>(deepEqual);

  solve(machine: Machine): Panelled {
    const { panel_sizes, fits, fit_terms, cutouts } = machine.book.tables;
    const { shop, panels: rows } = machine;
    const goods = this.#goods.ask("all", [shop.tables.stock_sheets], () => sheetGoods(shop));
    const inputs = [goods, rows, panel_sizes, fits, fit_terms, cutouts, shop.numbers, ...machine.options];
    const panels = this.#result.ask("all", inputs, () => {
      const cuts = panelCuts(machine, goods);
      return { cuts, fits: fitResults(machine, goods, cuts), slots: slotCuts(machine, goods) };
    });
    const findings = this.#findings.ask("all", [panels, goods, rows, shop.numbers], () =>
      checkPanels(machine, goods, panels),
    );
    return { panels, findings };
  }

  sweep(): void {
    this.#goods.sweep();
    this.#result.sweep();
    this.#findings.sweep();
  }
}
