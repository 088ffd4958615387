import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { groundMarks } from "../assembly/ground.ts";
import { fittingScale, panelView, scaleText } from "../assembly/panel-view.ts";
import { panelSideName, viewText } from "../assembly/step-texts.ts";
import { at, box, group, LINE, stroke, TEXT } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import { placeLabels } from "../compose/label-placer.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import type { BoardSide } from "./board-register.ts";

/** Highest map: it must fit under the heading of the first page in both languages. */
const MOST_MM = 205;
const MARGIN_MM = 5;

const middleOf = (ring: readonly PagePoint[]): PagePoint => {
  const xs = ring.map((p) => p.xMm);
  const ys = ring.map((p) => p.yMm);
  return at((Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2);
};

/** Height of a number that stands in a board, where it has room. */
function letterMm(ring: readonly PagePoint[]): number {
  const xs = ring.map((p) => p.xMm);
  const ys = ring.map((p) => p.yMm);
  const leastMm = Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  return leastMm >= 2 * TEXT.large ? TEXT.large : leastMm >= 1.4 * TEXT.normal ? TEXT.normal : TEXT.small;
}

/** A panel side with every board on it, numbered as in the register; as large as a page has room. */
export function mapBlocks(
  line: LineResult,
  side: BoardSide,
  language: SheetLanguage,
  widthMm: number,
): readonly Block[] {
  const whole = panelView(line, side.panelId, side.side, 1);
  if (whole === null) return [];
  const scale = fittingScale(whole.panelMm, {
    widthMm: widthMm - 2 * MARGIN_MM,
    heightMm: MOST_MM - 2 * MARGIN_MM,
  });
  const view = panelView(line, side.panelId, side.side, scale);
  if (view === null) return [];
  const rings = side.boards.map(({ number, item }) => ({ number, ring: item.footprint.map(view.toPage) }));
  const labels = placeLabels(
    rings.map(({ number, ring }) => ({
      id: String(number),
      lines: [{ text: String(number), heightMm: letterMm(ring), weight: "bold" as const }],
      target: middleOf(ring),
      places: () => [{ middle: middleOf(ring), turnDeg: 0, cost: 0 }],
      layer: "TEXT" as const,
    })),
    [],
    [],
    box(-MARGIN_MM, -MARGIN_MM, view.widthMm + 2 * MARGIN_MM, view.heightMm + 2 * MARGIN_MM),
  );
  const title = say(
    language,
    (w, l) => w.boards.register.map(panelSideName(line, side.panelId, side.side, l)),
    " · ",
  );
  const seen = `${viewText(line, side, language).split("\n").join(" · ")} ${scaleText(scale)}`;
  const boards = rings.map(
    ({ ring }): Mark => ({
      kind: "polygon",
      points: ring,
      stroke: stroke("ink", LINE.strong),
      fill: "paper",
      layer: "BORDER",
    }),
  );
  const left = Math.max(MARGIN_MM, (widthMm - view.widthMm) / 2);
  const drawing: Block = {
    heightMm: view.heightMm + 2 * MARGIN_MM,
    marks: [group([...groundMarks(line, view), ...boards, ...labels.marks], left, MARGIN_MM)],
  };
  return [
    { ...paragraph(title, widthMm, TEXT.large, true), keepMm: drawing.heightMm + 12 },
    { ...paragraph(seen, widthMm, TEXT.small), keepMm: drawing.heightMm },
    drawing,
  ];
}
