import type { HarnessResult, LineResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import type { SheetDocument } from "./compose/document.ts";
import { composeConnectorLoading } from "./connector-loading/connector-loading.ts";
import { composeContinuity } from "./continuity/continuity.ts";
import { composeCutList } from "./cut-list/cut-list.ts";
import { composeFromTo, fromToBlocks } from "./from-to/from-to.ts";
import { HARNESS_SHEET_KINDS, type HarnessSheetKind } from "./identity.ts";
import { composeLayUp } from "./lay-up/lay-up.ts";
import type { SheetOptions } from "./options.ts";
import { composePinboard, PINBOARD_VARIANTS } from "./pinboard/index.ts";
import { composePinboardRoll as composeRoll } from "./pinboard/roll.ts";
import { drawScene } from "./pinboard/scene.ts";
import { composePullTest } from "./pull-test/pull-test.ts";
import { composeWireLabels } from "./wire-labels/wire-labels.ts";

type Compose = (line: LineResult, harness: HarnessResult, options: SheetOptions) => readonly SheetDocument[];

const COMPOSE: Readonly<Record<HarnessSheetKind, Compose>> = {
  pinboard: (line, harness, options) =>
    composePinboard(line, harness, fromToBlocks(line, harness, options), options),
  "from-to": (...given) => [composeFromTo(...given)],
  "cut-list": (...given) => [composeCutList(...given)],
  "lay-up": (...given) => [composeLayUp(...given)],
  "connector-loading": (...given) => [composeConnectorLoading(...given)],
  "wire-labels": (...given) => [composeWireLabels(...given)],
  "pull-test": (...given) => [composePullTest(...given)],
  continuity: (...given) => [composeContinuity(...given)],
};

export interface HarnessSheetsChoice {
  /** Kinds to make; absent: all. */
  readonly kinds?: readonly HarnessSheetKind[];
  /** Harnesses to make sheets for; absent: all. */
  readonly harnessIds?: readonly string[];
}

/**
 * The sheets of a machine's harnesses one after the other, harness by harness in the order of their numbers: a
 * caller that writes each as it comes holds one in memory.
 */
export function* composeHarnessSheets(
  line: LineResult,
  options: SheetOptions,
  choice: HarnessSheetsChoice = {},
): Generator<SheetDocument, void> {
  const kinds = HARNESS_SHEET_KINDS.filter((k) => choice.kinds === undefined || choice.kinds.includes(k));
  for (const [id, harness] of line.harnesses) {
    if (choice.harnessIds !== undefined && !choice.harnessIds.includes(id)) continue;
    for (const kind of kinds) yield* COMPOSE[kind](line, harness, options);
  }
}

/** Names of the documents that `composeHarnessSheets` makes for some harnesses, without composing them. */
export function documentNames(
  line: LineResult,
  harnessIds: readonly string[],
  language: SheetLanguage = "en",
  kinds: readonly HarnessSheetKind[] = HARNESS_SHEET_KINDS,
): readonly string[] {
  return [...line.harnesses.keys()]
    .filter((id) => harnessIds.includes(id))
    .flatMap((id) =>
      HARNESS_SHEET_KINDS.filter((kind) => kinds.includes(kind)).flatMap((kind) =>
        kind === "pinboard"
          ? PINBOARD_VARIANTS.map((v) => `${id}.${kind}-${v}.${language}`)
          : [`${id}.${kind}.${language}`],
      ),
    );
}

/** The pinboard of one harness as a roll alone, for looking at: tiles take most of the time. */
export function composePinboardRoll(
  line: LineResult,
  harness: HarnessResult,
  options: SheetOptions,
): SheetDocument {
  return composeRoll(
    line,
    harness,
    drawScene(line, harness, options),
    fromToBlocks(line, harness, options),
    options,
  );
}
