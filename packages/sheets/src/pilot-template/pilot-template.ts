import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { stepSlug } from "../assembly/step-facts.ts";
import { bareViewText, panelSideName } from "../assembly/step-texts.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { composeRoll } from "../drawing/roll.ts";
import { drillBlocks } from "../drill-table/drill-blocks.ts";
import { type DrillSide, drillSides } from "../drill-table/drill-facts.ts";
import { holeScene } from "../drill-table/hole-scene.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { locators } from "./locators.ts";

const nameOf = ({ panelId, side }: DrillSide): string => `${stepSlug(panelId)}-${side}`;

/** A template for each panel side that is drilled: its holes guide the drill on the bare panel. */
export function* composePilotTemplates(
  line: LineResult,
  options: SheetOptions,
): Generator<SheetDocument, void> {
  for (const side of drillSides(line)) yield composeTemplate(line, side, options);
}

/** Names of the sheets that `composePilotTemplates` makes. */
export function pilotTemplateNames(line: LineResult, language: SheetLanguage): readonly string[] {
  return drillSides(line).map((side) => assemblySheetName("pilot-template", nameOf(side), language));
}

function composeTemplate(line: LineResult, side: DrillSide, options: SheetOptions): SheetDocument {
  const { language } = options;
  const title = panelSideName(line, side.panelId, side.side, language, "\n");
  const located = locators(line, side.view, options);
  const scene = holeScene(
    line,
    side,
    (drill) => drill.mark,
    { edge: "CUT", text: "ENGRAVE" },
    options,
    located,
  );
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  return composeRoll({
    identity: assemblyIdentity(
      line,
      {
        kind: "pilot-template",
        name: nameOf(side),
        letters: nameOf(side).toUpperCase(),
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
      title: words((w) => w.steps.pilot.title),
      subtitle: title,
      facts: [
        say(language, (w) => w.steps.holes(side.drills.reduce((n, d) => n + d.holes.length, 0)), " · "),
      ],
    },
    cautions: [words((w) => w.steps.caution.drill), words((w) => w.steps.caution.jig)],
    texts: (widthMm) => [
      paragraph(
        words((w) => w.steps.pilot.hint),
        widthMm,
        TEXT.normal,
        true,
      ),
      paragraph(bareViewText(side.side, language), widthMm, TEXT.normal),
      paragraph(
        words((w) => (located.hasPins ? w.steps.pilot.locate : w.steps.pilot.stopsOnly)),
        widthMm,
        TEXT.normal,
      ),
      paragraph(
        words((w) => w.steps.pilot.guide),
        widthMm,
        TEXT.normal,
      ),
      paragraph(
        words((w) => w.steps.pilot.layers),
        widthMm,
        TEXT.small,
      ),
      gap(1),
      ...drillBlocks(line, side, language, widthMm),
    ],
  });
}
