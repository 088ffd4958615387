import type { LineResult, PanelPoint } from "@pinwright/engine";
import { type BoxMm, boxOf, growBox } from "@pinwright/kernel";
import { edgeWidthMm } from "../assembly/edge.ts";
import { fittingScale, lowerEdge, type PanelView, panelView } from "../assembly/panel-view.ts";
import { partKeys } from "../assembly/step-facts.ts";
import { crowding, drawStep, type SideState } from "../assembly/step-scene.ts";
import { poseText } from "../assembly/step-texts.ts";
import { at, box, group, LINE, rect, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Mark } from "../compose/mark.ts";
import { say } from "../compose/say.ts";
import { leadingMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import type { SheetOptions } from "../options.ts";

/** White round a picture for labels, and of the panel round what the step is about. */
const MARGIN_MM = 10;
const ROUND_MM = 25;
/** Least extent of the panel that a picture shows: less is not recognised. */
const LEAST_MM = 160;
/** A part that is more of a panel than this is shown with all of the panel. */
const WHOLE_SHARE = 0.6;
/** Width of the small panel that shows where the picture is. */
const WHERE_MM = 18;
/** Items with names in a picture; more would hide the holes. */
const MOST_NAMES = 16;

/** What of a panel is shown: all that the step touches, with some of the panel round it. */
function regionOf(whole: PanelView, { now }: SideState): BoxMm {
  const points: PanelPoint[] = [
    ...now.fasteners.map((f) => whole.lying(f.place)),
    ...now.items.flatMap((i) => i.footprint.map(whole.lying)),
  ];
  const { widthMm, heightMm } = whole.panelMm;
  const own = boxOf(points) ?? { minXMm: 0, minYMm: 0, maxXMm: widthMm, maxYMm: heightMm };
  const grown = growBox(own, ROUND_MM);
  const span = (min: number, max: number, most: number): readonly [number, number] => {
    const lack = Math.max(0, LEAST_MM - (max - min)) / 2;
    const from = Math.max(0, min - lack);
    const to = Math.min(most, max + lack);
    return to > from ? [from, to] : [0, most];
  };
  const [minXMm, maxXMm] = span(grown.minXMm, grown.maxXMm, widthMm);
  const [minYMm, maxYMm] = span(grown.minYMm, grown.maxYMm, heightMm);
  const share = ((maxXMm - minXMm) * (maxYMm - minYMm)) / (widthMm * heightMm);
  return share > WHOLE_SHARE
    ? { minXMm: 0, minYMm: 0, maxXMm: widthMm, maxYMm: heightMm }
    : { minXMm, minYMm, maxXMm, maxYMm };
}

/** How much higher than wide the part of a panel is that a picture shows; 0: there is no such panel. */
export function regionAspect(line: LineResult, state: SideState): number {
  const whole = panelView(line, state.now.panelId, state.now.side, 1);
  if (whole === null) return 0;
  const region = regionOf(whole, state);
  return (region.maxYMm - region.minYMm) / (region.maxXMm - region.minXMm);
}

/** A small panel with the part that the picture shows. */
function whereMarks(whole: PanelView, region: BoxMm): { readonly marks: Mark[]; readonly heightMm: number } {
  const scale = WHERE_MM / Math.max(whole.panelMm.widthMm, whole.panelMm.heightMm * 0.5);
  const { widthMm, heightMm } = whole.panelMm;
  return {
    heightMm: heightMm * scale,
    marks: [
      rect(box(0, 0, widthMm * scale, heightMm * scale), stroke("ink", LINE.thin), "paper"),
      rect(
        box(
          region.minXMm * scale,
          (heightMm - region.maxYMm) * scale,
          (region.maxXMm - region.minXMm) * scale,
          (region.maxYMm - region.minYMm) * scale,
        ),
        stroke("ink", LINE.strong),
        "tint",
      ),
    ],
  };
}

/** A picture, and whether it tells the holes apart: few symbols stand beside their holes, and all have room. */
export interface Picture extends Block {
  readonly isClear: boolean;
}

/** Share of the symbols that may stand beside their holes in a clear picture. */
const ASIDE_SHARE = 0.25;

/**
 * The picture of a step on a panel side, as high as there is room for. Null: there is no such panel.
 * @param onlyClear whether it is left blank when it would not tell the holes apart
 */
export function pictureBlock(
  line: LineResult,
  state: SideState,
  title: string,
  options: SheetOptions,
  widthMm: number,
  mostMm: number,
  onlyClear: boolean,
): Picture | null {
  const { panelId, side } = state.now;
  const whole = panelView(line, panelId, side, 1);
  if (whole === null) return null;
  const region = regionOf(whole, state);
  const isPart =
    region.maxXMm - region.minXMm < whole.panelMm.widthMm - 1e-6 ||
    region.maxYMm - region.minYMm < whole.panelMm.heightMm - 1e-6;
  const asideMm = isPart ? WHERE_MM + 4 : 0;
  const { language } = options;
  const edge = lowerEdge(line, panelId);
  const named = [title, poseText(line, state.now, language)].filter((t) => t !== "").join(". ");
  const heads = wrap(named, widthMm, TEXT.normal, "bold");
  const caption = wrap(
    say(language, (w) => w.steps.card.picture),
    widthMm,
    TEXT.small,
  );
  const step = leadingMm(TEXT.small);
  const headsMm = heads.length * leadingMm(TEXT.normal);
  const captionMm = headsMm + caption.length * step;
  const scale = fittingScale(
    { widthMm: region.maxXMm - region.minXMm, heightMm: region.maxYMm - region.minYMm },
    { widthMm: widthMm - asideMm - 2 * MARGIN_MM, heightMm: mostMm - captionMm - 2 - 2 * MARGIN_MM },
  );
  const view = panelView(line, panelId, side, scale, region);
  if (view === null) return null;
  const { symbol_mm: symbolMm } = line.machine.shop.numbers;
  const { aside, shown } = crowding(view, state, symbolMm);
  const isOpen = aside <= ASIDE_SHARE * Math.max(4, shown);
  // Drawing it takes much longer than to see that nobody could read it.
  if (onlyClear && !isOpen) return { isClear: false, heightMm: 0, marks: [] };
  const drawing = drawStep(line, view, state, {
    language,
    symbolMm,
    marginMm: MARGIN_MM,
    numbered: true,
    // Without screws the names alone tell what goes where.
    keys:
      state.now.fasteners.length === 0 || state.now.items.length <= MOST_NAMES
        ? null
        : partKeys(line, state.now.step),
    letterMm: TEXT.normal,
    edge,
  });
  const roomMm = widthMm - asideMm;
  const left = Math.max(0, (roomMm - Math.max(drawing.widthMm, edgeWidthMm(edge, language))) / 2);
  const where = whereMarks(whole, region);
  // What found no room is told under the picture.
  const told = drawing.balloons.flatMap((b) =>
    wrap(`(${b.number}) ${b.lines.map((l) => l.text).join(" · ")}`, widthMm, TEXT.small),
  );
  const pictureMm = Math.max(drawing.heightMm, isPart ? where.heightMm + 4 : 0);
  const set = (lines: readonly string[], topMm: number): Mark[] =>
    lines.map((t, i) => write(t, at(0, topMm + (i + 0.75) * step), { heightMm: TEXT.small }));
  return {
    isClear: isOpen && drawing.balloons.length === 0,
    heightMm: captionMm + pictureMm + told.length * step + 2,
    marks: [
      ...heads.map((t, i) =>
        write(t, at(0, (i + 0.75) * leadingMm(TEXT.normal)), { heightMm: TEXT.normal, weight: "bold" }),
      ),
      ...set(caption, headsMm),
      { ...group(drawing.marks, left, captionMm), hash: drawing.hash },
      ...(isPart ? [group(where.marks, roomMm + 4, captionMm + 4)] : []),
      ...set(told, captionMm + pictureMm),
    ],
  };
}
