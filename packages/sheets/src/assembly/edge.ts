import type { SheetLanguage } from "@pinwright/words";
import { at, LINE, polyline, stroke, TEXT, write } from "../compose/draw.ts";
import type { Layer, Mark } from "../compose/mark.ts";
import { say } from "../compose/say.ts";
import { textWidthMm } from "../compose/text.ts";
import type { LowerEdge } from "./panel-view.ts";

const ARROW_MM = 4;

const edgeText = (edge: LowerEdge, language: SheetLanguage): string =>
  say(language, (w) => w.steps.view[edge], " · ");

/** Width of an arrow with its words. */
export function edgeWidthMm(edge: LowerEdge, language: SheetLanguage): number {
  return ARROW_MM + textWidthMm(edgeText(edge, language), TEXT.large, "bold");
}

/** An arrow at the lower edge of a view that says what lies there, with its middle at 0, 0. */
export function edgeMarks(edge: LowerEdge, language: SheetLanguage, layer: Layer = "BORDER"): Mark[] {
  const left = -edgeWidthMm(edge, language) / 2;
  return [
    polyline([at(left + 1.6, -3), at(left + 1.6, 1)], stroke("ink", LINE.bold), layer),
    {
      kind: "polygon",
      points: [at(left, 0.2), at(left + 3.2, 0.2), at(left + 1.6, 3.2)],
      stroke: null,
      fill: "ink",
      layer,
    },
    write(edgeText(edge, language), at(left + ARROW_MM, TEXT.large / 2), {
      heightMm: TEXT.large,
      weight: "bold",
      layer,
    }),
  ];
}
