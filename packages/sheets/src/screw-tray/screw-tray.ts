import type { LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { screwTable } from "../assembly/legend.ts";
import { allStepSides, type StepSide, screwGroups, sideSlug } from "../assembly/step-facts.ts";
import { panelSideName, stepBadge, stepTitle, viewText } from "../assembly/step-texts.ts";
import type { SheetDocument } from "../compose/document.ts";
import { TEXT } from "../compose/draw.ts";
import { gap } from "../compose/flow.ts";
import { shortNumber } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { composeRoll } from "../drawing/roll.ts";
import { assemblyIdentity, assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { CLEARANCE_MM, trayScene } from "./tray-scene.ts";

/** Sides on which screws are driven: nothing is filled into a tray for checking. */
function traySides(line: LineResult): readonly StepSide[] {
  return allStepSides(line).filter(
    (side) => side.step.kind !== "recheck" && line.machine.panels.has(side.panelId),
  );
}

/** A screw tray for each panel side of each step. */
export function* composeScrewTrays(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  for (const side of traySides(line)) {
    const tray = composeTray(line, side, options);
    if (tray !== null) yield tray;
  }
}

/** Names of the sheets that `composeScrewTrays` makes. */
export function screwTrayNames(line: LineResult, language: SheetLanguage): readonly string[] {
  return traySides(line).map((side) => assemblySheetName("screw-tray", sideSlug(line, side), language));
}

function composeTray(line: LineResult, now: StepSide, options: SheetOptions): SheetDocument | null {
  const scene = trayScene(line, now, options);
  if (scene === null) return null;
  const { language } = options;
  const groups = screwGroups(line, now.fasteners);
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const size = shortNumber(scene.trayMm.widthMm, 1);
  const height = shortNumber(scene.trayMm.heightMm, 1);
  const hasLoose = groups.some((g) => g.washer !== null || g.nut !== null);
  const plain = (text: string, widthMm: number, heightMm: number = TEXT.normal) =>
    paragraph(text, widthMm, heightMm);
  return composeRoll({
    identity: assemblyIdentity(
      line,
      {
        kind: "screw-tray",
        name: sideSlug(line, now),
        letters: `S${now.step.number}`,
        title: stepTitle(now.step, language),
        scale: "1:1",
      },
      options,
    ),
    language,
    drawing: scene,
    origin: scene.origin,
    heading: {
      badge: stepBadge(now.step),
      title: words((w) => w.steps.tray.title),
      subtitle: `${stepTitle(now.step, language)}\n${panelSideName(line, now.panelId, now.side, language)}`,
      facts: [say(language, (w) => w.steps.screws(now.fasteners.length), " · ")],
    },
    cautions: [words((w) => w.steps.caution.jig)],
    texts: (widthMm) => [
      paragraph(
        words((w) => w.steps.tray.hint),
        widthMm,
        TEXT.normal,
        true,
      ),
      plain(
        words((w) => w.steps.tray.fill),
        widthMm,
      ),
      plain(viewText(line, now, language), widthMm),
      ...(hasLoose
        ? [
            plain(
              words((w) => w.steps.tray.loose),
              widthMm,
            ),
          ]
        : []),
      gap(1),
      ...screwTable(line, groups, new Map(), language, widthMm),
      gap(2),
      plain(
        words((w) => w.steps.tray.size(size, height)),
        widthMm,
      ),
      plain(
        words((w) => w.steps.tray.clearance(shortNumber(CLEARANCE_MM, 1))),
        widthMm,
        TEXT.small,
      ),
      plain(
        words((w) => w.steps.tray.corner(shortNumber(scene.corner.xMm, 1), shortNumber(scene.corner.yMm, 1))),
        widthMm,
        TEXT.small,
      ),
      plain(
        words((w) => w.steps.tray.layers),
        widthMm,
        TEXT.small,
      ),
    ],
  });
}
