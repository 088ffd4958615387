import type { HarnessResult, LineResult } from "@pinwright/engine";
import { cautionsOf } from "../cautions.ts";
import type { SheetDocument } from "../compose/document.ts";
import { LINE, polyline, stroke } from "../compose/draw.ts";
import type { Mark } from "../compose/mark.ts";
import { composeTiled, type TilePaper } from "../drawing/tiled.ts";
import { badgeOf, harnessTitle, identityOf, type Variant } from "../identity.ts";
import type { SheetOptions } from "../options.ts";
import { legendBlocks, noteBlocks } from "./notes.ts";
import type { Scene } from "./scene.ts";

const VARIANTS: Readonly<Record<TilePaper, Variant>> = {
  a3: { name: "a3", title: (w) => w.pinboard.tilesA3, scale: "1:1" },
  a4: { name: "a4", title: (w) => w.pinboard.tilesA4, scale: "1:1" },
};

/** A pinboard as tiles to be taped together, after a page with the map of the tiles. */
export function composePinboardTiles(
  result: LineResult,
  harness: HarnessResult,
  scene: Scene,
  size: TilePaper,
  options: SheetOptions,
): SheetDocument {
  const { language } = options;
  return composeTiled({
    identity: identityOf(result, harness, "pinboard", options, VARIANTS[size]),
    language,
    size,
    scene,
    heading: { badge: badgeOf(harness), subtitle: harnessTitle(harness, options) },
    cautions: cautionsOf(result, harness, "pinboard", language),
    notes: (widthMm) => noteBlocks(harness, scene, language, widthMm),
    legend: (widthMm) => legendBlocks(language, options.pegHoleMm, widthMm),
    mapMarks: (p) => [
      ...scene.branches.map((b) => polyline(b.points.map(p), stroke("ink", LINE.bold))),
      ...scene.holders.map(
        (h): Mark => ({
          kind: "circle",
          at: p(h.box.middle),
          radiusMm: 0.9,
          stroke: stroke("ink", LINE.thin),
          fill: "paper",
          layer: "BORDER",
        }),
      ),
    ],
  });
}
