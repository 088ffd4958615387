import type { CuttingPlan, CuttingProblem, FenceSetting } from "@pinwright/kernel";
import {
  type CutPieceOf,
  type FenceSetup,
  type LineResult,
  labelsOf,
  type Machine,
  type PanelsResult,
  type SawCut,
  type SheetCut,
  type SheetCutting,
} from "../../model/index.ts";
import { cutSheets } from "./choose.ts";
import { type GoodsDemand, goodsDemands, type PanelDemand, WHOLE_SHEET } from "./demand.ts";
import type { Cutting } from "./few.ts";
import { fenceKey, type PatternUse, wholeSheets } from "./pattern.ts";
import { type SawOrder, sawOrder } from "./saw-order.ts";
import { layOut, PanelNames, type SheetLayout } from "./sheet-layout.ts";

/** What the panels of a run are cut from. */
export interface CuttingQuestion {
  /** How many of every panel; 1 for one machine. */
  readonly machines: number;
}

/**
 * How the panels of one machine or of a run are cut, for each kind of sheet goods in the order of the book's panels: by a
 * table saw, from edge to edge, in the shop's number of stages, with kerf and trim, the grain along the sheet. Fewest whole
 * sheets first, then fewest settings of the fence, each with the bound that no plan can better. Offcuts from stock are used
 * where they save a sheet; those worth keeping are named.
 * @throws RangeError when `machines` is not a whole number of at least 0
 */
export function cuttingPlan(
  line: Pick<LineResult, "machine" | "panels">,
  { machines }: CuttingQuestion,
): readonly SheetCutting[] {
  if (!Number.isSafeInteger(machines) || machines < 0) throw new RangeError(`machines ${machines}`);
  return cutPanels(
    line.machine,
    line.panels.cuts.map((cut) => ({ cut, count: machines })),
  );
}

/** The same for any number of each panel: a run whose machines differ. */
export function cutPanels(machine: Machine, demands: readonly PanelDemand[]): readonly SheetCutting[] {
  return goodsDemands(machine.shop, demands).map((demand) => cutGoods(machine, demand, demands));
}

/** The problems that `cuttingPlan` solves, for who wants to check its plans. */
export const cuttingProblems = (
  { machine, panels }: { readonly machine: Machine; readonly panels: PanelsResult },
  { machines }: CuttingQuestion,
): readonly { readonly sheetPartId: string; readonly problem: CuttingProblem }[] =>
  goodsDemands(
    machine.shop,
    panels.cuts.map((cut) => ({ cut, count: machines })),
  );

function cutGoods(machine: Machine, demand: GoodsDemand, panels: readonly PanelDemand[]): SheetCutting {
  const found = cutSheets(demand.problem);
  const part = machine.book.tables.parts.find(({ id }) => id === demand.sheetPartId);
  const blank: SheetCutting = {
    sheetPartId: demand.sheetPartId,
    labels: part === undefined ? { en: demand.sheetPartId, zh: "" } : labelsOf(part, part.id),
    pieces: demand.pieces,
    stockIds: [],
    plan: null,
    tooLargeIds: found.found ? [] : idsOf(demand.pieces, found.tooLarge),
    unplacedIds: found.found ? [] : idsOf(demand.pieces, found.unplaced),
    sheets: [],
    settings: [],
    fewestSettings: 0,
    setups: [],
    fewestSetups: 0,
    newSheets: 0,
    fewestNewSheets: 0,
    offcutSheets: 0,
    usedAreaM2: 0,
    sheetAreaM2: 0,
    offcutAreaM2: 0,
    cutCount: 0,
    sawMinutes: 0,
  };
  return found.found ? { ...blank, ...described(machine, demand, found, panels) } : blank;
}

const idsOf = (pieces: readonly CutPieceOf[], places: readonly number[]): readonly string[] =>
  places.flatMap((i) => pieces[i]?.panelIds ?? []);

const squareMetres = (areas: readonly { readonly widthMm: number; readonly heightMm: number }[]): number =>
  areas.reduce((sum, { widthMm, heightMm }) => sum + widthMm * heightMm, 0) / 1e6;

function described(
  { shop }: Machine,
  { pieces, stock, problem }: GoodsDemand,
  { uses, fewestWhole, steps }: Cutting & { readonly found: true },
  panels: readonly PanelDemand[],
): Partial<SheetCutting> {
  const { saw_kerf_mm, offcut_min_mm, fence_setting_min, saw_cut_s } = shop.numbers;
  const laid = uses.flatMap((use) => {
    const row = stock[use.sheet];
    return row === undefined ? [] : [{ use, row, layout: layOut(row, use.part, saw_kerf_mm, offcut_min_mm) }];
  });
  const order = sawOrder(laid.map(({ layout }) => layout.nodes));
  const names = new PanelNames(pieces);
  const sheets = laid.map(({ use, row, layout }, i): SheetCut => {
    const placed = names.name(layout.panels, use.copies);
    return {
      stockId: row.id,
      offcut: row.offcut,
      copies: use.copies,
      widthMm: row.length_mm,
      heightMm: row.width_mm,
      trimMm: row.trim_mm,
      panels: placed,
      offcuts: layout.offcuts,
      cuts: cutsInOrder(layout, order, i, (at) => placed[at]?.panelId ?? ""),
    };
  });
  const setups = setupsOf(order, sheets, sizesOf(panels));
  const settings = settingsOf(laid.map(({ layout }) => layout));
  const cutCount = setups.reduce((sum, setup) => sum + setup.cutCount, 0);
  const sum = (of: (sheet: SheetCut) => number): number =>
    sheets.reduce((total, sheet) => total + sheet.copies * of(sheet), 0);
  const newSheets = wholeSheets(uses, problem, WHOLE_SHEET);
  return {
    stockIds: stock.map(({ id }) => id),
    plan: planOf(uses, problem, fewestWhole, settings, steps),
    sheets,
    settings,
    fewestSettings: fewestSettings(pieces, problem),
    setups,
    fewestSetups: order.fewest,
    newSheets,
    fewestNewSheets: Math.min(fewestWhole, newSheets),
    offcutSheets: sum((sheet) => (sheet.offcut ? 1 : 0)),
    usedAreaM2: sum((sheet) => squareMetres(sheet.panels)),
    sheetAreaM2: sum((sheet) => squareMetres([sheet])),
    offcutAreaM2: sum((sheet) => squareMetres(sheet.offcuts)),
    cutCount,
    sawMinutes: setups.length * fence_setting_min + (cutCount * saw_cut_s) / 60,
  };
}

function planOf(
  uses: readonly PatternUse[],
  problem: CuttingProblem,
  fewestWhole: number,
  settings: readonly FenceSetting[],
  steps: number,
): CuttingPlan {
  return {
    found: true,
    plans: uses.flatMap(({ sheet, part, copies }) => new Array(copies).fill({ sheet, part })),
    cost: uses.reduce((sum, { sheet, copies }) => sum + copies * (problem.sheets[sheet]?.cost ?? 0), 0),
    lowerBound: fewestWhole * WHOLE_SHEET,
    settings,
    steps,
  };
}

/** Different distances of the cuts that are no trims; one that is used for rips too stands among the rips. */
function settingsOf(layouts: readonly SheetLayout[]): readonly FenceSetting[] {
  const found = new Map<number, FenceSetting>();
  for (const { kind, fenceMm } of layouts.flatMap(({ nodes }) => nodes)) {
    if (kind === "trim") continue;
    const key = fenceKey(fenceMm);
    if (kind === "rip" || !found.has(key)) found.set(key, { cut: kind, atMm: fenceMm });
  }
  const rank = ({ cut }: FenceSetting): number => (cut === "rip" ? 0 : 1);
  return [...found.values()].sort((a, b) => rank(a) - rank(b) || a.atMm - b.atMm);
}

/** Different lengths of the pieces; one that is as long as a trimmed sheet needs no setting of its own. */
function fewestSettings(pieces: readonly CutPieceOf[], { sheets }: CuttingProblem): number {
  const whole = new Set(
    sheets.flatMap(({ widthMm, heightMm, trim }) => [
      fenceKey(widthMm - trim.leftMm - trim.rightMm),
      fenceKey(heightMm - trim.bottomMm - trim.topMm),
    ]),
  );
  const lengths = pieces.flatMap(({ widthMm, heightMm }) => [fenceKey(widthMm), fenceKey(heightMm)]);
  return new Set(lengths.filter((length) => !whole.has(length))).size;
}

function cutsInOrder(
  { nodes }: SheetLayout,
  { setups }: SawOrder,
  sheet: number,
  idOf: (panel: number) => string,
): readonly SawCut[] {
  const cuts: SawCut[] = [];
  setups.forEach(({ cuts: own }, setup) => {
    for (const at of own[sheet] ?? []) {
      const node = nodes[at];
      if (node === undefined) continue;
      cuts.push({
        number: cuts.length + 1,
        kind: node.kind,
        fenceMm: node.fenceMm,
        setup: setup + 1,
        line: node.line,
        doneIds: node.done.map(idOf),
      });
    }
  });
  return cuts;
}

/** Names of the book's settings by the size that they are cut to. */
function sizesOf(panels: readonly PanelDemand[]): ReadonlyMap<number, readonly string[]> {
  const byKey = new Map<number, string[]>();
  const add = (mm: number, name: string | null): void => {
    if (name === null) return;
    const known = byKey.get(fenceKey(mm)) ?? [];
    if (!known.includes(name)) byKey.set(fenceKey(mm), [...known, name]);
  };
  for (const { cut } of panels) {
    add(cut.widthMm, cut.settingX);
    add(cut.heightMm, cut.settingY);
  }
  return byKey;
}

function setupsOf(
  { setups }: SawOrder,
  sheets: readonly SheetCut[],
  names: ReadonlyMap<number, readonly string[]>,
): readonly FenceSetup[] {
  return setups.map(({ fenceMm }, i): FenceSetup => {
    const number = i + 1;
    const work = sheets.flatMap(({ copies, cuts }, sheet) => {
      const own = cuts.filter(({ setup }) => setup === number).map((cut) => cut.number);
      return own.length === 0 ? [] : [{ sheet, copies, cuts: own }];
    });
    const done = sheets.flatMap(({ cuts }) =>
      cuts.flatMap(({ setup, doneIds }) => (setup === number ? doneIds : [])),
    );
    return {
      number,
      fenceMm,
      settings: names.get(fenceKey(fenceMm)) ?? [],
      work,
      cutCount: work.reduce((sum, { copies, cuts }) => sum + copies * cuts.length, 0),
      doneIds: [...new Set(done)],
    };
  });
}
