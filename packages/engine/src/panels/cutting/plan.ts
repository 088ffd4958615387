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
  const names = sizesOf(demand, panels);
  const orderFor = (uses: readonly PatternUse[]): SawOrder => roughOrder(machine, demand, uses);
  const found = cutSheets(
    demand.problem,
    (uses) => fenceWork(orderFor(uses), names),
    (uses) => orderFor(uses).setups.map(({ fenceMm }) => fenceKey(fenceMm)),
  );
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
    splitSettings: [],
    newSheets: 0,
    fewestNewSheets: 0,
    sheetsForMates: 0,
    offcutSheets: 0,
    usedAreaM2: 0,
    sheetAreaM2: 0,
    offcutAreaM2: 0,
    cutCount: 0,
    sawMinutes: 0,
  };
  return found.found ? { ...blank, ...described(machine, demand, found, names) } : blank;
}

const idsOf = (pieces: readonly CutPieceOf[], places: readonly number[]): readonly string[] =>
  places.flatMap((i) => pieces[i]?.panelIds ?? []);

const squareMetres = (areas: readonly { readonly widthMm: number; readonly heightMm: number }[]): number =>
  areas.reduce((sum, { widthMm, heightMm }) => sum + widthMm * heightMm, 0) / 1e6;

function described(
  { shop }: Machine,
  { pieces, stock, problem }: GoodsDemand,
  { uses, fewestWhole, forMates = 0, steps }: Cutting & { readonly found: true },
  settingNames: ReadonlyMap<number, readonly string[]>,
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
  const setups = setupsOf(order, sheets, settingNames);
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
    splitSettings: splitNames(order, settingNames),
    newSheets,
    fewestNewSheets: Math.min(fewestWhole, newSheets),
    sheetsForMates: forMates,
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
        doneAt: node.done,
      });
    }
  });
  return cuts;
}

/** Orders looked at while plans are compared. */
const COMPARE_STEPS = 300;

/** An order of the fence that is found quickly. */
function roughOrder({ shop }: Machine, { stock }: GoodsDemand, uses: readonly PatternUse[]): SawOrder {
  const { saw_kerf_mm, offcut_min_mm } = shop.numbers;
  const nodes = uses.flatMap(({ sheet, part }) => {
    const row = stock[sheet];
    return row === undefined ? [] : [layOut(row, part, saw_kerf_mm, offcut_min_mm).nodes];
  });
  return sawOrder(nodes, COMPARE_STEPS);
}

/** How many settings that mate are set more than once, and how often the fence is set in all. */
const fenceWork = (order: SawOrder, names: ReadonlyMap<number, readonly string[]>): readonly number[] => [
  splitNames(order, names).length,
  order.setups.length,
];

/** Names of settings at which the fence is set more than once. */
function splitNames({ setups }: SawOrder, names: ReadonlyMap<number, readonly string[]>): readonly string[] {
  const times = new Map<number, number>();
  for (const { fenceMm } of setups) times.set(fenceKey(fenceMm), (times.get(fenceKey(fenceMm)) ?? 0) + 1);
  return [...names].flatMap(([key, own]) => ((times.get(key) ?? 0) > 1 ? own : []));
}

/** Names of the book's settings of several panels of these goods, by the size that they are cut to. */
function sizesOf(
  { sheetPartId }: GoodsDemand,
  panels: readonly PanelDemand[],
): ReadonlyMap<number, readonly string[]> {
  const byName = new Map<string, { readonly key: number; readonly ids: Set<string> }>();
  const add = (mm: number, name: string | null, panelId: string): void => {
    if (name === null) return;
    const known = byName.get(name) ?? { key: fenceKey(mm), ids: new Set<string>() };
    known.ids.add(panelId);
    byName.set(name, known);
  };
  for (const { cut } of panels) {
    if (cut.sheetPartId !== sheetPartId) continue;
    add(cut.widthMm, cut.settingX, cut.panelId);
    add(cut.heightMm, cut.settingY, cut.panelId);
  }
  const byKey = new Map<number, string[]>();
  for (const [name, { key, ids }] of byName) {
    if (ids.size > 1) byKey.set(key, [...(byKey.get(key) ?? []), name]);
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
