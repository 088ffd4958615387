import type { LineResult } from "@pinwright/engine";
import { stepSlug } from "../assembly/step-facts.ts";
import { bareViewText, panelSideName } from "../assembly/step-texts.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { composeRoll } from "../drawing/roll.ts";
import { assemblyIdentity } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { drillBlocks } from "./drill-blocks.ts";
import type { DrillSide } from "./drill-facts.ts";
import { holeScene } from "./hole-scene.ts";

/** The holes of a panel side at true size, for the router: DXF with a layer for each drill. */
export function composeDrillDrawing(line: LineResult, side: DrillSide, options: SheetOptions): SheetDocument {
  const { language } = options;
  const title = panelSideName(line, side.panelId, side.side, language, "\n");
  const name = `${stepSlug(side.panelId)}-${side.side}`;
  const scene = holeScene(
    line,
    side,
    (_, hole) => String(hole.number),
    { edge: "CUT", text: "TEXT" },
    options,
  );
  const count = side.drills.reduce((sum, d) => sum + d.holes.length, 0);
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  return composeRoll({
    identity: assemblyIdentity(
      line,
      {
        kind: "drill-table",
        name: `${name}-drawing`,
        letters: `${name.toUpperCase()}-DWG`,
        type: (w) => w.steps.drill.drawing,
        title,
        scale: "1:1",
      },
      options,
    ),
    language,
    drawing: scene,
    origin: scene.origin,
    heading: {
      badge: "",
      title: words((w) => w.steps.drill.drawing),
      subtitle: title,
      facts: [say(language, (w) => w.steps.holes(count), " · ")],
    },
    cautions: [words((w) => w.steps.caution.drill)],
    texts: (widthMm) => [
      paragraph(
        words((w) => w.steps.drill.lyingCaution),
        widthMm,
        TEXT.normal,
        true,
      ),
      paragraph(bareViewText(side.side, language), widthMm, TEXT.normal),
      paragraph(
        words((w) => w.steps.drill.layerHint),
        widthMm,
        TEXT.small,
      ),
      gap(1),
      ...drillBlocks(line, side, language, widthMm),
    ],
  });
}
