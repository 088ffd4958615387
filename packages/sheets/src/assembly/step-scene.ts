import type { FastenerItem, Item, LineResult } from "@pinwright/engine";
import { centroid } from "@pinwright/kernel";
import type { SheetLanguage } from "@pinwright/words";
import { bodyHash } from "../compose/body-hash.ts";
import { at, box, group, LINE, stroke, TEXT } from "../compose/draw.ts";
import type { LabelPlace } from "../compose/label.ts";
import { type Balloon, type LabelRequest, placeLabels } from "../compose/label-placer.ts";
import type { Box, Mark, PagePoint } from "../compose/mark.ts";
import { ringObstacles } from "../compose/obstacle.ts";
import type { TurnedBox } from "../compose/plane.ts";
import { label } from "../compose/say.ts";
import { type Cuttable, cuttable } from "../drawing/window.ts";
import { edgeMarks, edgeWidthMm } from "./edge.ts";
import { groundMarks } from "./ground.ts";
import type { LowerEdge, PanelView } from "./panel-view.ts";
import type { StepSide } from "./step-facts.ts";
import { symbolMark, symbolOf } from "./symbol-mark.ts";

/** A drawing with its origin at its upper left corner: what rolls, tiles, overviews and cards are cut from. */
export interface Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  /** The marks as windows look at them. */
  readonly cuttable: readonly Cuttable[];
  /** Body hash of the marks. */
  readonly hash: string;
  /** Labels that found no room. */
  readonly balloons: readonly Balloon[];
  /** White round the panel. */
  readonly marginMm: number;
  /** Holes of the step. */
  readonly holes: readonly PagePoint[];
  /** How many symbols stand beside their holes. */
  readonly aside: number;
  readonly scale: number;
}

/** What stands on a panel side before, during and after a step. */
export interface SideState {
  readonly now: StepSide;
  readonly earlier: { readonly fasteners: readonly FastenerItem[]; readonly items: readonly Item[] };
  /** Holes that stay empty. */
  readonly later: readonly FastenerItem[];
}

export interface SceneStyle {
  readonly language: SheetLanguage;
  readonly symbolMm: number;
  /** White round the drawing for labels that find no room on it. */
  readonly marginMm: number;
  /** Numbers in the order of driving. */
  readonly numbered: boolean;
  /** Keys that stand for the items' types where names would hide the holes; null: names. */
  readonly keys: ReadonlyMap<string, string> | null;
  /** Lettering of the letters beside the symbols. */
  readonly letterMm: number;
  /** What lies at the lower edge. */
  readonly edge: LowerEdge;
}

/** In a smaller view nobody tells the holes that stay empty from their neighbours. */
export const LATER_SCALE = 0.24;
/** A dot that shows where a hole really is. */
const DOT_MM = 0.6;
/** Height of the arrow at the lower edge. */
const EDGE_MM = 7;
/** White between two symbols, below which both stand away from their holes. */
const APART_MM = 0.4;
/** White at either side of a symbol's label: two that touch are read as one. */
const CLEAR_MM = 0.8;

interface Sign {
  readonly item: FastenerItem;
  readonly number: number;
  readonly hole: PagePoint;
}

/** Whether a place of the paper lies on the drawing. */
const isOn = (view: PanelView, p: PagePoint): boolean =>
  p.xMm >= -1e-6 && p.yMm >= -1e-6 && p.xMm <= view.widthMm + 1e-6 && p.yMm <= view.heightMm + 1e-6;

function outline(view: PanelView, item: Item, dark: boolean): Mark {
  return {
    kind: "polygon",
    points: item.footprint.map(view.toPage),
    stroke: dark ? stroke("ink", LINE.strong) : stroke("faint", LINE.thin),
    fill: null,
    // Of a tile on which only such things are, nothing is printed.
    layer: dark ? "BRANCHES" : "BORDER",
  };
}

function hole(view: PanelView, item: FastenerItem, filled: boolean): Mark {
  const diameterMm = item.type.head_diameter_mm ?? item.type.diameter_mm;
  return {
    kind: "circle",
    at: view.toPage(item.place),
    radiusMm: filled ? Math.max(0.7, (diameterMm / 2) * view.scale * 0.8) : Math.max(0.45, view.scale),
    stroke: stroke("faint", LINE.hair),
    fill: filled ? "tint" : null,
    layer: "BORDER",
  };
}

/** Holes whose symbols would run into each other: both stand beside their holes. */
function crowded(signs: readonly Sign[], symbolMm: number): ReadonlySet<string> {
  const close = new Set<string>();
  signs.forEach((a, i) => {
    for (const b of signs.slice(i + 1)) {
      const apartMm = Math.max(Math.abs(a.hole.xMm - b.hole.xMm), Math.abs(a.hole.yMm - b.hole.yMm));
      if (apartMm >= symbolMm + APART_MM) continue;
      close.add(a.item.id);
      close.add(b.item.id);
    }
  });
  return close;
}

/** How many of a step's symbols would have to stand beside their holes in a view, of how many that it shows. */
export function crowding(
  view: PanelView,
  state: SideState,
  symbolMm: number,
): { readonly aside: number; readonly shown: number } {
  const signs = signsOf(view, state);
  return { aside: crowded(signs, symbolMm).size, shown: signs.length };
}

function signsOf(view: PanelView, { now }: SideState): readonly Sign[] {
  const order = now.step.kind === "recheck" ? now.step.recheckIds : now.step.fastenerIds;
  const numbers = new Map(order.map((id, i) => [id, i + 1]));
  return now.fasteners
    .map((item): Sign => ({ item, number: numbers.get(item.id) ?? 0, hole: view.toPage(item.place) }))
    .filter((sign) => isOn(view, sign.hole));
}

const square = (middle: PagePoint, sizeMm: number): TurnedBox => ({
  middle,
  widthMm: sizeMm,
  heightMm: sizeMm,
  turnDeg: 0,
});

/** Places round a symbol that stands on its hole: right and left first. */
function roundPlaces(
  hole: PagePoint,
  sizeMm: number,
): (block: { readonly widthMm: number; readonly heightMm: number }) => readonly LabelPlace[] {
  return ({ widthMm, heightMm }) => {
    const x = sizeMm / 2 + widthMm / 2;
    const y = sizeMm / 2 + 0.4 + heightMm / 2;
    const place = (dx: number, dy: number, cost: number): LabelPlace => ({
      middle: at(hole.xMm + dx, hole.yMm + dy),
      turnDeg: 0,
      cost,
    });
    return [
      place(x, 0, 0),
      place(-x, 0, 0.2),
      place(0, -y, 0.4),
      place(0, y, 0.5),
      place(x, -y * 0.7, 0.7),
      place(-x, -y * 0.7, 0.8),
      place(x, y * 0.7, 0.8),
      place(-x, y * 0.7, 0.9),
    ];
  };
}

function signRequest(line: LineResult, sign: Sign, style: SceneStyle, away: boolean): LabelRequest {
  const symbol = symbolOf(line, sign.item.type.id);
  const text = style.numbered ? `${symbol.letter} ${sign.number}` : symbol.letter;
  const lines = [{ text, heightMm: style.letterMm, weight: "bold" as const }];
  const base = { id: sign.item.id, lines, target: sign.hole, layer: "TEXT" as const, clearMm: CLEAR_MM };
  if (!away) return { ...base, places: roundPlaces(sign.hole, style.symbolMm) };
  return {
    ...base,
    sign: {
      sizeMm: style.symbolMm,
      marks: (middle) => [symbolMark(symbol, middle, style.symbolMm, "HOLES")],
    },
    places: () => [],
  };
}

function nameRequests(view: PanelView, items: readonly Item[], style: SceneStyle): LabelRequest[] {
  return items.flatMap((item) => {
    const middle = view.toPage(centroid(item.footprint) ?? item.place);
    if (!isOn(view, middle)) return [];
    const key = style.keys === null ? "" : style.keys.get(item.type.id);
    if (key === undefined) return [];
    const name = label(style.language, item.labels, item.id, "\n");
    const lines =
      key === ""
        ? name.split("\n").map((text) => ({ text, heightMm: TEXT.small }))
        : [{ text: `(${key})`, heightMm: TEXT.normal }];
    return [
      {
        id: item.id,
        lines,
        target: middle,
        layer: "TEXT" as const,
        places: () => [{ middle, turnDeg: 0, cost: 2 }],
      },
    ];
  });
}

/**
 * Draws a step on a panel side: what it puts in dark, each hole with its symbol, letter and number; what is there
 * already and holes for later light. Symbols and labels never overlap: where holes are too close, the symbols stand
 * beside them with leaders, and the hole itself is a dot.
 */
export function drawStep(line: LineResult, view: PanelView, state: SideState, style: SceneStyle): Drawing {
  const signs = signsOf(view, state);
  const away = crowded(signs, style.symbolMm);
  const standing = signs.filter((s) => !away.has(s.item.id));
  const leading = signs.filter((s) => away.has(s.item.id));
  const { marginMm } = style;
  const bounds: Box = box(-marginMm, -marginMm, view.widthMm + 2 * marginMm, view.heightMm + 2 * marginMm);
  const requests: LabelRequest[] = [
    ...standing.map((s) => signRequest(line, s, style, false)),
    ...leading.map((s) => signRequest(line, s, style, true)),
    ...nameRequests(view, state.now.items, style),
  ];
  const edge = at(view.widthMm / 2, view.heightMm + marginMm - EDGE_MM / 2);
  const fixed = [
    { middle: edge, widthMm: edgeWidthMm(style.edge, style.language), heightMm: EDGE_MM, turnDeg: 0 },
    ...standing.map((s) => square(s.hole, style.symbolMm)),
    ...leading.map((s) => square(s.hole, 2 * DOT_MM)),
  ];
  const labels = placeLabels(
    requests,
    state.now.items.flatMap((item) => ringObstacles(item.footprint.map(view.toPage))),
    fixed,
    bounds,
  );
  const onView = (item: Item): boolean => isOn(view, view.toPage(item.place));
  const { earlier } = state;
  const inner: Mark[] = [
    ...groundMarks(line, view),
    ...earlier.items.map((item) => outline(view, item, false)),
    ...(view.scale < LATER_SCALE ? [] : state.later.filter(onView).map((item) => hole(view, item, false))),
    ...earlier.fasteners.filter(onView).map((item) => hole(view, item, true)),
    ...state.now.items.map((item) => outline(view, item, true)),
  ];
  const signMarks: Mark[] = [
    ...standing.map((s) => symbolMark(symbolOf(line, s.item.type.id), s.hole, style.symbolMm, "HOLES")),
    ...leading.map(
      (s): Mark => ({
        kind: "circle",
        at: s.hole,
        radiusMm: DOT_MM,
        stroke: null,
        fill: "ink",
        layer: "HOLES",
      }),
    ),
    ...labels.marks,
    group(edgeMarks(style.edge, style.language), edge.xMm, edge.yMm),
  ];
  // What stands over the edge of a whole panel is shown; a part is cut off where it ends.
  const overMm = view.isWhole ? marginMm : 0.3;
  const window = box(-overMm, -overMm, view.widthMm + 2 * overMm, view.heightMm + 2 * overMm);
  const marks = [group([group(inner, 0, 0, window), ...signMarks], marginMm, marginMm)];
  const widthMm = view.widthMm + 2 * marginMm;
  const heightMm = view.heightMm + 2 * marginMm;
  return {
    widthMm,
    heightMm,
    marks,
    cuttable: cuttable(marks),
    hash: bodyHash([{ widthMm, heightMm, marks }]),
    balloons: labels.balloons,
    marginMm,
    holes: signs.map((s) => at(s.hole.xMm + marginMm, s.hole.yMm + marginMm)),
    aside: leading.length,
    scale: view.scale,
  };
}
