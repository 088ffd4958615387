import { endKind, type HarnessResult, type LineResult } from "@pinwright/engine";
import { cautionsOf } from "./cautions.ts";
import type { SheetDocument } from "./compose/document.ts";
import type { Block } from "./compose/flow.ts";
import type { Grid } from "./compose/grid.ts";
import { composeListing } from "./compose/listing.ts";
import { PAPERS, type PaperName } from "./compose/paper.ts";
import { say } from "./compose/say.ts";
import { cutMm, metresUp } from "./facts.ts";
import { badgeOf, type HarnessSheetKind, harnessTitle, identityOf } from "./identity.ts";
import type { SheetOptions } from "./options.ts";

export interface HarnessListing {
  readonly kind: HarnessSheetKind;
  readonly paper: PaperName;
  /** Figures at the head of the sheet; absent: wires and metres. */
  readonly facts?: readonly string[];
  readonly blocks: (widthMm: number) => readonly Block[];
  readonly grids: readonly Grid[];
}

/** Whether an end or a joint of this harness is soldered. */
function solders(line: LineResult, harness: HarnessResult): boolean {
  const isLug = (end: string): boolean => {
    const family = line.machine.points.get(end)?.family;
    return family !== undefined && endKind(family) === "solder";
  };
  return harness.splices.length > 0 || harness.wires.some((w) => isLug(w.a) || isLug(w.b));
}

/** A list of a harness as a sheet, with the harness's number, name, cautions and figures. */
export function composeHarnessListing(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
  listing: HarnessListing,
): SheetDocument {
  const { language } = options;
  return composeListing({
    identity: identityOf(line, harness, listing.kind, options),
    language,
    paper: PAPERS[listing.paper],
    heading: {
      badge: badgeOf(harness),
      title: say(language, (w) => w.kinds[listing.kind]),
      subtitle: harnessTitle(harness, options),
      facts: listing.facts ?? [
        say(language, (w) => w.common.wires(harness.wires.length), " · "),
        `${metresUp(cutMm(harness) / 1000)} m`,
      ],
    },
    cautions: cautionsOf(line, harness, listing.kind, language, solders(line, harness)),
    blocks: listing.blocks,
    grids: listing.grids,
  });
}
