import type { LineResult } from "@pinwright/engine";
import { SideStates } from "../assembly/side-state.ts";
import { allStepSides, sideSlug } from "../assembly/step-facts.ts";
import type { SheetDocument } from "../compose/document.ts";
import { assemblySheetName } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { StepMap } from "./map-parts.ts";
import { composeOverview } from "./overview.ts";
import { composeMapRoll, composeMapTiles } from "./roll.ts";

const VARIANTS = ["roll", "a3", "a4"] as const;

/**
 * The screw maps of a machine: an overview of all steps, A3, a page for each panel side of a step, and of each such
 * side a roll at true size, and A3 and A4 tiles cut from the same drawing.
 */
export function* composeScrewMaps(line: LineResult, options: SheetOptions): Generator<SheetDocument, void> {
  const states = new SideStates(line);
  const maps = allStepSides(line).map((side) => new StepMap(line, states.at(side), options));
  if (maps.length === 0) return;
  yield composeOverview(line, maps, options);
  for (const map of maps) {
    const view = map.view(1);
    if (view === null) continue;
    const drawing = map.draw(view);
    yield composeMapRoll(map, drawing);
    yield composeMapTiles(map, drawing, "a3");
    yield composeMapTiles(map, drawing, "a4");
  }
}

/** Names of the sheets that `composeScrewMaps` makes, without composing them. */
export function screwMapNames(line: LineResult, language: SheetOptions["language"]): readonly string[] {
  const sides = allStepSides(line).filter((side) => line.machine.panels.has(side.panelId));
  if (sides.length === 0) return [];
  return [
    assemblySheetName("screw-map", "overview", language),
    ...sides.flatMap((side) =>
      VARIANTS.map((v) => assemblySheetName("screw-map", `${sideSlug(line, side)}-${v}`, language)),
    ),
  ];
}
