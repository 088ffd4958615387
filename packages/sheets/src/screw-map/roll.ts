import { stepCautions } from "../assembly/step-cautions.ts";
import type { Drawing } from "../assembly/step-scene.ts";
import { stepTitle } from "../assembly/step-texts.ts";
import type { SheetDocument } from "../compose/document.ts";
import { at, TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { composeRoll } from "../drawing/roll.ts";
import { composeTiled, type TilePaper } from "../drawing/tiled.ts";
import type { StepMap } from "./map-parts.ts";

/** The map of a step's side at true size, on one page. */
export function composeMapRoll(map: StepMap, drawing: Drawing): SheetDocument {
  const { language } = map.options;
  const { marginMm } = drawing;
  return composeRoll({
    identity: map.identity("roll", (w) => w.steps.map.roll, "1:1"),
    language,
    drawing,
    origin: at(marginMm, drawing.heightMm - marginMm),
    heading: map.heading(stepTitle(map.now.step, language)),
    cautions: stepCautions(map.line, map.now.step, language),
    texts: (widthMm) => [
      ...map.notes(widthMm),
      paragraph(
        say(language, (w) => w.steps.map.printTrue),
        widthMm,
        TEXT.normal,
      ),
      gap(2),
      ...map.screws(widthMm),
      gap(2),
      ...map.signs(drawing, widthMm),
    ],
  });
}

/** The map of a step's side at true size, as tiles to be taped together. */
export function composeMapTiles(map: StepMap, drawing: Drawing, size: TilePaper): SheetDocument {
  const { language } = map.options;
  const { badge, subtitle } = map.heading("");
  return composeTiled({
    identity: map.identity(size, (w) => (size === "a3" ? w.steps.map.tilesA3 : w.steps.map.tilesA4), "1:1"),
    language,
    size,
    scene: drawing,
    heading: { badge, subtitle: `${stepTitle(map.now.step, language, " · ")}\n${subtitle}` },
    cautions: stepCautions(map.line, map.now.step, language),
    notes: (widthMm) => [
      ...map.notes(widthMm),
      paragraph(
        say(language, (w) => w.steps.map.printTrue),
        widthMm,
        TEXT.normal,
      ),
    ],
    legend: (widthMm) => [...map.screws(widthMm), gap(2), ...map.signs(drawing, widthMm)],
    mapMarks: (place) =>
      drawing.holes.map((hole) => ({
        kind: "circle",
        at: place(hole),
        radiusMm: 0.8,
        stroke: null,
        fill: "ink",
        layer: "HOLES",
      })),
  });
}
