import type { CutArea, SheetCut } from "@pinwright/engine";
import type { ViewEntry } from "../../worker/protocol.ts";
import type { Cutting } from "./use-cutting.ts";

type Stock = ViewEntry<"cuttingBasis">["stock"][number];

/** Offcuts of one size that go back into stock. */
export interface KeptOffcut {
  /** Stock sheet that they are cut from: its thickness is theirs. */
  readonly stockId: string;
  /** Along the grain. */
  readonly lengthMm: number;
  /** Across the grain. */
  readonly widthMm: number;
  readonly count: number;
}

/** What is left worth keeping of all sheets, like sizes together, large ones first. */
export function offcutsOf({ sheets }: Pick<Cutting, "sheets">): readonly KeptOffcut[] {
  const found = new Map<string, KeptOffcut>();
  for (const { stockId, copies, offcuts } of sheets)
    for (const { widthMm: lengthMm, heightMm: widthMm } of offcuts) {
      const key = `${stockId} ${lengthMm} ${widthMm}`;
      const count = (found.get(key)?.count ?? 0) + copies;
      found.set(key, { stockId, lengthMm, widthMm, count });
    }
  return [...found.values()].sort((a, b) => b.widthMm * b.lengthMm - a.widthMm * a.lengthMm);
}

/** How many sheets of each row of the stock are cut. */
function sheetsUsed({ sheets }: Pick<Cutting, "sheets">): ReadonlyMap<string, number> {
  const used = new Map<string, number>();
  for (const { stockId, copies } of sheets) used.set(stockId, (used.get(stockId) ?? 0) + copies);
  return used;
}

/** Rows of the stock that change when sheets have been cut. */
export interface StockAfter {
  readonly rows: readonly {
    readonly table: "stock_sheets";
    readonly key: { readonly id: string };
    readonly cells: Readonly<Record<string, string>>;
  }[];
  readonly gone: readonly { readonly table: "stock_sheets"; readonly key: { readonly id: string } }[];
}

const textOf = (mm: number): string => String(Number(mm.toFixed(1)));

/**
 * The stock after the sheets of some plans have been cut: counted rows have fewer, an offcut that is used up is gone,
 * and what is left worth keeping is there, added to a row of the same size where there is one.
 */
export function stockAfter(stock: readonly Stock[], plans: readonly Pick<Cutting, "sheets">[]): StockAfter {
  const byId = new Map(stock.map((row) => [row.id, row]));
  const counts = new Map<string, number | null>(stock.map((row) => [row.id, row.count]));
  const made = new Map<string, Stock>();
  for (const plan of plans)
    for (const [id, used] of sheetsUsed(plan)) {
      const count = counts.get(id);
      if (count != null) counts.set(id, Math.max(0, count - used));
    }
  for (const { stockId, lengthMm, widthMm, count } of plans.flatMap(offcutsOf)) {
    const from = byId.get(stockId);
    if (from === undefined) continue;
    const like = [...byId.values()].find(
      (row) =>
        row.isOffcut &&
        row.count !== null &&
        row.partId === from.partId &&
        row.lengthMm === lengthMm &&
        row.widthMm === widthMm &&
        row.measuredMm === from.measuredMm,
    );
    const id = like?.id ?? freeId(byId, `off.${textOf(lengthMm)}x${textOf(widthMm)}-${from.id}`);
    counts.set(id, (counts.get(id) ?? 0) + count);
    if (like !== undefined) continue;
    const row = { ...from, id, lengthMm, widthMm, count, isOffcut: true };
    byId.set(id, row);
    made.set(id, row);
  }
  const rows = [...byId.values()].flatMap((row): StockAfter["rows"] => {
    const count = counts.get(row.id) ?? null;
    const key = { id: row.id };
    if (made.has(row.id)) return [{ table: "stock_sheets", key, cells: cellsOf(row, count ?? 0) }];
    if (count === row.count || (row.isOffcut && count === 0)) return [];
    return [{ table: "stock_sheets", key, cells: { count: String(count) } }];
  });
  const gone = stock
    .filter((row) => row.isOffcut && row.count !== 0 && counts.get(row.id) === 0)
    .map((row) => ({ table: "stock_sheets" as const, key: { id: row.id } }));
  return { rows, gone };
}

const cellsOf = (row: Stock, count: number): Readonly<Record<string, string>> => ({
  part: row.partId,
  width_mm: textOf(row.widthMm),
  length_mm: textOf(row.lengthMm),
  thickness_mm: textOf(row.thicknessMm),
  measured_mm: row.measuredMm === null ? "" : String(row.measuredMm),
  count: String(count),
  offcut: "yes",
});

/** An id that no row has: the wanted one, or with a number at its end. */
function freeId(rows: ReadonlyMap<string, unknown>, wanted: string): string {
  if (!rows.has(wanted)) return wanted;
  for (let n = 2; ; n++) if (!rows.has(`${wanted}-${n}`)) return `${wanted}-${n}`;
}

/** How a sheet is laid on the screen: its length to the right. */
export interface SheetScale {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rect: (area: CutArea) => {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
  readonly point: (xMm: number, yMm: number) => readonly [number, number];
}

/** The length of the longest sheet on the screen, px. */
const LONG_PX = 880;

/** @param longestMm length of the longest sheet that is drawn to the same scale */
export function sheetScale(
  { widthMm, heightMm }: Pick<SheetCut, "widthMm" | "heightMm">,
  longestMm: number,
): SheetScale {
  const k = LONG_PX / Math.max(longestMm, 1);
  return {
    widthPx: widthMm * k,
    heightPx: heightMm * k,
    rect: (area) => ({
      x: area.xMm * k,
      y: (heightMm - area.yMm - area.heightMm) * k,
      width: area.widthMm * k,
      height: area.heightMm * k,
    }),
    point: (xMm, yMm) => [xMm * k, (heightMm - yMm) * k],
  };
}

/** Whether a panel is done before the cuts that are looked at, with them, or not yet. */
export type DoneState = "done" | "now" | "later";

/** The state of each placed panel of a sheet when some of its cuts are looked at. */
export function doneStates(sheet: SheetCut, shown: ReadonlySet<number>): readonly DoneState[] {
  const first = shown.size === 0 ? 0 : Math.min(...shown);
  const states = sheet.panels.map((): DoneState => "later");
  for (const cut of sheet.cuts)
    for (const at of cut.doneAt)
      states[at] = shown.has(cut.number) ? "now" : cut.number < first ? "done" : "later";
  return states;
}
