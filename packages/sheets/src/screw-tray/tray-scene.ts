import type { LineResult } from "@pinwright/engine";
import { type BoxMm, boxOf } from "@pinwright/kernel";
import { edgeMarks, edgeWidthMm } from "../assembly/edge.ts";
import { panelMarks } from "../assembly/ground.ts";
import { lowerEdge, type PanelView, panelView } from "../assembly/panel-view.ts";
import type { StepSide } from "../assembly/step-facts.ts";
import { stepBadge, stepTitle } from "../assembly/step-texts.ts";
import { symbolMark, symbolOf } from "../assembly/symbol-mark.ts";
import { bodyHash } from "../compose/body-hash.ts";
import { at, box, group, LINE, rect, stroke, TEXT, write } from "../compose/draw.ts";
import type { LabelSign } from "../compose/label.ts";
import { type LabelRequest, placeLabels } from "../compose/label-placer.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { ringObstacles } from "../compose/obstacle.ts";
import type { TurnedBox } from "../compose/plane.ts";
import { textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import type { SheetOptions } from "../options.ts";

/** A hole of the tray is wider than the thread by this, so that the screw stands and comes out by itself. */
export const CLEARANCE_MM = 0.5;
/** Board round the outermost holes, and bands for the title and the arrow: common practice, no source. */
const ROUND_MM = 24;
const HEAD_MM = 16;
const FOOT_MM = 10;
const STEP_MM = 5;

/** A screw tray, true to scale. */
export interface TrayScene {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  readonly hash: string;
  /** Lower left corner of the panel as it lies. */
  readonly origin: PagePoint;
  /** Lower left corner of the tray, from that of the panel. */
  readonly corner: { readonly xMm: number; readonly yMm: number };
  readonly trayMm: { readonly widthMm: number; readonly heightMm: number };
}

/** The part of the panel that the tray lies over, on whole steps; it may reach beyond the panel. */
function trayRegion(whole: PanelView, { fasteners }: StepSide): BoxMm | null {
  const own = boxOf(fasteners.map((f) => whole.lying(f.place)));
  if (own === null) return null;
  const down = (mm: number): number => Math.floor(mm / STEP_MM) * STEP_MM;
  const up = (mm: number): number => Math.ceil(mm / STEP_MM) * STEP_MM;
  return {
    minXMm: down(own.minXMm - ROUND_MM),
    maxXMm: up(own.maxXMm + ROUND_MM),
    minYMm: down(own.minYMm - ROUND_MM - FOOT_MM),
    maxYMm: up(own.maxYMm + ROUND_MM + HEAD_MM),
  };
}

/** Widest part of a fastener over the tray: its head, or its washer. */
function headMm(fastener: StepSide["fasteners"][number]): number {
  const { type, washer } = fastener;
  return Math.max(
    type.head_diameter_mm ?? type.diameter_mm,
    washer?.head_diameter_mm ?? 0,
    type.diameter_mm + CLEARANCE_MM,
  );
}

/** Draws the tray of a step's side. Null: there is no such panel, or nothing to put in. */
export function trayScene(line: LineResult, now: StepSide, options: SheetOptions): TrayScene | null {
  const whole = panelView(line, now.panelId, now.side, 1);
  const region = whole === null ? null : trayRegion(whole, now);
  const view = region === null ? null : panelView(line, now.panelId, now.side, 1, region);
  if (region === null || view === null) return null;
  const symbolMm = Math.max(5, line.machine.shop.numbers.symbol_mm);
  const edge = lowerEdge(line, now.panelId);
  const { language } = options;
  const foot = at(view.widthMm / 2, view.heightMm - 7);
  const head = titleMarks(now, options, view.widthMm);
  const fixed: TurnedBox[] = [
    { middle: foot, widthMm: edgeWidthMm(edge, language), heightMm: 7, turnDeg: 0 },
    head.box,
  ];
  const holes: Mark[] = [];
  const requests: LabelRequest[] = [];
  for (const fastener of now.fasteners) {
    const middle = view.toPage(fastener.place);
    const symbol = symbolOf(line, fastener.type.id);
    const head = headMm(fastener);
    holes.push(
      {
        kind: "circle",
        at: middle,
        radiusMm: (fastener.type.diameter_mm + CLEARANCE_MM) / 2,
        stroke: stroke("ink", LINE.strong),
        fill: null,
        layer: "DRILL_TRAY",
      },
      {
        kind: "circle",
        at: middle,
        radiusMm: head / 2,
        stroke: stroke("faint", LINE.hair),
        fill: null,
        layer: "BORDER",
      },
    );
    fixed.push({ middle, widthMm: head, heightMm: head, turnDeg: 0 });
    const sign: LabelSign = {
      sizeMm: symbolMm,
      marks: (place) => [symbolMark(symbol, place, symbolMm, "ENGRAVE")],
    };
    requests.push(signRequest(fastener.id, symbol.letter, middle, head / 2, sign));
  }
  const bounds = box(2, 2, view.widthMm - 4, view.heightMm - 4);
  const outlines = now.items.map((item) => item.footprint.map(view.toPage));
  const labels = placeLabels(requests, outlines.flatMap(ringObstacles), fixed, bounds);
  const marks: Mark[] = [
    group(panelMarks(line, view), 0, 0, box(0, 0, view.widthMm, view.heightMm)),
    rect(box(0, 0, view.widthMm, view.heightMm), stroke("ink", LINE.bold), null, "CUT"),
    group(
      outlines.map((points) => ({
        kind: "polygon",
        points,
        stroke: stroke("faint", LINE.thin),
        fill: null,
        layer: "ENGRAVE",
      })),
      0,
      0,
      box(0, 0, view.widthMm, view.heightMm),
    ),
    ...holes,
    ...labels.marks,
    ...head.marks,
    group(edgeMarks(edge, language, "ENGRAVE"), foot.xMm, foot.yMm),
  ];
  const { widthMm, heightMm } = view;
  return {
    widthMm,
    heightMm,
    marks,
    hash: bodyHash([{ widthMm, heightMm, marks }]),
    origin: at(-region.minXMm, region.maxYMm),
    corner: { xMm: region.minXMm, yMm: region.minYMm },
    trayMm: { widthMm, heightMm },
  };
}

function signRequest(
  id: string,
  letter: string,
  target: PagePoint,
  radiusMm: number,
  sign: LabelSign,
): LabelRequest {
  return {
    id,
    lines: [{ text: letter, heightMm: TEXT.large, weight: "bold" }],
    sign,
    target,
    layer: "ENGRAVE",
    places: ({ widthMm, heightMm }) => {
      const x = radiusMm + 1 + widthMm / 2;
      const y = radiusMm + 0.6 + heightMm / 2;
      const spot = (dx: number, dy: number, cost: number) => ({
        middle: at(target.xMm + dx, target.yMm + dy),
        turnDeg: 0,
        cost,
      });
      return [spot(x, 0, 0), spot(-x, 0, 0.2), spot(0, -y, 0.4), spot(0, y, 0.5)];
    },
  };
}

/** Number and title of the step along the upper edge, as much as fits into one line of each. */
function titleMarks(
  now: StepSide,
  options: SheetOptions,
  widthMm: number,
): { readonly marks: readonly Mark[]; readonly box: TurnedBox } {
  const badge = stepBadge(now.step);
  const badgeMm = textWidthMm(badge, TEXT.huge, "bold");
  const left = 5 + badgeMm + 3;
  const lines = stepTitle(now.step, options.language)
    .split("\n")
    .flatMap((t) => wrap(t, widthMm - left - 5, TEXT.normal)[0] ?? []);
  return {
    marks: [
      write(badge, at(5, 12), { heightMm: TEXT.huge, weight: "bold", layer: "ENGRAVE" }),
      ...lines.map((t, i) => write(t, at(left, 7.5 + i * 5), { layer: "ENGRAVE" })),
    ],
    box: { middle: at(widthMm / 2, 8), widthMm: widthMm - 4, heightMm: 12, turnDeg: 0 },
  };
}
