import type { LineResult, PanelPoint, Side } from "@pinwright/engine";
import { edgeMarks } from "../assembly/edge.ts";
import { groundMarks } from "../assembly/ground.ts";
import { fittingScale, lowerEdge, type PanelView, panelView, scaleText } from "../assembly/panel-view.ts";
import { panelSideName } from "../assembly/step-texts.ts";
import { at, box, group, LINE, polyline, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { LabelLine } from "../compose/label.ts";
import { placeLabels } from "../compose/label-placer.ts";
import { leafBox, leavesOf } from "../compose/leaves.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { type Obstacle, ringObstacles } from "../compose/obstacle.ts";
import { anchored, figure, tagged } from "../compose/tag.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import type { BookContext } from "./context.ts";
import { type MapName, placeNames } from "./map-labels.ts";
import { DOT_MM, dotBox, inOutline, outlineOf, roundDot } from "./map-numbers.ts";

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

/** Narrowest room beside the panel in which names are set. */
const LEAST_ASIDE_MM = 5.5;
/** White round the drawing for the names. */
const MARGIN_MM = 4;
/** Room at the sides that names may take. */
const EDGE_MM = 8;
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

/** Narrowest that a name is wrapped to stand within its outline. */
const LEAST_NAME_MM = 11;
/** Widest that a name beside its place is set before it is wrapped. */
const NAME_MM = 30;

const bold = (texts: readonly string[]): readonly LabelLine[] =>
  texts.map((text) => ({ text, heightMm: TEXT.small, weight: "bold" as const }));

/** A name in the lines that it stands in, beside its place and within its outline. */
function nameOf({ spot, target, ring }: Drawn, isShape: boolean, mostMm: number): MapName {
  const outline = isShape ? outlineOf(ring) : null;
  const wrapped = (widthMm: number): readonly LabelLine[] =>
    bold(spot.text.split("\n").flatMap((text) => wrap(text, widthMm, TEXT.small, "bold")));
  const withinMm = Math.max((outline?.widthMm ?? 0) - 1.2, LEAST_NAME_MM);
  return {
    id: spot.id,
    lines: wrapped(Math.min(NAME_MM, mostMm)),
    within: bold(wrap(spot.text.split("\n").join(" "), withinMm, TEXT.small, "bold")),
    target,
    outline,
  };
}

interface Drawn {
  readonly spot: MapSpot;
  readonly target: PagePoint;
  readonly ring: readonly PagePoint[];
}

const isNumber = ({ text }: MapSpot): boolean => text !== "" && !Number.isNaN(Number(text));

/** Numbers at their dots, then names round what they leave free. */
function labelsOf(
  drawn: readonly Drawn[],
  shaped: ReadonlySet<string>,
  view: PanelView,
  roomMm: number,
): { readonly marks: readonly Mark[]; readonly told: readonly string[] } {
  const panel = box(0, 0, view.widthMm, view.heightMm);
  const shapes = drawn.filter(({ spot }) => shaped.has(spot.id));
  const dots = drawn.filter(({ spot }) => !shaped.has(spot.id));
  const edge = [at(0, 0), at(view.widthMm, 0), at(view.widthMm, view.heightMm), at(0, view.heightMm)];
  const numbers = placeLabels(
    drawn
      .filter(({ spot }) => isNumber(spot))
      .map(({ spot, target, ring }) => ({
        id: spot.id,
        lines: bold([spot.text]),
        target,
        layer: "TEXT" as const,
        clearMm: 0.3,
        places: shaped.has(spot.id) ? inOutline(outlineOf(ring)) : roundDot(target),
      })),
    [
      ...[...shapes.map(({ ring }) => ring), edge].flatMap(ringObstacles),
      ...dots.map(({ target }): Obstacle => {
        const size = 2 * DOT_MM;
        return { kind: "box", box: { middle: target, widthMm: size, heightMm: size, turnDeg: 0 } };
      }),
    ],
    dots.map(({ target }) => ({ middle: target, widthMm: 1.6 * DOT_MM, heightMm: 1.6 * DOT_MM, turnDeg: 0 })),
    box(-roomMm, -MARGIN_MM, view.widthMm + 2 * roomMm, view.heightMm + 2 * MARGIN_MM),
  );
  const outlines = new Map(shapes.map(({ spot, ring }) => [spot.id, outlineOf(ring)]));
  const names = placeNames({
    names: drawn
      .filter(({ spot }) => !isNumber(spot))
      .map((each) => {
        const name = nameOf(each, shaped.has(each.spot.id), roomMm - LEAST_ASIDE_MM);
        return { ...name, outline: outlines.get(name.id) ?? null };
      }),
    taken: [
      ...outlines.values(),
      ...dots.map(({ target }) => dotBox(target)),
      ...leavesOf(numbers.marks).flatMap(({ leaf }) => (leaf.kind === "text" ? [leafBox(leaf)] : [])),
    ],
    panel,
    roomMm,
    marginMm: MARGIN_MM,
  });
  return {
    marks: [...numbers.marks, ...names.marks],
    told: [
      ...numbers.balloons.map((b) => `(${b.number}) ${b.lines.map((l) => l.text).join(" ")}`),
      ...names.told.map(({ lines }) => lines.map((l) => l.text).join(" ")),
    ],
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
  const hasNames = spots.some((spot) => !isNumber(spot));
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
  const labels = labelsOf(drawn, shaped, view, roomMm);
  const edge = lowerEdge(line, panelId);
  const turned = side === "under" && isRaised(line, panelId);
  const title = `${request.title}: ${panelSideName(line, panelId, side, language)}`;
  const seen = `${viewWords(context, request)} ${scaleText(scale)}`;
  const titles = wrap(title, widthMm, TEXT.large, "bold");
  const hints = wrap(seen, widthMm, TEXT.small);
  const told = labels.told.flatMap((text) => wrap(text, widthMm, TEXT.small));
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
