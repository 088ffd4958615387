import type { LineResult, PanelPoint, Side } from "@pinwright/engine";
import { edgeMarks } from "../assembly/edge.ts";
import { groundMarks } from "../assembly/ground.ts";
import { fittingScale, lowerEdge, type PanelView, panelView, scaleText } from "../assembly/panel-view.ts";
import { panelSideName } from "../assembly/step-texts.ts";
import { at, box, group, LINE, polyline, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { LabelPlace } from "../compose/label.ts";
import { placeLabels } from "../compose/label-placer.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { type Obstacle, ringObstacles } from "../compose/obstacle.ts";
import { anchored, figure, tagged } from "../compose/tag.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import type { BookContext } from "./context.ts";

/** Something on a map: a number at its place, or a name with a line that leads there. */
export interface MapSpot {
  readonly id: string;
  readonly text: string;
  readonly at: PanelPoint;
  /** Drawn when it is large enough to be known by its shape. */
  readonly ring: readonly PanelPoint[];
  readonly strong: boolean;
}

export interface MapRequest {
  readonly panelId: string;
  readonly side: Side;
  readonly title: string;
  readonly anchor: string;
  readonly spots: readonly MapSpot[];
  readonly mostMm: number;
}

/** White round the drawing for the names. */
const MARGIN_MM = 4;
/** Room at the sides that names may take. */
const EDGE_MM = 8;
const DOT_MM = 0.6;
/** Outlines smaller than this on paper are dots. */
const LEAST_RING_MM = 3.5;

/** Whether the owner sees an underside with the player's edge at the top: the playfield is raised by its front edge. */
function isRaised(line: LineResult, panelId: string): boolean {
  const { poses, pose_places: places } = line.machine.book.tables;
  const usual = poses.find((pose) => pose.usual === "yes") ?? poses[0];
  if (line.machine.panels.get(panelId)?.purpose !== "playfield") return false;
  return places.some((p) => {
    const play = places.find((q) => q.pose === usual?.id && q.panel === panelId);
    return (
      p.panel === panelId &&
      p.pose !== usual?.id &&
      play !== undefined &&
      p.rx_deg < play.rx_deg - 5 &&
      p.ry_deg === 0
    );
  });
}

/** A view of a panel side as its owner sees it. */
function ownersView(line: LineResult, panelId: string, side: Side, scale: number): PanelView | null {
  const view = panelView(line, panelId, side, scale);
  if (view === null || side === "top" || !isRaised(line, panelId)) return view;
  return {
    ...view,
    toPage: (p) => {
      const own = view.toPage(p);
      return at(view.widthMm - own.xMm, view.heightMm - own.yMm);
    },
  };
}

function viewWords({ line, words }: BookContext, { panelId, side }: MapRequest): string {
  const panel = line.machine.panels.get(panelId);
  if (side === "top") return words((w) => w.where.front);
  if (panel?.purpose !== "playfield") return words((w) => w.where.behind);
  return isRaised(line, panelId) ? words((w) => w.where.lifted) : words((w) => w.where.inverted);
}

const extentMm = (ring: readonly PagePoint[]): number =>
  ring.length === 0
    ? 0
    : Math.max(
        Math.max(...ring.map((p) => p.xMm)) - Math.min(...ring.map((p) => p.xMm)),
        Math.max(...ring.map((p) => p.yMm)) - Math.min(...ring.map((p) => p.yMm)),
      );

/** Half the extent of an outline on paper; of a dot its own. */
const halfOf = (ring: readonly PagePoint[]): { readonly xMm: number; readonly yMm: number } => {
  if (ring.length === 0) return { xMm: DOT_MM, yMm: DOT_MM };
  const half = (list: readonly number[]): number => (Math.max(...list) - Math.min(...list)) / 2;
  return { xMm: half(ring.map((p) => p.xMm)), yMm: half(ring.map((p) => p.yMm)) };
};

/** Narrowest that a name is wrapped to stand within its outline. */
const LEAST_NAME_MM = 13;

/** Lines of a name: wrapped to its outline where that is wide enough for words. */
const linesOf = (text: string, halfMm: number): readonly string[] =>
  2 * halfMm - 1.2 < LEAST_NAME_MM
    ? text.split("\n")
    : wrap(text.split("\n").join(" "), 2 * halfMm - 1.2, TEXT.small, "bold");

/** Places within an outline where it has room, else close round it or round a dot: right and left first. */
function closePlaces(
  target: PagePoint,
  ring: readonly PagePoint[],
): (block: { readonly widthMm: number; readonly heightMm: number }) => readonly LabelPlace[] {
  const half = halfOf(ring);
  return ({ widthMm, heightMm }) => {
    const x = half.xMm + 0.7 + widthMm / 2;
    const y = half.yMm + 0.3 + heightMm / 2;
    const place = (dx: number, dy: number, cost: number): LabelPlace => ({
      middle: at(target.xMm + dx, target.yMm + dy),
      turnDeg: 0,
      cost,
    });
    const fits = 2 * half.xMm > widthMm + 1 && 2 * half.yMm > heightMm + 0.6;
    return [
      ...(fits ? [place(0, 0, 0)] : []),
      place(x, 0, 0),
      place(-x, 0, 0.2),
      place(0, -y, 0.3),
      place(0, y, 0.4),
      place(x * 0.8, -y * 0.8, 0.5),
      place(-x * 0.8, -y * 0.8, 0.6),
      place(x * 0.8, y * 0.8, 0.6),
      place(-x * 0.8, y * 0.8, 0.7),
    ];
  };
}

/** An arrow up to what lies at the upper edge of a turned view, with its middle at 0, 0. */
function upperEdgeMarks(text: string): readonly Mark[] {
  const left = -(textWidthMm(text, TEXT.large, "bold") + 4) / 2;
  return [
    polyline([at(left + 1.6, 3), at(left + 1.6, -1)], stroke("ink", LINE.bold)),
    {
      kind: "polygon",
      points: [at(left, -0.2), at(left + 3.2, -0.2), at(left + 1.6, -3.2)],
      stroke: null,
      fill: "ink",
      layer: "BORDER",
    },
    write(text, at(left + 4, TEXT.large / 2), { heightMm: TEXT.large, weight: "bold" }),
  ];
}

/** One side of a panel with what is on it, as large as the page has room. Null: there is no such panel. */
export function mapBlock(context: BookContext, request: MapRequest, widthMm: number): Block | null {
  const { line, language } = context;
  const { panelId, side, spots, mostMm } = request;
  const whole = ownersView(line, panelId, side, 1);
  if (whole === null) return null;
  const hasNames = spots.some((spot) => Number.isNaN(Number(spot.text)));
  const scale = fittingScale(whole.panelMm, {
    widthMm: widthMm - 2 * (hasNames ? 34 : MARGIN_MM),
    heightMm: mostMm - 2 * MARGIN_MM - EDGE_MM,
  });
  const view = ownersView(line, panelId, side, scale);
  if (view === null) return null;
  const roomMm = (widthMm - view.widthMm) / 2;
  const drawn = spots.map((spot) => ({
    spot,
    target: view.toPage(spot.at),
    ring: spot.ring.map(view.toPage),
  }));
  const shapes = drawn.filter(({ ring, spot }) => spot.strong && extentMm(ring) >= LEAST_RING_MM);
  const shaped = new Set(shapes.map(({ spot }) => spot.id));
  const dots = drawn.filter(({ spot }) => !shaped.has(spot.id));
  const labels = placeLabels(
    drawn.map(({ spot, target, ring }) => ({
      id: spot.id,
      lines: linesOf(spot.text, shaped.has(spot.id) ? halfOf(ring).xMm : 0).map((text) => ({
        text,
        heightMm: TEXT.small,
        weight: "bold" as const,
      })),
      target,
      layer: "TEXT" as const,
      clearMm: 0.5,
      places: closePlaces(target, shaped.has(spot.id) ? ring : []),
    })),
    [
      ...shapes.flatMap(({ ring }) => ringObstacles(ring)),
      ...dots.map(
        ({ target }): Obstacle => ({
          kind: "box",
          box: { middle: target, widthMm: 2 * DOT_MM, heightMm: 2 * DOT_MM, turnDeg: 0 },
        }),
      ),
    ],
    dots.map(({ target }) => ({ middle: target, widthMm: 1.6 * DOT_MM, heightMm: 1.6 * DOT_MM, turnDeg: 0 })),
    box(-roomMm, -MARGIN_MM, widthMm, view.heightMm + 2 * MARGIN_MM),
  );
  const edge = lowerEdge(line, panelId);
  const turned = side === "under" && isRaised(line, panelId);
  const title = `${request.title}: ${panelSideName(line, panelId, side, language)}`;
  const seen = `${viewWords(context, request)} ${scaleText(scale)}`;
  const titles = wrap(title, widthMm, TEXT.large, "bold");
  const hints = wrap(seen, widthMm, TEXT.small);
  const told = labels.balloons.flatMap((b) =>
    wrap(`(${b.number}) ${b.lines.map((l) => l.text).join(" ")}`, widthMm, TEXT.small),
  );
  const headMm = 2 + titles.length * leadingMm(TEXT.large);
  const topMm = headMm + hints.length * leadingMm(TEXT.small) + 1 + (turned ? EDGE_MM : 0);
  const drawingMm = view.heightMm + 2 * MARGIN_MM;
  const footMm = topMm + drawingMm + (turned ? 0 : EDGE_MM);
  const marks: Mark[] = [
    ...groundMarks(line, view),
    ...shapes.map(
      ({ ring }): Mark => ({
        kind: "polygon",
        points: ring,
        stroke: stroke("ink", LINE.medium),
        fill: "paper",
        layer: "BORDER",
      }),
    ),
    ...dots.map(
      ({ target }): Mark => ({
        kind: "circle",
        at: target,
        radiusMm: DOT_MM,
        stroke: null,
        fill: "accent",
        layer: "HOLES",
      }),
    ),
    ...labels.marks,
  ];
  const edgeX = widthMm / 2;
  const arrow = turned ? upperEdgeMarks(context.sheet((w) => w.steps.view[edge])) : edgeMarks(edge, language);
  const set = (texts: readonly string[], heightMm: number, fromMm: number, bold: boolean): Mark[] =>
    texts.map((t, i) =>
      write(t, at(0, fromMm + (i + 0.75) * leadingMm(heightMm)), {
        heightMm,
        weight: bold ? "bold" : "regular",
      }),
    );
  return {
    heightMm: footMm + told.length * leadingMm(TEXT.small) + 3,
    marks: [
      anchored(request.anchor, [tagged({ role: "H3" }, set(titles, TEXT.large, 2, true))], {
        title,
        level: 3,
      }),
      tagged({ role: "P" }, set(hints, TEXT.small, headMm, false)),
      figure(`${title}. ${spots.map((s) => s.text.split("\n").join(" ")).join(", ")}`, [
        group(marks, roomMm, topMm + MARGIN_MM),
        group(arrow, edgeX, turned ? topMm - EDGE_MM / 2 : topMm + drawingMm + EDGE_MM / 2 - 2),
      ]),
      ...(told.length === 0 ? [] : [tagged({ role: "P" }, set(told, TEXT.small, footMm, false))]),
    ],
  };
}
