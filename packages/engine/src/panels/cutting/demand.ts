import type { Shop, ShopRow } from "@pinwright/book";
import { type CuttingProblem, type CuttingRules, compareText } from "@pinwright/kernel";
import type { CutPieceOf, PanelCut } from "../../model/index.ts";
import { type SheetGoods, sheetGoods } from "../goods.ts";

/** A panel and how many of it are wanted. */
export interface PanelDemand {
  readonly cut: PanelCut;
  readonly count: number;
}

/** What is cut from one kind of sheet goods. */
export interface GoodsDemand {
  readonly sheetPartId: string;
  /** Panels of one size together, the longest along the grain first. */
  readonly pieces: readonly CutPieceOf[];
  /** Sheets that may be used, in the order of the problem's: offcuts first. */
  readonly stock: readonly ShopRow<"stock_sheets">[];
  readonly problem: CuttingProblem;
}

/** What a whole sheet costs in a plan; an offcut costs 1, so that it is used where it saves a sheet. */
export const WHOLE_SHEET = 1000;

/**
 * Demand of all sheet goods. Along the grain is along the length of a sheet, which is the width of the kernel's problem.
 * A panel without grain may lie either way. Offcuts whose thickness differs from that which the panels are sized for are
 * left out: their panels would not fit.
 */
export function goodsDemands(shop: Shop, demands: readonly PanelDemand[]): readonly GoodsDemand[] {
  const byPart = new Map<string, PanelDemand[]>();
  for (const demand of demands) {
    const { sheetPartId } = demand.cut;
    if (sheetPartId === null || demand.count === 0) continue;
    byPart.set(sheetPartId, [...(byPart.get(sheetPartId) ?? []), demand]);
  }
  const goods = sheetGoods(shop);
  return [...byPart].flatMap(([partId, own]) => {
    const sheets = goods.get(partId);
    return sheets === undefined ? [] : [demandOf(shop, sheets, own)];
  });
}

function demandOf(shop: Shop, goods: SheetGoods, demands: readonly PanelDemand[]): GoodsDemand {
  const pieces = piecesOf(demands);
  const stock = usable(shop, goods);
  return {
    sheetPartId: goods.partId,
    pieces,
    stock,
    problem: {
      pieces: pieces.map(({ widthMm, heightMm, count, mayTurn }) => ({ widthMm, heightMm, count, mayTurn })),
      sheets: stock.map((row) => ({
        widthMm: row.length_mm,
        heightMm: row.width_mm,
        trim: { leftMm: row.trim_mm, rightMm: row.trim_mm, bottomMm: row.trim_mm, topMm: row.trim_mm },
        // An offcut that nobody counted is one.
        count: row.count ?? (row.offcut ? 1 : null),
        cost: row.offcut ? 1 : WHOLE_SHEET,
      })),
      ...sawRules(shop),
    },
  };
}

/** Rules of the shop's saw: every cut from edge to edge, in so many stages. */
const sawRules = (shop: Shop): CuttingRules => ({
  kerfMm: shop.numbers.saw_kerf_mm,
  stages: Math.max(1, Math.round(shop.numbers.saw_stages)),
  firstCut: "either",
  lastTrim: false,
});

function usable(shop: Shop, goods: SheetGoods): readonly ShopRow<"stock_sheets">[] {
  const alike = (row: ShopRow<"stock_sheets">): boolean =>
    Math.abs((row.measured_mm ?? goods.thicknessMm) - goods.thicknessMm) <=
    shop.numbers.thickness_tolerance_mm + 1e-9;
  const own = goods.stock.filter((row) => alike(row) && row.count !== 0);
  return [...own].sort((a, b) => Number(b.offcut) - Number(a.offcut) || compareText(a.id, b.id));
}

function piecesOf(demands: readonly PanelDemand[]): readonly CutPieceOf[] {
  const bySize = new Map<
    string,
    { readonly piece: Omit<CutPieceOf, "panelIds" | "count">; ids: string[]; count: number }
  >();
  for (const { cut, count } of demands) {
    const across = cut.grain === "y";
    const widthMm = across ? cut.heightMm : cut.widthMm;
    const heightMm = across ? cut.widthMm : cut.heightMm;
    const mayTurn = cut.grain === "none" && widthMm !== heightMm;
    const key = `${widthMm} ${heightMm} ${mayTurn}`;
    const known = bySize.get(key) ?? { piece: { widthMm, heightMm, mayTurn }, ids: [], count: 0 };
    known.ids.push(cut.panelId);
    known.count += count;
    bySize.set(key, known);
  }
  return [...bySize.values()]
    .map(({ piece, ids, count }): CutPieceOf => ({ ...piece, panelIds: ids, count }))
    .sort(
      (a, b) => b.widthMm - a.widthMm || b.heightMm - a.heightMm || Number(a.mayTurn) - Number(b.mayTurn),
    );
}
