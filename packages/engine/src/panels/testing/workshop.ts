import type { BookRow, ShopNumbers, ShopRow } from "@pinwright/book";
import type { LineResult } from "../../model/index.ts";
import { resolveMachine } from "../../model/index.ts";
import { createBook, createShop, type SomeTables } from "../../testing/book.ts";
import { PanelsSolver } from "../panels-solver.ts";

/** Panels of one kind of plywood with the sheets that they are cut from, solved. */
export function workshop(
  panels: readonly Partial<BookRow<"panels">>[],
  stock: readonly Partial<ShopRow<"stock_sheets">>[] = [{}],
  some: SomeTables = {},
  numbers: Partial<ShopNumbers> = {},
): Pick<LineResult, "machine" | "panels" | "findings"> {
  const book = createBook({
    ...some,
    panels: panels.map((panel, i) => ({
      id: `p${i}`,
      purpose: "cabinet",
      thickness_mm: 18,
      wood: "hardwood",
      part: "sheet.ply-18",
      ...panel,
    })),
  });
  const shop = createShop(
    {
      stock_sheets: stock.map((row, i) => ({
        id: `s${i}`,
        part: "sheet.ply-18",
        width_mm: 1220,
        length_mm: 2440,
        thickness_mm: 18,
        ...row,
      })),
    },
    numbers,
  );
  const machine = resolveMachine(book, shop);
  const { panels: solved, findings } = new PanelsSolver().solve(machine);
  return { machine, panels: solved, findings };
}
