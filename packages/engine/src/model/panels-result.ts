import type { CuttingPlan, FenceSetting } from "@pinwright/kernel";
import type { Languages } from "./machine.ts";

/** The size that a panel is cut to, from the thickness as measured. */
export interface PanelCut {
  readonly panelId: string;
  readonly labels: Languages;
  /** Sheet goods; null: the panel is not cut from a sheet of the shop. */
  readonly sheetPartId: string | null;
  readonly drawnWidthMm: number;
  readonly drawnHeightMm: number;
  /** Blank before its outline and cutouts are routed. Quantised to 0.1 mm. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly nominalThicknessMm: number;
  /** Of the stock at hand; nominal when nobody measured. */
  readonly thicknessMm: number;
  readonly grain: "x" | "y" | "none";
  readonly settingX: string | null;
  readonly settingY: string | null;
  readonly minusXMm: number;
  readonly plusXMm: number;
  readonly minusYMm: number;
  readonly plusYMm: number;
}

/** What one term adds to a fit. */
export interface FitTermValue {
  readonly term: string;
  readonly panelId: string | null;
  readonly dimension: "width" | "height" | "thickness" | "other";
  readonly times: number;
  /** As it will be cut or was measured. */
  readonly valueMm: number;
  readonly minusMm: number;
  readonly plusMm: number;
}

/** A gap or size of the box, from the panels that add up to it. */
export interface FitResult {
  readonly fitId: string;
  readonly labels: Languages;
  readonly terms: readonly FitTermValue[];
  readonly nominalMm: number;
  /** Everything at its worst. */
  readonly worstMinMm: number;
  readonly worstMaxMm: number;
  /** Root of the sum of squares of the tolerances, about the middle. */
  readonly rssMinMm: number;
  readonly rssMaxMm: number;
  /** What the book asks for. */
  readonly minMm: number | null;
  readonly maxMm: number | null;
}

/** A slot or groove that a panel stands in: its width follows the thickness of that panel as measured. */
export interface SlotCut {
  readonly cutoutId: string;
  readonly panelId: string;
  readonly takesId: string;
  /** Which of its own extents is its width. */
  readonly across: "width" | "height";
  readonly drawnMm: number;
  /** As it is to be cut, play included. Quantised to 0.1 mm. */
  readonly widthMm: number;
}

export interface PanelsResult {
  /** Wooden panels and others with sheet goods, in code-point order of their ids. */
  readonly cuts: readonly PanelCut[];
  readonly fits: readonly FitResult[];
  /** In code-point order of the cutouts' ids. */
  readonly slots: readonly SlotCut[];
}

/** Sheet goods, from which some panels are cut. */
export interface SheetCutting {
  readonly sheetPartId: string;
  readonly labels: Languages;
  /** The panels, in the order of the plan's pieces; the same size may be cut for several machines. */
  readonly pieces: readonly CutPieceOf[];
  /** Stock sheets of the shop in the order of the plan's sheets: offcuts first. */
  readonly stockIds: readonly string[];
  /** Null: some panel is larger than any sheet, or the sheets of the shop are too few. */
  readonly plan: CuttingPlan | null;
  /** Panels that are larger than any sheet. */
  readonly tooLargeIds: readonly string[];
  /** Panels for which no sheet is left; empty unless the shop has a limited number of sheets. */
  readonly unplacedIds: readonly string[];
  readonly sheets: readonly SheetCut[];
  /** The different settings of the fence that the panels need, trims left out; one distance is one setting. */
  readonly settings: readonly FenceSetting[];
  /** Different fence settings that no plan can do without in which every size of a panel is cut against the fence. */
  readonly fewestSettings: number;
  /** In the order of cutting: how the fence is set, trims included, and what is cut at each. */
  readonly setups: readonly FenceSetup[];
  /** The fence has to be set at least so often for these patterns. */
  readonly fewestSetups: number;
  /** Names of the book's settings that are set more than once, so that panels that mate are not cut at one setting. */
  readonly splitSettings: readonly string[];
  /** Whole sheets, and how many no plan can do without. */
  readonly newSheets: number;
  readonly fewestNewSheets: number;
  /** Of the whole sheets, those taken beyond the fewest found, so that panels that mate are cut at one setting. */
  readonly sheetsForMates: number;
  /** Offcuts from stock that are used. */
  readonly offcutSheets: number;
  readonly usedAreaM2: number;
  readonly sheetAreaM2: number;
  /** Worth keeping, of all sheets together. */
  readonly offcutAreaM2: number;
  readonly cutCount: number;
  /** Work at the saw: setting the fence and cutting. */
  readonly sawMinutes: number;
}

/** Panels of one size. They are interchangeable until they are routed. */
export interface CutPieceOf {
  readonly panelIds: readonly string[];
  /** Along the grain, which is along the length of the sheet. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly mayTurn: boolean;
  readonly count: number;
}

/**
 * One rectangle of a plan, in the sheet's frame: origin at its lower left corner, x along its length and its grain.
 * Kerfs lie between.
 */
export interface CutArea {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}
export interface PlacedPanel extends CutArea {
  /** What it becomes; of several panels of its size, the next that is wanted. */
  readonly panelId: string;
  /** Every panel of its size. */
  readonly panelIds: readonly string[];
  /** Its number among the panels of its size within the run, from 1; of alike sheets, on the first. */
  readonly copy: number;
  readonly turned: boolean;
}

/** One cut of the saw in its order. */
export interface SawCut {
  /** Within its sheet, from 1, in the order of cutting. */
  readonly number: number;
  readonly kind: "trim" | "rip" | "cross";
  /** The fence stands this far from the blade. */
  readonly fenceMm: number;
  /** Number of the setting of the fence at which it is cut. */
  readonly setup: number;
  /** Line of the blade in the sheet's frame, in the middle of the kerf. */
  readonly line: readonly [number, number, number, number];
  /** Panels that are done with this cut, and their places among the sheet's panels. */
  readonly doneIds: readonly string[];
  readonly doneAt: readonly number[];
}

/** The fence set once, and everything that is cut before it is moved again. */
export interface FenceSetup {
  readonly number: number;
  readonly fenceMm: number;
  /** Names of the book's settings of that size: sizes that mate. */
  readonly settings: readonly string[];
  readonly work: readonly {
    /** Place of the sheet among `sheets`. */
    readonly sheet: number;
    readonly copies: number;
    /** Numbers of its cuts. */
    readonly cuts: readonly number[];
  }[];
  readonly cutCount: number;
  /** Panels that are done at this setting. */
  readonly doneIds: readonly string[];
}

/** How one or several alike sheets are cut. */
export interface SheetCut {
  readonly stockId: string;
  readonly offcut: boolean;
  /** As many sheets as are cut in just this way. */
  readonly copies: number;
  /** Along the grain. */
  readonly widthMm: number;
  readonly heightMm: number;
  readonly trimMm: number;
  readonly panels: readonly PlacedPanel[];
  /** Worth keeping: they go back into stock. */
  readonly offcuts: readonly CutArea[];
  readonly cuts: readonly SawCut[];
}

/** One batch on the paint rack. Hours are of the clock, 24 a day, from the beginning of the first working day. */
export interface PaintBatch {
  readonly number: number;
  readonly cabinets: number;
  readonly coats: readonly {
    readonly coatId: string;
    readonly startHour: number;
    readonly workEndHour: number;
    /** Dry enough for the next coat, or to be taken off the rack. */
    readonly dryHour: number;
  }[];
}

/** How the cabinets of a run go over the paint rack. */
export interface PaintPlan {
  readonly batches: readonly PaintBatch[];
  /** Cabinets in a full batch. */
  readonly batchSize: number;
  readonly rackCabinets: number;
  /** Hours worked in a day, from its beginning. */
  readonly hoursDay: number;
  /** The last cabinet leaves the rack. */
  readonly endHour: number;
  /** No order of these coats ends earlier: by work, and by the places of the rack. */
  readonly earliestEndHour: number;
}
