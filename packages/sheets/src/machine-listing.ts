import type { LineResult } from "@pinwright/engine";
import { machineCautions } from "./cautions.ts";
import type { SheetDocument } from "./compose/document.ts";
import type { Block } from "./compose/flow.ts";
import type { Grid } from "./compose/grid.ts";
import { composeListing } from "./compose/listing.ts";
import { PAPERS, type PaperName } from "./compose/paper.ts";
import { label, say } from "./compose/say.ts";
import { type MachineSheetKind, machineIdentity } from "./identity.ts";
import type { SheetOptions } from "./options.ts";

export interface MachineListing {
  readonly kind: MachineSheetKind;
  readonly paper: PaperName;
  /** Figures at the head of the sheet. */
  readonly facts: readonly string[];
  readonly blocks: (widthMm: number) => readonly Block[];
  readonly grids: readonly Grid[];
}

/** A list of the whole machine as a sheet, with its cautions. */
export function composeMachineListing(
  line: LineResult,
  options: SheetOptions,
  listing: MachineListing,
): SheetDocument {
  const { language } = options;
  const { machine } = line.machine.book;
  return composeListing({
    identity: machineIdentity(line, listing.kind, options),
    language,
    paper: PAPERS[listing.paper],
    heading: {
      badge: "",
      title: say(language, (w) => w.kinds[listing.kind]),
      subtitle: label(language, { en: machine.label, zh: machine.label_zh }, machine.id),
      facts: listing.facts,
    },
    cautions: machineCautions(line, language),
    blocks: listing.blocks,
    grids: listing.grids,
  });
}
