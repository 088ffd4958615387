import type { HarnessResult, LineResult } from "@pinwright/engine";
import type { SheetDocument } from "../compose/document.ts";
import type { Block } from "../compose/flow.ts";
import type { SheetOptions } from "../options.ts";
import { composePinboardRoll } from "./roll.ts";
import { drawScene } from "./scene.ts";
import { composePinboardTiles } from "./tiles.ts";

/** Names of the sheets that a pinboard is printed as. */
export const PINBOARD_VARIANTS = ["roll", "a3", "a4"] as const;

/** The pinboard of a harness: one true-scale roll, and A3 and A4 tiles cut from the same drawing. */
export function composePinboard(
  line: LineResult,
  harness: HarnessResult,
  fromTo: (widthMm: number) => readonly Block[],
  options: SheetOptions,
): SheetDocument[] {
  const scene = drawScene(line, harness, options);
  return [
    composePinboardRoll(line, harness, scene, fromTo, options),
    composePinboardTiles(line, harness, scene, "a3", options),
    composePinboardTiles(line, harness, scene, "a4", options),
  ];
}
