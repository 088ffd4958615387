import type { LineResult } from "@pinwright/engine";
import { fittingScale, scaleText } from "../assembly/panel-view.ts";
import { stepCautions } from "../assembly/step-cautions.ts";
import { stepTitle } from "../assembly/step-texts.ts";
import { cautionBlock } from "../compose/caution.ts";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { box, group, TEXT } from "../compose/draw.ts";
import { type Block, flow, gap } from "../compose/flow.ts";
import { headingBlock, roomOf } from "../compose/listing.ts";
import type { Box, Mark } from "../compose/mark.ts";
import { PAPERS } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { assemblyIdentity } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import type { StepMap } from "./map-parts.ts";

const PAPER = PAPERS["a3-portrait"];
/** Column of the legend beside the drawing. */
const LEGEND_MM = 78;
const GUTTER_MM = 3;
/** White round the drawing. */
const MARGIN_MM = 12;

/** One page for each step's side, small enough for A3: a booklet to work through at the bench. */
export function composeOverview(
  line: LineResult,
  maps: readonly StepMap[],
  options: SheetOptions,
): SheetDocument {
  const identity = assemblyIdentity(
    line,
    { kind: "screw-map", name: "overview", letters: "A3", type: (w) => w.steps.map.overview },
    options,
  );
  const bodies: PageBody[] = [];
  for (const map of maps)
    bodies.push(...pagesOf(map, bodies.length).map((marks) => ({ paper: PAPER, marks })));
  return assemble(identity, options.language, bodies, []);
}

/** Pages of one step's side: the drawing on the first, what the legend does not hold on the next. */
function pagesOf(map: StepMap, first: number): Mark[][] {
  const { language } = map.options;
  const room = roomOf(PAPER, first);
  const heading = headingBlock(map.heading(stepTitle(map.now.step, language)), room.widthMm);
  const wide = fits(map, room, heading.heightMm);
  if (wide === null) return [];
  const { drawing, place, legend } = wide;
  const texts = flow(legendOf(map, wide), (page) => {
    if (page === 0) return legend;
    const next = roomOf(PAPER, first + page);
    return box(next.xMm, next.yMm + heading.heightMm, legend.widthMm, next.heightMm - heading.heightMm);
  });
  return texts.map((marks, page) => {
    const own = roomOf(PAPER, first + page);
    return [
      group(heading.marks, own.xMm, own.yMm),
      ...(page === 0 ? [{ ...group(drawing.marks, place.xMm, place.yMm), hash: drawing.hash }] : []),
      ...marks,
    ];
  });
}

interface Layout {
  readonly drawing: ReturnType<StepMap["draw"]>;
  readonly scale: number;
  readonly place: Box;
  readonly legend: Box;
}

/** The drawing beside its legend where the panel is high, above it where it is wide. */
function fits(map: StepMap, room: Box, headingMm: number): Layout | null {
  const whole = map.view(1);
  if (whole === null) return null;
  const heightMm = room.heightMm - headingMm;
  const top = room.yMm + headingMm;
  const besideScale = fittingScale(whole, {
    widthMm: room.widthMm - LEGEND_MM - GUTTER_MM - 2 * MARGIN_MM,
    heightMm: heightMm - 2 * MARGIN_MM,
  });
  const aboveScale = fittingScale(whole, {
    widthMm: room.widthMm - 2 * MARGIN_MM,
    heightMm: heightMm * 0.55 - 2 * MARGIN_MM,
  });
  const beside = besideScale >= aboveScale;
  const scale = Math.max(besideScale, aboveScale);
  const view = map.view(scale);
  if (view === null) return null;
  const drawing = map.draw(view, MARGIN_MM);
  if (beside) {
    const place = box(room.xMm, top, drawing.widthMm, drawing.heightMm);
    const left = place.xMm + place.widthMm + GUTTER_MM;
    return {
      drawing,
      scale,
      place,
      legend: box(left, top, room.xMm + room.widthMm - left, heightMm),
    };
  }
  const place = box(room.xMm + (room.widthMm - drawing.widthMm) / 2, top, drawing.widthMm, drawing.heightMm);
  const under = top + drawing.heightMm + GUTTER_MM;
  return {
    drawing,
    scale,
    place,
    legend: box(room.xMm, under, room.widthMm, room.yMm + room.heightMm - under),
  };
}

function legendOf(map: StepMap, { drawing, scale, legend }: Layout): Block[] {
  const { language } = map.options;
  const { widthMm } = legend;
  const cautions = stepCautions(map.line, map.now.step, language);
  return [
    ...map.notes(widthMm),
    paragraph(
      say(language, (w) => `${scaleText(scale)}. ${w.steps.map.overviewHint}`),
      widthMm,
      TEXT.small,
    ),
    gap(2),
    ...map.screws(widthMm),
    gap(2),
    ...map.signs(drawing, widthMm),
    gap(1),
    ...(cautions.length === 0 ? [] : [cautionBlock(cautions, language, widthMm)]),
  ];
}
